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


AT_HAND: dict[tuple[Kind, str], Fraction] = {
    (Kind.LENGTH, "mm"): Fraction(1),
    (Kind.LENGTH, "in"): Fraction("25.4"),
    (Kind.LENGTH, "thou"): Fraction("0.0254"),
    (Kind.AREA, "mm2"): Fraction(1),
    (Kind.AREA, "in2"): Fraction("645.16"),
    (Kind.SPEED, "m/s"): Fraction(1000),
    (Kind.SPEED, "ft/min"): Fraction("5.08"),
    (Kind.ROTATION, "rpm"): Fraction(1, 60),
    (Kind.PER_LENGTH, "tpi"): Fraction(10, 254),
}
"""What pint says of the units in which books, cards and screens are written.

Loading pint takes 0.35 s, half of what a command or the first entry on the screen took in all; a test holds each
against pint. The other units are rare and ask it.
"""


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
    known = AT_HAND.get((kind, unit))
    return known if known is not None else by_pint(kind, unit)


def by_pint(kind: Kind, unit: str) -> Fraction:
    """The same, worked out by pint.

    Example:
        >>> by_pint(Kind.SPEED, "ft/min")
        Fraction(127, 25)
    """
    units = registry()
    one = units.Quantity(Fraction(1), units.Unit(LINEAR[kind][unit]))
    return Fraction(one.to(units.Unit(_BASE[kind])).magnitude)
