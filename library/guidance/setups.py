"""Which set-up belongs to an entry or to a job, and its lines with what it follows.

A family is ground as its own set-ups say, else as those of the families that it is like, else as those of its kind.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace

from library.book.likeness import ancestors
from library.book.model import Book, Entry
from library.book.search_text import plain
from library.guidance.following import lines_with_others
from library.guidance.model import STEPS, Setup, setups
from library.once import once

FORMS = {"eccentric": "cam", "flat": ""}
"""The method that makes a form of relief; flat is made by any of the others."""


@once
def setups_of(book: Book, family: str) -> tuple[Setup, ...]:
    """The set-ups of a family in the order of the book, whole.

    Args:
        book: has them, and the families.
        family: its id.
    """
    found = [one for one in setups(book).values() if one.family]

    def like(name: str) -> str:
        known = book.families.get(name)
        return known.like if known is not None else ""

    for name in (family, *ancestors(family, like), book.kind_of(family)):
        own = tuple(whole(book, one) for one in found if name and one.family == name)
        if own:
            return own
    return ()


def whole(book: Book, setup: Setup) -> Setup:
    """A set-up with the lines of those that it follows, in the order of the work."""
    return replace(setup, lines=lines_with_others(setup, setups(book), STEPS))


def for_entry(book: Book, entry: Entry) -> Setup | None:
    """The set-up of what is mostly ground on the tools of an entry, as their relief is made; nothing where the book has none.

    What is mostly ground on the tools of a family stands first among its set-ups in the book.
    """
    found = _meant_for(entry, setups_of(book, entry.family))
    form = entry.values.get("relief_form")
    word = form.usual.word if form is not None and form.usual is not None else ""
    return _best(found, tuple(one.surface for one in found if not one.when), "", word)


def for_job(book: Book, family: str, entry: Entry | None, surface: str, method: str) -> Setup | None:
    """The set-up of a job; nothing where the book has none for its surface.

    Args:
        book: has them.
        family: of the tool.
        entry: that the job began from, where it did.
        surface: the word of the surface that is ground; empty where nobody can tell.
        method: how its relief is made; empty where nobody can tell.
    """
    found = _meant_for(entry, setups_of(book, family))
    if surface:
        found = [one for one in found if one.surface in (surface, "")]
    return _best(found, (surface,), method, "")


def _meant_for(entry: Entry | None, found: Iterable[Setup]) -> list[Setup]:
    """Those that are for an entry, those first that name it."""
    several = tuple(found)
    named = [one for one in several if one.when and is_named(entry, one.when)]
    return named + [one for one in several if not one.when]


def is_named(entry: Entry | None, words: Iterable[str]) -> bool:
    """Whether an entry is called by one of some words, in its title, its id or how it is called too.

    Example:
        >>> is_named(Entry("a", "tap", "Gun tap, brass"), ["spiral point", "gun-tap"]), is_named(None, ["gun tap"])
        (True, False)
    """
    names = "" if entry is None else plain(" ".join((entry.title, entry.id, *entry.synonyms)))
    return any(plain(word) in names for word in words)


def _best(found: Iterable[Setup], surfaces: Iterable[str], method: str, form: str) -> Setup | None:
    """Of several the one that names the entry, then the one of the first surface, then the one of the method."""
    order = list(surfaces)

    def away(one: Setup) -> tuple[int, int, int]:
        surface = order.index(one.surface) if one.surface in order else len(order)
        return 0 if one.when else 1, surface, _by_method(one, method, form)

    return min(found, key=away, default=None)


def _by_method(setup: Setup, method: str, form: str) -> int:
    """How far a set-up is from the way in which a relief is made."""
    if method:
        return 0 if method in setup.methods else 1 if not setup.methods else 2
    wanted = FORMS.get(form)
    if wanted is None or not setup.methods:
        return 0 if wanted is None else 1
    return 0 if (wanted in setup.methods if wanted else "cam" not in setup.methods) else 2


def others(book: Book, entry: Entry, shown: Setup | None) -> Iterator[Setup]:
    """The other set-ups of the family of an entry."""
    return (one for one in setups_of(book, entry.family) if shown is None or one.id != shown.id)
