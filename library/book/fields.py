"""Field readers: a key that is a text, several texts, or the id of something else in the book."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection

from geometry.kinds import EVERY_KIND
from geometry.surfaces import SURFACES
from library.book.diagnostics import Location, shown
from library.sanitize import first_hidden, name_of, sanitize

LONGEST_TEXT = 4096
"""Characters in a text of one line."""

LONGEST_NOTES = 65_536
"""Characters in a text of several lines."""

Reader = Callable[[object, Location], object | None]
"""Takes what stands at a key and its location; returns what it means, or nothing after complaining."""

_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")


def one_line(raw: object, location: Location) -> str | None:
    """A text of one line without hidden characters; one that has them is kept with marks in their place."""
    text = _text(raw, location, LONGEST_TEXT)
    if text is None:
        return None
    hidden = first_hidden(text)
    if hidden == "\n":
        location.complain("This has several lines; one is wanted.", "Write it in one line.")
    elif hidden:
        location.complain(f"The text holds {name_of(hidden)}, which cannot be seen or is not text.",
                      "Type the text again without it.")  # fmt: skip
    return sanitize(text)


def paragraph(raw: object, location: Location) -> str | None:
    """A text that may have several lines, kept as it is."""
    return _text(raw, location, LONGEST_NOTES)


def identifier(raw: object, location: Location) -> str | None:
    """The id of a table."""
    text = one_line(raw, location)
    if text is not None and not _ID.fullmatch(text) and not first_hidden(str(raw)):
        location.complain(f"The id {shown(text)} has other characters than small letters, digits and hyphens.",
                      f"Write it such as {_tidy(text)}.", "warning")  # fmt: skip
    return text


def _tidy(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-") or "spiral-tap-bronze"


def words(raw: object, location: Location) -> tuple[str, ...] | None:
    """Several texts of one line."""
    if isinstance(raw, str) or not isinstance(raw, list):
        location.complain(
            f"This is {shown(raw)}; a list is wanted.", 'Write it in brackets: ["first", "second"].'
        )
        return None
    found = (one_line(one, location.at(number)) for number, one in enumerate(raw))
    return tuple(text for text in found if text is not None)


def surfaces(raw: object, location: Location) -> tuple[str, ...] | None:
    """The words of relieved surfaces; one that is not known is left out after complaining."""
    found: list[str] = []
    for number, text in enumerate(words(raw, location) or ()):
        if _is_one_of(SURFACES, "surface", text, location.at(number)):
            found.append(text)
    return tuple(dict.fromkeys(found)) or None


def kind(raw: object, location: Location) -> str | None:
    """A kind of tool that calculations know; one that they do not is left out after complaining."""
    text = one_line(raw, location)
    return text if text is not None and _is_one_of(EVERY_KIND, "kind", text, location) else None


def word_of(known: Collection[str], what: str) -> Reader:
    """A reader for one word that is known; another is left out after complaining."""

    def read(raw: object, location: Location) -> str | None:
        text = one_line(raw, location)
        return text if text is not None and _is_one_of(known, what, text, location) else None

    return read


def words_of(known: Collection[str], what: str) -> Reader:
    """A reader for several words that are known; others are left out after complaining."""

    def read(raw: object, location: Location) -> tuple[str, ...] | None:
        found = words(raw, location)
        if found is None:
            return None
        return tuple(
            text for number, text in enumerate(found) if _is_one_of(known, what, text, location.at(number))
        )

    return read


def _is_one_of(known: Collection[str], what: str, text: str, location: Location) -> bool:
    """Whether a word is one that geometry has; complains where it is not."""
    if text in known:
        return True
    near = location.near(text, known)
    fix = f"Did you mean {shown(near)}?" if near else f"It can be {', '.join(known)}."
    location.complain(f"There is no {what} {shown(text)}.", fix, "warning")
    return False


def word_out_of(choices: str) -> Reader:
    """A reader for one of several words, given with spaces between them."""

    def read(raw: object, location: Location) -> str | None:
        text = one_line(raw, location)
        if text is not None and text not in choices.split():
            location.complain(
                f"{shown(text)} is not one of {', '.join(choices.split())}.", "Write one of them.", "warning"
            )
        return text

    return read


def name_of_a(array: str) -> Reader:
    """A reader for the id of a table of another kind."""

    def read(raw: object, location: Location) -> str | None:
        text = one_line(raw, location)
        if text is not None:
            want_known(array, text, location)
        return text

    return read


def names_of(array: str) -> Reader:
    """A reader for several ids of tables of another kind."""

    def read(raw: object, location: Location) -> tuple[str, ...] | None:
        found = words(raw, location)
        for number, text in enumerate(found or ()):
            want_known(array, text, location.at(number))
        return found

    return read


def want_known(array: str, text: str, location: Location, besides: frozenset[str] = frozenset()) -> bool:
    """Whether a table of that kind has that id; complains when none has."""
    known = location.diagnostics.known.get(array, frozenset())
    if text in known or location.diagnostics.is_deaf:
        return True
    near = location.near(text, known | besides)
    fix = f"Did you mean {shown(near)}?" if near else f"Add a [[{array}]] with that id, or name another."
    location.complain(f"There is no {array} {shown(text)} in the book.", fix, "warning")
    return False


def _text(raw: object, location: Location, longest: int) -> str | None:
    if not isinstance(raw, str):
        location.complain(f"This is {shown(raw)}; a text is wanted.", "Write it in quotes.")
        return None
    if len(raw) > longest:
        location.complain(f"The text has {len(raw)} characters; {longest} are the most.", "Shorten it.")
        return raw[:longest]
    return raw
