"""Compare entries: one line for each quantity that any of them has."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.quantities import QUANTITIES
from library.book.model import Entry, Measure, Value


@dataclass(frozen=True)
class Line:
    """One quantity across the entries.

    Attributes:
        key: the quantity.
        values: what each entry recommends, in the entries' order; nothing where it says nothing.
        same: whether all of them say the same.
    """

    key: str
    values: tuple[Value | None, ...]
    same: bool


def compare(entries: Sequence[Entry]) -> tuple[Line, ...]:
    """Set entries side by side, in the order of the vocabulary.

    Args:
        entries: two or more.

    Returns:
        A line for each quantity that at least one of them has.

    Example:
        >>> compare([Entry("a", "tap", "A"), Entry("b", "tap", "B")])
        ()
    """
    lines = []
    for key in QUANTITIES:
        values = tuple(entry.values.get(key) for entry in entries)
        if any(value is not None for value in values):
            meanings = [None if value is None else _meaning(value) for value in values]
            lines.append(Line(key, values, all(meaning == meanings[0] for meaning in meanings)))
    return tuple(lines)


def _meaning(value: Value) -> tuple[object, ...]:
    return tuple(_plain(measure) for measure in (value.low, value.usual, value.high))


def _plain(measure: Measure | None) -> object:
    """A measure without the way it is written: 0.125 in and 1/8 in are the same."""
    return None if measure is None else (measure.word, round(measure.number, 9), measure.per_diameter)
