"""What the tool of a card shall have, as an entry of the book, so that calculations are filled from it as from one."""

from __future__ import annotations

from dataclasses import replace

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind
from library.book.model import Citation, Entry, Measure, Value
from library.book.tool_materials import stamped
from library.calc.ranges import read_range
from library.cards.chamfer import THREADS, angle_alone_was_changed
from library.cards.chosen import CHOSEN_ONCE
from library.cards.model import Card, Wanted
from library.units.read import UnitError, read


def wanted_entry(card: Card, book_entry: Entry | None) -> Entry:
    """What the tool shall have, in the form of an entry of the book, so that calculations are filled from it.

    Args:
        card: with the values as the book had them when it was begun, and as a person changed them.
        book_entry: of today's book, for its cautions, and for what the tool is made of where no maker stamped it.
    """
    recommended = book_entry.values if book_entry is not None else {}
    values = {key: _ranged(value, one, recommended.get(key)) for key, one in card.wanted.items()
              if key not in CHOSEN_ONCE and (value := _value_of(key, one)) is not None}  # fmt: skip
    if angle_alone_was_changed(card.wanted):
        values.pop(THREADS, None)
    return Entry(
        id=card.entry,
        family=card.family,
        title=card.title,
        work_material=card.tool.work_material or (book_entry.work_material if book_entry else ""),
        tool_material=stamped(card.tool.marks) or (book_entry.tool_material if book_entry else ""),
        values=values,
        cautions=book_entry.cautions if book_entry else (),
    )


def _value_of(key: str, one: Wanted) -> Value | None:
    """What is wanted as a value of a book: a number, or a range that fills nothing."""
    measure = measure_of(key, one.value)
    if measure is not None:
        return Value(key, usual=measure)
    found = read_range(key, one.value)
    source = Citation("published", one.source) if one.source else Citation("missing")
    return replace(found, citation=source) if found is not None else None


def _ranged(value: Value, one: Wanted, recommended: Value | None) -> Value:
    """A number that is wanted as the book has it, with the range that the book still has round that number."""
    if recommended is None or recommended.usual is None or value.usual is None or not one.book:
        return value
    is_the_same = recommended.usual.text == one.value == one.book
    return replace(value, low=recommended.low, high=recommended.high) if is_the_same else value


def measure_of(key: str, text: str) -> Measure | None:
    """What a wanted value means; nothing where it cannot be read."""
    row = QUANTITIES.get(key)
    if row is None:
        return None
    if row.kind is Kind.CHOICE:
        return Measure(text, word=text.strip()) if text.strip() in row.choices else None
    try:
        is_length = row.kind is Kind.LENGTH
        found = read(text, row.kind, of_diameter=is_length, unit_wanted=True, whole=row.whole)
    except UnitError:
        return None
    return Measure(text, found.number, per_diameter=found.per_diameter)
