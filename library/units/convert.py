"""Convert between the units that a person reads and those that geometry computes with."""

from __future__ import annotations

import math
from fractions import Fraction

from geometry.sentences import Kind
from library.units import tapers
from library.units.registry import exact_factor

_TURN = 2 * math.pi
ANGLE_UNITS = {"deg": math.pi / 180, "min": math.pi / 10800, "sec": math.pi / 648000, "rad": 1.0}
"""Radians in each unit of angle; a degree is pi/180 and no fraction holds that exactly."""


def to_geometry(number: Fraction | float, kind: Kind, unit: str) -> float:
    """A number in ``unit`` as geometry's mm, radians, mm/s, rad/s or bare count.

    Args:
        number: as typed; a fraction keeps an inch fraction exact until the end.
        kind: what sort of quantity it is.
        unit: a unit of that kind, as written in ``registry.LINEAR`` or ``ANGLE_UNITS``; ``%`` of a ratio, or that of a taper, such as ``in/ft``.

    Example:
        >>> to_geometry(Fraction(3, 8), Kind.LENGTH, "in")
        9.525
    """
    if kind is Kind.ANGLE:
        return math.radians(float(number)) if unit == "deg" else float(number) * ANGLE_UNITS[unit]
    if kind is Kind.RATIO and unit == "%":
        return float(Fraction(number) / 100)
    if kind is Kind.RATIO and unit:
        return float(Fraction(number) * tapers.factor_of(unit))
    if kind in {Kind.COUNT, Kind.RATIO, Kind.PERCENT, Kind.CHOICE}:
        return float(number)
    in_base = float(Fraction(number) * exact_factor(kind, unit))
    return in_base * _TURN if kind is Kind.ROTATION else in_base


def from_geometry(number: float, kind: Kind, unit: str) -> float:
    """The inverse of ``to_geometry``.

    Example:
        >>> from_geometry(25.4, Kind.LENGTH, "thou")
        1000.0
    """
    if kind is Kind.ANGLE:
        return math.degrees(number) if unit == "deg" else number / ANGLE_UNITS[unit]
    if kind is Kind.RATIO and unit:
        return number * 100 if unit == "%" else number / float(tapers.factor_of(unit))
    if kind in {Kind.COUNT, Kind.RATIO, Kind.PERCENT, Kind.CHOICE}:
        return number
    if kind is Kind.ROTATION:
        number /= _TURN
    factor = exact_factor(kind, unit)
    return number * factor.denominator / factor.numerator
