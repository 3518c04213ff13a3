"""A reading of a tool that lies far outside what the book has for such tools: mostly it was read wrong."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping

from geometry.calculation import Check, Result, watch
from geometry.sentences import angle
from library.book.model import Entry, Value
from library.calc.surfaces import RELIEF, book_key

READINGS = frozenset({"measured-tool", "relief-from-reading"})
"""The calculations that read angles off a tool."""

BEYOND = math.radians(3.0)
"""How far (rad) outside the book's range a tool may lie at least before its readings are doubted; no source."""

_FORMS = ("eccentric_relief_angle", "flat_relief_angle")


def doubts(name: str, result: Result, entry: Entry | None, surface: str) -> tuple[Check, ...]:
    """The doubts of what was read off a tool, by the angles that the book has for its entry.

    Half as much again as the range is wide is allowed on either side, and three degrees at the least. Where the readings
    leave the form open, the relief is doubted only if that of each form is.

    Args:
        name: of the calculation.
        result: what it found.
        entry: of the book.
        surface: the word of the surface that was read.
    """
    if name not in READINGS or entry is None:
        return ()
    found = result.outputs
    reliefs = [found[RELIEF]] if RELIEF in found else [found[key] for key in _FORMS if key in found]
    rake = [found["rake_angle"]] if "rake_angle" in found else []
    return (
        *_doubted("relief", reliefs, entry.values, book_key(RELIEF, surface)),
        *_doubted("rake", rake, entry.values, "rake_angle"),
    )


def _doubted(what: str, read: Collection[float], values: Mapping[str, Value], key: str) -> Iterator[Check]:
    numbers = [*_numbers(values[key])] if key in values else []
    if not numbers or not read:
        return
    low, high = min(numbers), max(numbers)
    allowed = max((high - low) / 2, BEYOND)
    if any(low - allowed <= one <= high + allowed for one in read):
        return
    nearest = min(read, key=lambda one: max(low - one, one - high))
    has = "the {low} to {high}" if low < high else "the {low}"
    again = "the drops and the land" if what == "relief" else "the face offset"
    yield watch(
        f"The {what} of {{read}} lies far outside {has} that the book has for this tool. Read {again} again, and look at "
        "the units; if it stays, it is a tool of another kind.",
        read=angle(nearest),
        low=angle(low),
        **({"high": angle(high)} if low < high else {}),
    )


def _numbers(value: Value) -> Iterator[float]:
    """All that the book has for it: of every size, and what other sources say."""
    for one in (value, *value.also, *(band.value for band in value.bands)):
        yield from (end.number for end in (one.low, one.usual, one.high) if end is not None)
