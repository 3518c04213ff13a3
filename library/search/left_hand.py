"""Tools for left-hand threads, which come first where such a thread is sought and last where it is not."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from library.book.search_text import SearchWords
from library.search.sizes import Size, Sought

TAPS = frozenset(["tap", "taps"])

LEFT = (" lh ", " left hand tap ", " tap left hand ", " tap lh ")
"""How tools for left-hand threads are called, which come first where a tap or a thread is left-hand: not those with
left-hand flutes."""

UNASKED = 0.75
"""How much farther away a left-hand tool is for which nobody asked."""

NOT_LEFT = 2
"""How much farther away a tool is that is not left-hand, where such a one is asked for."""


def without_its_hand(
    searched: SearchWords, sought: Sought, size: Size | None, found: Sequence[int]
) -> Iterator[tuple[int, float]]:
    """Tools of another hand than is asked for, each with how much farther away it is.

    Args:
        searched: of the book.
        sought: what is searched for.
        size: as it was understood.
        found: the numbers of the rows.
    """
    words = {part for word in sought.words for part in word.split()}
    in_size = set(size.text.casefold().split()) if size is not None and size.is_thread else set()
    asked = words & {"left", "lh"}
    is_wanted = "lh" in in_size or bool((in_size or words & TAPS) and asked)
    if asked and not is_wanted:
        return
    for row in found:
        is_left = any(one in text for one in LEFT for text in searched.names_of(row))
        if is_left != is_wanted:
            yield row, UNASKED if is_left else NOT_LEFT
