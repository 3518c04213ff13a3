"""A reading of a tool that lies far outside what the book has for such tools: mostly it was read wrong."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator, Mapping

from geometry.calculation import Check, Result, watch
from geometry.quantities import quantity
from geometry.sentences import Kind, angle, length
from library.book.model import Entry, Value
from library.calc.surfaces import RELIEF, book_key

READINGS = frozenset({"measured-tool", "relief-from-reading"})
"""The calculations that read angles off a tool."""

BEYOND = math.radians(3.0)
"""How far (rad) outside the book's range a tool may lie at least before its readings are doubted; no source."""

_SAID_TWICE = {"end-teeth": ("dish_depth", "dish_angle")}
"""Of a calculation, the two ways to say one thing: one is given and the other found, and the book may have either."""

_SHOWN_ALIKE = 1.0005
"""How far past an end of the book's range a number still shows as that end."""

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


def said_otherwise(name: str, result: Result, entry: Entry | None) -> tuple[Check, ...]:
    """The doubt of what was given in one way, where the book has it in the other and far from that.

    Args:
        name: of the calculation.
        result: what it found.
        entry: of the book.
    """
    values = entry.values if entry is not None else {}
    ways = [key for key in _SAID_TWICE.get(name, ()) if key in result.outputs and key in values]
    return tuple(one for key in ways for one in _outside(key, result.outputs[key], values[key]))


def _outside(key: str, found: float, value: Value) -> Iterator[Check]:
    numbers, row = [*_numbers(value)], quantity(key)
    if not numbers or found <= 0 or min(numbers) / _SHOWN_ALIKE <= found <= max(numbers) * _SHOWN_ALIKE:
        return
    low, high = min(numbers), max(numbers)
    shown = angle if row.kind is Kind.ANGLE else length
    yield watch(
        f"The {row.title.lower()}, {{found}}, lies outside the {{low}}{' to {high}' if low < high else ''} that the book has "
        "for this tool, and both are one measure. Give that of the book, or keep this where the tool was made so.",
        found=shown(found),
        low=shown(low),
        **({"high": shown(high)} if low < high else {}),
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
