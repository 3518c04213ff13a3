"""Look up standard threads by the names that a person calls them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from difflib import get_close_matches
from functools import lru_cache

from library.threads.designation import taken_apart
from library.threads.model import Thread
from library.threads.reading import all_threads

_NUMBER_SIZE = re.compile(r"^(?:no\.?|nr\.?|#)\s*(?=\d)")
_LENGTH = re.compile(r"[0-9./-]+(mm|in)")
"""A length with its unit, evened out: no thread of the tables is called so."""

_SIGNS = str.maketrans({"\u00d7": "x", "\u2013": "-", "\u2212": "-", ",": ".", '"': " ", "_": " "})


def find_threads(asked: str, own: Sequence[Thread] = ()) -> tuple[Thread, ...]:
    """Every thread that goes by a name; several where the name alone does not decide, such as 1/4-20.

    A left hand, several starts and a tolerance class in the name are told in what is found.

    Args:
        asked: a designation as typed: ``M12``, ``m12x1.5``, ``5/8-11 UNC``, ``#10-32``, ``G 1/4``.
        own: the threads of the shop's book, which go before the standard ones.

    Returns:
        The threads of that name, in the order of the tables; none when there is no such thread.

    Example:
        >>> [thread.title for thread in find_threads("m12x1.75")]
        ['M12 x 1.75']
        >>> [thread.title for thread in find_threads("3/8-16 2B")]
        ['3/8-16 UNC']
        >>> [thread.title for thread in find_threads("#10-32 unf")]
        ['No. 10-32 UNF']
        >>> [(thread.title, thread.starts, thread.hand) for thread in find_threads("Tr 24x15(P5)LH")]
        [('Tr 24 x 15 P5 LH', 3, 'left')]
    """
    return _found(asked, own) if own else _standard(asked)


@lru_cache(maxsize=256)
def _standard(asked: str) -> tuple[Thread, ...]:
    """A card asks at every key for the few names that stand on it."""
    return _found(asked, ())


def _found(asked: str, own: Sequence[Thread]) -> tuple[Thread, ...]:
    if found := _called(asked, own):
        return found
    more = taken_apart(asked)
    if more.wrong:
        return ()
    row = _called(more.with_lead, own) if more.with_lead else ()
    named = tuple(more.of(thread) for thread in row or _called(more.size, own))
    # A class such as 2B is none of a Whitworth thread of the same size.
    return tuple(one for one in named if one.thread_class) or named


def _called(asked: str, own: Sequence[Thread]) -> tuple[Thread, ...]:
    """The threads that have a name, those of the shop before the standard ones."""
    name = _plain(asked)
    if own and (found := tuple(thread for thread in own if name in map(_plain, thread.names()))):
        return found
    if not name or _LENGTH.fullmatch(name):
        return ()  # The size of a drill needs no table read, which takes a quarter of the time that a card takes.
    if own:
        covered = {thread.id for thread in own}
        return tuple(thread for thread in _by_name().get(name, ()) if thread.id not in covered)
    return _by_name().get(name, ())


def nearest_threads(asked: str, own: Sequence[Thread] = ()) -> tuple[str, ...]:
    """Up to three designations that look like what was asked, to offer when nothing was found.

    Example:
        >>> "M12 x 1.75" in nearest_threads("M12 x 1.7")
        True
    """
    named = {_plain(name): (thread,) for thread in own for name in thread.names()}
    known = {**_by_name(), **named} if named else _by_name()
    sought = (asked, taken_apart(asked).size)
    near = [one for name in sought for one in get_close_matches(_plain(name), known, n=6, cutoff=0.6)]
    titles = [thread.title for name in near for thread in known[name]]
    return tuple(dict.fromkeys(titles))[:3]


def _plain(name: str) -> str:
    """A designation with its spelling evened out: ``5/8" - 11 UNC`` and ``5/8-11 unc`` are the same."""
    text = _NUMBER_SIZE.sub("#", name.translate(_SIGNS).strip().casefold())
    text = re.sub(r"(?<=\d)\s+(?=\d+/)", "-", text)
    return re.sub(r"\s+", "", text)


@lru_cache(maxsize=1)
def _by_name() -> dict[str, tuple[Thread, ...]]:
    found: dict[str, tuple[Thread, ...]] = {}
    for thread in all_threads().values():
        for name in dict.fromkeys(map(_plain, thread.names())):
            found[name] = (*found.get(name, ()), thread)
    return found
