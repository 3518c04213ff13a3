"""Field readers of what the book tells of the work: a word out of those that there are, or several."""

from __future__ import annotations

from collections.abc import Collection

from library.book.diagnostics import Location, shown
from library.book.fields import Reader, one_line, words


def word_of(known: Collection[str], what: str) -> Reader:
    """A reader for one word that is known; another is left out after complaining."""

    def read(raw: object, location: Location) -> str | None:
        text = one_line(raw, location)
        return text if text is not None and _is_known(text, known, what, location) else None

    return read


def words_of(known: Collection[str], what: str) -> Reader:
    """A reader for several words that are known; others are left out after complaining."""

    def read(raw: object, location: Location) -> tuple[str, ...] | None:
        found = words(raw, location)
        if found is None:
            return None
        return tuple(
            text for number, text in enumerate(found) if _is_known(text, known, what, location.at(number))
        )

    return read


def _is_known(text: str, known: Collection[str], what: str, location: Location) -> bool:
    if text in known:
        return True
    near = location.near(text, known)
    fix = f"Did you mean {shown(near)}?" if near else f"It can be {', '.join(known)}."
    location.complain(f"There is no {what} {shown(text)}.", fix, "warning")
    return False
