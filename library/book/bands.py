"""Bands of a value: what its source says for tools of one size, or for through or blind holes, beside what it says of all."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from itertools import combinations
from math import inf

from library.book.model import Band, Entry, Value
from library.book.search_text import plain

HOLES = ("through", "blind")
"""The kinds of hole that a band may be for."""


def at(value: Value, diameter: float | None, hole: str = "") -> Value:
    """A value for a tool of a size and for a kind of hole: that of its band where one is meant, else itself.

    Args:
        value: of an entry.
        diameter: of the tool in mm, where it is known.
        hole: ``through`` or ``blind``, where that is known.

    Example:
        >>> from library.book.model import Measure
        >>> small = Band(None, Measure("3 mm", 3.0), "", Value("lip_relief_angle", high=Measure("18 deg", 0.314)))
        >>> relief = Value("lip_relief_angle", usual=Measure("12 deg", 0.209), bands=(small,))
        >>> [at(relief, size).band for size in (2.5, 3.0, 3.1, None)]
        ['up to 3 mm', 'up to 3 mm', '', '']
    """
    fitting = [band for band in value.bands if _fits(band, diameter, hole)]
    if not fitting:
        return value
    band = max(fitting, key=lambda one: bool(one.hole) + is_sized(one))
    own = band.value
    return replace(
        value,
        low=own.low,
        usual=own.usual,
        high=own.high,
        citation=own.citation,
        note=own.note,
        unread=own.unread,
        band=band.in_words,
    )


def entry_at(entry: Entry, diameter: float | None, hole: str = "") -> Entry:
    """An entry with its values for a tool of a size; the same where none of them has a band for it.

    Args:
        entry: of the book.
        diameter: of the tool in mm, where it is known.
        hole: ``through`` or ``blind``; empty where only the names of the entry can tell.
    """
    if not any(value.bands for value in entry.values.values()):
        return entry
    hole = hole or hole_of(entry)
    return replace(entry, values={key: at(value, diameter, hole) for key, value in entry.values.items()})


def hole_of(entry: Entry) -> str:
    """The kind of hole that the names of an entry say it is for; empty where they say neither or both.

    Example:
        >>> hole_of(Entry("a", "tap", "Spiral-point tap for through holes"))
        'through'
    """
    names = plain(" ".join((entry.title, *entry.synonyms))).split()
    found = [word for word in HOLES if word in names]
    return found[0] if len(found) == 1 else ""


def _fits(band: Band, diameter: float | None, hole: str) -> bool:
    if band.hole and band.hole != hole:
        return False
    least, most = _ends(band)
    return not is_sized(band) or (diameter is not None and least < diameter <= most)


_NEAR = 1e-6
"""In mm: an eighth of an inch that was reckoned is still an eighth."""


def is_sized(band: Band) -> bool:
    """Whether it is for tools of one size."""
    return band.start is not None or band.to is not None


def _ends(band: Band) -> tuple[float, float]:
    """Above which diameter it begins and with which it ends, in mm; endless where it says nothing."""
    near = _NEAR if band.is_over else -_NEAR
    return (band.start.number + near if band.start else -inf), (band.to.number + _NEAR if band.to else inf)


def overlapping(bands: Iterable[Band]) -> list[tuple[int, int]]:
    """The numbers of those of which both are meant for one size and one kind of hole."""
    found = []
    for (number, one), (other_number, other) in combinations(enumerate(bands), 2):
        (least, most), (other_least, other_most) = _ends(one), _ends(other)
        is_alike = one.hole == other.hole and is_sized(one) == is_sized(other)
        if is_alike and max(least, other_least) < min(most, other_most):
            found.append((number, other_number))
    return found
