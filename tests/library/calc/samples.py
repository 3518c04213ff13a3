"""A calculation on a relief and one tool for it, for tests of how it is filled."""

from __future__ import annotations

import math

from geometry.calculation import Calculation, Field, Inputs, Result
from library.book.model import Book, Citation, Entry, Family, Measure, Value


def degrees(
    key: str, low: float | None = None, usual: float | None = None, high: float | None = None
) -> Value:
    """A value of the shipped book in degrees, from memory."""
    return Value(key, _angle(low), _angle(usual), _angle(high), citation=Citation("from memory"))


def _angle(degree: float | None) -> Measure | None:
    return Measure(f"{degree:g} deg", math.radians(degree)) if degree is not None else None


def relief_sheet(*surfaces: str, asks: bool = True) -> Calculation:
    """A calculation that answers with the relief it was given."""

    def compute(given: Inputs) -> Result:
        return Result({"flat_relief_angle": given.number("relief_angle")})

    fields = (
        *((Field("surface"),) if asks else ()),
        Field("diameter", optional=True),
        Field("included_angle", when=("surface", "cone", "shoulder"), optional=True),
        Field("relief_angle"),
        Field("secondary_relief_angle", optional=True),
        Field("flutes", optional=True),
        Field("primary_land", optional=True),
    )
    return Calculation(
        "sample", "Sample", "?", "", "", ("tap",), fields, ("flat_relief_angle",), (), compute, surfaces
    )


def tool(family: str, *values: Value) -> Entry:
    """An entry with these values."""
    return Entry("tool", family, "Tool", values={one.key: one for one in values})


BOOK = Book(
    {},
    families={
        "tap": Family("tap", "Taps", surfaces=("chamfer", "thread-land")),
        "countersink": Family("countersink", "Countersinks", surfaces=("cone",)),
        "twist-drill": Family("twist-drill", "Drills", surfaces=("lip", "land")),
        "reamer": Family("reamer", "Reamers", surfaces=("bevel", "land")),
    },
)
