"""Learn from a card: which of its values the book does not have, and the change that would add them."""

from __future__ import annotations

from dataclasses import dataclass
from math import isclose

from library.book.model import Book, Measure, Value
from library.cards.chosen import CHOSEN_ONCE
from library.cards.model import Card
from library.cards.wanted_entry import measure_of
from library.cards.within_book import diameter_of, within_book
from library.editing.changes import SetValue

SOURCE = "shop"
"""Where a learned value comes from."""


OF_ONE_TOOL = frozenset(
    {"diameter", "nominal_diameter", "measured_diameter", "back_diameter", "least_diameter"}
)
"""Sizes of the tool on the card, which say nothing of another tool of its entry unless the entry has such a size itself."""


@dataclass(frozen=True)
class Lesson:
    """One value that the shop now knows better.

    Attributes:
        entry: the entry of the book that it belongs to.
        key: the quantity.
        value: what was ground, as typed.
        note: why, and on which card.
        card: the id of the card; empty where it was not learned on one.
        place: what the source says beside its name; empty where it says nothing.
    """

    entry: str
    key: str
    value: str
    note: str
    card: str
    place: str = ""


def lessons(card: Card) -> tuple[Lesson, ...]:
    """The values of a card that the book did not have, or had otherwise, when the card was begun.

    A number out of a range of the book is none: the book has it. Nor is a size that the entry does not have: it is that of
    this one tool, and the entry is for tools of all sizes.

    Example:
        >>> from library.cards.model import Wanted
        >>> card = Card(id="2026-11-25-01", entry="a-tap", wanted={"rake_angle": Wanted("7 deg", "5 deg", "", "tore")})
        >>> lessons(card)[0].note
        'tore; card 2026-11-25-01'
    """
    if not card.entry:
        return ()
    diameter = diameter_of(card)
    return tuple(
        Lesson(card.entry, key, one.value, _note(one.reason, card.id), card.id)
        for key, one in card.wanted.items()
        if key not in CHOSEN_ONCE
        and (key not in OF_ONE_TOOL or one.book.strip())
        and one.value.strip()
        and one.value.strip() != one.book.strip()
        and not within_book(key, one, diameter)
    )


def not_in_book(card: Card, book: Book) -> tuple[Lesson, ...]:
    """The lessons of a card that the book does not have as it is now: what was saved meanwhile is no lesson any more.

    Args:
        card: what was wanted on it.
        book: as it is now, and not as it was when the card was begun.
    """
    return tuple(one for one in lessons(card) if not in_book(one, book))


def in_book(lesson: Lesson, book: Book) -> bool:
    """Whether the book's usual value is the learned one."""
    now, learned = value_in(book, lesson), measure_of(lesson.key, lesson.value)
    if now is None or now.usual is None:
        return False
    if learned is None:
        return now.usual.text.strip() == lesson.value.strip()
    return same_measure(now.usual, learned)


def _note(reason: str, card_id: str) -> str:
    said = " ".join(reason.split()).rstrip(".;")
    return f"{said}; card {card_id}" if said else f"card {card_id}"


def change_for(lesson: Lesson, book: Book) -> SetValue:
    """The change of the book that a lesson asks for: the shop's own value, with the card as its note.

    What another source says in the shop's book stays beside it, whole; so does what it said already under ``also``, but
    for what the shop itself had there of just this size. What the shop said before is replaced: the history of its files
    has it. A range goes with its source, so that the shop never says limits that it did not find; that of the shop itself
    stays, each end as long as the new value lies within it. What is shipped stands in its own file as it did.

    Args:
        lesson: what was learned.
        book: as it is now.
    """
    fields: dict[str, object] = {
        "usual": _typed(lesson.value),
        "source": SOURCE,
        "place": lesson.place or None,
        "speaks_of": None,
        "note": lesson.note,
    }
    before = value_in(book, lesson)
    learned = measure_of(lesson.key, lesson.value)
    if before is not None and before.layer == "shop":
        others = [one for one in before.also if not _is_ours(one) or not _says(one, learned)]
        if not _is_ours(before) and not before.unread:
            others.append(before)
        fields["also"] = [_as_written(one) for one in others] or None
        if not others:
            fields["disagreement"] = None
    if before is not None:
        fields |= dict.fromkeys(_ends_that_go(before, learned))
    if before is not None and before.bands and before.layer == "shipped":
        fields["bands"] = None  # A number of the shop's own is for every size.
    rule = before.by_rule.id if before is not None and before.by_rule is not None else ""
    return SetValue(lesson.entry, lesson.key, fields, rule)


def _ends_that_go(before: Value, learned: Measure | None) -> list[str]:
    """The ends of a range that do not hold for a learned value: those of another source, and one that it passed."""
    ends = {name: end for name, end in (("low", before.low), ("high", before.high)) if end is not None}
    if not _is_ours(before):
        return [*ends]
    sides = {"low": 1, "high": -1}
    return [
        name
        for name, end in ends.items()
        if learned is not None
        and (end.per_diameter != learned.per_diameter or (learned.number - end.number) * sides[name] < 0)
    ]


def value_in(book: Book, lesson: Lesson) -> Value | None:
    """What a book has for the quantity of a lesson, if anything."""
    entry = book.entries.get(lesson.entry)
    return entry.values.get(lesson.key) if entry else None


def _is_ours(value: Value) -> bool:
    return value.citation.label == "shop"


def _says(value: Value, learned: Measure | None) -> bool:
    """Whether a value is just this one number or word, without a range."""
    if learned is None or value.low is not None or value.high is not None or value.usual is None:
        return False
    return same_measure(value.usual, learned)


def same_measure(one: Measure, other: Measure) -> bool:
    """Whether two texts mean the same, however they are spelt.

    Example:
        >>> same_measure(Measure("1 in", 25.4), Measure("25.4 mm", 25.4)), same_measure(Measure("1", 1.0), Measure("2", 2.0))
        (True, False)
    """
    return (one.word, one.per_diameter) == (other.word, other.per_diameter) and isclose(
        one.number, other.number, rel_tol=1e-9, abs_tol=1e-12
    )


def _as_written(value: Value) -> dict[str, object]:
    """A value as the file holds it under ``also``."""
    ends = {"low": value.low, "usual": value.usual, "high": value.high}
    found: dict[str, object] = {name: _typed(one.text) for name, one in ends.items() if one is not None}
    cited = value.citation
    said = {
        "source": cited.document or ("" if cited.label == "missing" else cited.label),
        "place": cited.place,
        "speaks_of": cited.speaks_of,
        "note": value.note,
    }
    return found | {name: text for name, text in said.items() if text}


def _typed(text: str) -> int | str:
    """A count goes into the file as a count."""
    return int(text) if text.strip().isdecimal() else text
