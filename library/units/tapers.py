"""A taper as a length for each length, as drawings have it: ``1/4 in per foot``, ``0.25 in/ft``, ``20 mm per m``, ``1 in 50``.

It is a ratio without a unit, so that 1/4 in per foot is 1:48. Derived.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from geometry.sentences import Kind
from library.units.registry import exact_factor

INCH = exact_factor(Kind.LENGTH, "in")
FOOT = 12 * INCH
"""In mm, exactly."""

TOPS = {
    "in": INCH,
    "in.": INCH,
    "inch": INCH,
    "inches": INCH,
    '"': INCH,
    "thou": INCH / 1000,
    "mm": Fraction(1),
    "um": Fraction(1, 1000),
}
"""What a diameter may change by, in mm."""

OVERS = {
    "ft": FOOT,
    "ft.": FOOT,
    "foot": FOOT,
    "in": INCH,
    "in.": INCH,
    "inch": INCH,
    "mm": Fraction(1),
    "m": Fraction(1000),
    "metre": Fraction(1000),
    "meter": Fraction(1000),
}
"""Over what length, in mm."""

METRIC = frozenset({"mm", "m", "metre", "meter"})
"""Lengths over which a diameter changes by millimetres where nothing else is written."""

BEHIND = re.compile(
    rf"(?P<top>{'|'.join(map(re.escape, sorted(TOPS, key=len, reverse=True)))})? ?(?:/ ?|per +)(?:1 ?|one +)?"
    rf"(?P<over>{'|'.join(map(re.escape, sorted(OVERS, key=len, reverse=True)))})"
)
"""What stands behind the number of such a taper."""

IN = re.compile(r"(?P<first>[0-9.]+) in (?P<second>[0-9.]+)")
"""A taper as it is spoken: ``1 in 50``."""


def unit_of(behind: str) -> str:
    """The unit of a taper, as Heelclear writes it; empty where some units are those of none.

    Args:
        behind: what stands behind the number, in small letters.

    Example:
        >>> unit_of("in per foot"), unit_of("mm/m"), unit_of("per ft"), unit_of("rev/min")
        ('in/ft', 'mm/m', 'in/ft', '')
    """
    found = BEHIND.fullmatch(behind)
    if found is None:
        return ""
    over = found["over"]
    top = found["top"] or ("mm" if over in METRIC else "in")
    return f"{_shortest(TOPS, top)}/{_shortest(OVERS, over)}"


def factor_of(unit: str) -> Fraction:
    """By what a number in the unit of a taper is multiplied to be a ratio.

    Args:
        unit: as ``unit_of`` writes it.

    Example:
        >>> factor_of("in/ft"), factor_of("mm/m")
        (Fraction(1, 12), Fraction(1, 1000))
    """
    top, _, over = unit.partition("/")
    return TOPS[top] / OVERS[over]


def _shortest(names: Mapping[str, Fraction], name: str) -> str:
    """The first of the names of the same length."""
    return next(one for one, length in names.items() if length == names[name])
