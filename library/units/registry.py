"""The unit registry, the one file that knows pint.

A registry of our own with the dozen units that a tool room uses loads in three milliseconds where the
full one takes a hundred, holds lengths as exact fractions, and cannot be talked into a unit that no
indicator has. Raw text never reaches pint's parser; only the unit names listed here do.
"""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING

from geometry.sentences import Kind

if TYPE_CHECKING:
    import pint

DEFINITIONS = (
    "millimeter = [length] = mm",
    "centimeter = 10 * millimeter = cm",
    "meter = 1000 * millimeter = m",
    "micrometer = 0.001 * millimeter = um",
    "inch = 25.4 * millimeter = in",
    "thou = 0.001 * inch",
    "tenth = 0.0001 * inch",
    "foot = 12 * inch = ft",
    "second = [time] = s",
    "minute = 60 * second",
    "turn = [rotation]",
)
"""In pint's own notation; one inch is 25.4 mm exactly (international inch, 1959)."""

LINEAR: dict[Kind, dict[str, str]] = {
    Kind.LENGTH: {
        "mm": "millimeter",
        "cm": "centimeter",
        "um": "micrometer",
        "in": "inch",
        "thou": "thou",
        "tenths": "tenth",
    },
    Kind.AREA: {"mm2": "millimeter**2", "in2": "inch**2"},
    Kind.SPEED: {
        "m/s": "meter/second",
        "mm/s": "millimeter/second",
        "m/min": "meter/minute",
        "ft/min": "foot/minute",
    },
    Kind.ROTATION: {"rpm": "turn/minute"},
    Kind.PER_LENGTH: {"tpi": "1/inch", "per mm": "1/millimeter"},
}
"""For each kind of quantity, the units by the name that Heelclear writes, and what pint calls them."""

_BASE = {
    Kind.LENGTH: "millimeter",
    Kind.AREA: "millimeter**2",
    Kind.SPEED: "millimeter/second",
    Kind.ROTATION: "turn/second",
    Kind.PER_LENGTH: "1/millimeter",
}


@cache
def registry() -> pint.UnitRegistry[Fraction]:
    """The registry, made when it is first asked for; importing pint is most of its price."""
    import pint

    made: pint.UnitRegistry[Fraction] = pint.UnitRegistry(None, non_int_type=Fraction)
    for line in DEFINITIONS:
        made.define(line)
    return made


@cache
def exact_factor(kind: Kind, unit: str) -> Fraction:
    """What one ``unit`` is worth in the unit that geometry uses, rotation counted in turns.

    Example:
        >>> exact_factor(Kind.LENGTH, "in")
        Fraction(127, 5)
    """
    units = registry()
    one = units.Quantity(Fraction(1), units.Unit(LINEAR[kind][unit]))
    return Fraction(one.to(units.Unit(_BASE[kind])).magnitude)
