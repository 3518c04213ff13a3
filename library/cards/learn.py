"""Learn from a card: which of its values the book does not have, and the change that would add them."""

from __future__ import annotations

from dataclasses import dataclass

from library.book.model import Book
from library.cards.chosen import CHOSEN_ONCE
from library.cards.model import Card
from library.cards.provenance import measure_of
from library.editing.changes import SetValue

SOURCE = "shop"
"""Where a learned value comes from."""


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
    """The values of a card that the book does not have, or has otherwise.

    Example:
        >>> from library.cards.model import Wanted
        >>> card = Card(id="2026-11-25-01", entry="a-tap", wanted={"rake_angle": Wanted("7 deg", "5 deg", "", "tore")})
        >>> lessons(card)[0].note
        'tore; card 2026-11-25-01'
    """
    if not card.entry:
        return ()
    return tuple(
        Lesson(card.entry, key, one.value, _note(one.reason, card.id), card.id)
        for key, one in card.wanted.items()
        if key not in CHOSEN_ONCE and one.value.strip() and one.value.strip() != one.book.strip()
    )


def _note(reason: str, card_id: str) -> str:
    said = " ".join(reason.split()).rstrip(".;")
    return f"{said}; card {card_id}" if said else f"card {card_id}"


def change_for(lesson: Lesson, book: Book) -> SetValue:
    """The change of the book that a lesson asks for: the shop's own value, with the card as its note.

    An end of the book's range stays where the new value still lies within it.

    Args:
        lesson: what was learned.
        book: as it is now.
    """
    count = lesson.value.strip()
    fields: dict[str, object] = {
        "usual": int(count) if count.isdecimal() else lesson.value,
        "source": SOURCE,
        "place": lesson.place or None,
        "note": lesson.note,
    }
    entry = book.entries.get(lesson.entry)
    before = entry.values.get(lesson.key) if entry else None
    learned = measure_of(lesson.key, lesson.value)
    for name, end, side in (
        ("low", before.low if before else None, 1),
        ("high", before.high if before else None, -1),
    ):
        if end is None or learned is None:
            continue
        if end.per_diameter != learned.per_diameter or (learned.number - end.number) * side < 0:
            fields[name] = None
    return SetValue(lesson.entry, lesson.key, fields)
