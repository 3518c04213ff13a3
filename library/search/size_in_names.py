"""A size as it stands in the names of tools: spelt in full, or by the series of its thread."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable

from library.book.rows import Rows
from library.search.meant_for import is_meant_for
from library.search.sizes import Size

_RUN_ON = re.compile(r"^(?:tr|g|rc?|rp)(?= ?\d)|(?<=\d)ba$")
"""Letters of a series that may stand right beside the size: of a pipe thread before it, BA behind it."""


GRADE = "grade"
"""The word before the number of a work material."""


def series_in(size: Size) -> list[str]:
    """Words of a thread's name by which tools for its series are called, each as it stands in a searched text.

    Example:
        >>> series_in(Size("G1/4", True)), series_in(Size("1/2-13 UNC", True)), series_in(Size("Tr20x4", True))
        ([' g '], [' unc '], [' tr '])
    """
    text = size.text.casefold()
    words = [word for word in text.split() if word.isalpha() and word not in {"x", "lh"}]
    words += [found[0]] if (found := _RUN_ON.search(text)) else []
    # There are parallel and taper taps for BSP, called BSPP and BSPT.
    return list(dict.fromkeys(f" {word}" if word == "bsp" else f" {word} " for word in words))


def is_a_name(number: str, name: str, words: Collection[str]) -> bool:
    """Whether a number that stands in a name is a part of how the tool is called, and not an end of the sizes it is for.

    Args:
        number: as it is sought.
        name: in small letters between blanks.
        words: that are sought beside the number; without its own word the number of a grade is none.

    Example:
        >>> is_a_name("82", " countersink 82 degrees ", ()), is_a_name("10", " drill for work 6 to 10 mm ", ())
        (True, False)
        >>> is_a_name("5", " titanium grade 5 ", ("drill",)), is_a_name("5", " titanium grade 5 ", ("grade", "drill"))
        (False, True)
    """
    not_behind = "" if GRADE in words else rf"(?<! {GRADE})"
    return bool(
        re.search(rf"(?<! to)(?<! over)(?<! under){not_behind} {re.escape(number)} (?!to |mm |in )", name)
    )


def is_called_by(rows: Rows, row: int, size: Size) -> bool:
    """Whether a row has a size in its names, as a counterbore for M12 screws has, so that it is not the tool's own.

    A name that tells a range of sizes, such as over 1 in, is called by none of them.

    Args:
        rows: of the book.
        row: the number of one of them.
        size: as it stood in the search.
    """
    if is_meant_for(rows.words.heads[row], size) is not None:
        return False
    return is_named(rows.words.names_of(row), size)


def is_named(names: Iterable[str], size: Size, words: Collection[str] = ()) -> bool:
    """Whether a size stands in some names as a part of how the tool is called.

    Args:
        names: in small letters between blanks.
        size: as it stood in the search.
        words: that are sought beside it.
    """
    return any(
        f" {spelling} " in text and (size.is_thread or is_a_name(spelling, text, words))
        for spelling in spellings(size)
        for text in names
    )


def spellings(size: Size) -> tuple[str, ...]:
    """How a size may stand in a title: in full, and a thread without its pitch.

    Example:
        >>> spellings(Size("M12 x 1.5", True)), spellings(Size("Tr 20 x 4", True))
        (('m12 x 1.5', 'm12x1.5', 'm12'), ('tr 20 x 4', 'tr20x4', 'tr 20'))
    """
    whole = size.text.casefold().replace("-", " ").removesuffix(" lh")
    return (
        tuple(dict.fromkeys((whole, whole.replace(" ", ""), _diameter(whole))))
        if size.is_thread
        else (whole,)
    )


def _diameter(thread: str) -> str:
    """The name of a thread as far as its diameter: letters that stand apart from it are no size."""
    first, *rest = thread.split("x", maxsplit=1)[0].split()
    return f"{first} {rest[0]}" if rest and first.isalpha() else first
