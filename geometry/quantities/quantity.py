"""The model of one row of the vocabulary, and constructors by kind of number."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.sentences import Kind, Rounding


@dataclass(frozen=True)
class Quantity:
    """One thing that can be measured, set or recommended on a tool.

    Attributes:
        key: its name in books, on the command line and in job cards, such as ``land_width``.
        title: its name on a screen.
        kind: what sort of number it is; decides the units a person may type.
        definition: one sentence that says what it is.
        measured: one sentence that says how it is measured: arc or chord, on which diameter.
        low: the least value that makes sense (mm, rad, mm/s, rad/s).
        high: the greatest value that makes sense, in the same units.
        choices: the words allowed, for a quantity that is a choice and not a number.
        whole: true for a count that must be a whole number.
        other_kinds: keys of quantities that say the same in another kind of unit; a value typed
            with such a unit is taken for that quantity (a rated speed given in rpm).
        rounding: which way an answer of it is rounded; one that a person must keep to goes to the safe side.
        fine: whether in inches it is told to a tenth of a tenth: the limits of a fit lie that close.
    """

    key: str
    title: str
    kind: Kind
    definition: str
    measured: str
    low: float = 0.0
    high: float = math.inf
    choices: tuple[str, ...] = ()
    whole: bool = False
    other_kinds: tuple[str, ...] = ()
    rounding: Rounding = Rounding.NEAREST
    fine: bool = False


def degrees(low: float, high: float) -> tuple[float, float]:
    """A range given in degrees, as radians, for the ``low`` and ``high`` of a row."""
    return math.radians(low), math.radians(high)


def length(
    key: str,
    title: str,
    definition: str,
    measured: str,
    low: float = 0.0,
    high: float = 1000.0,
    rounding: Rounding = Rounding.NEAREST,
    *,
    fine: bool = False,
) -> Quantity:
    """A row for a length from ``low`` to ``high`` millimetres."""
    return Quantity(key, title, Kind.LENGTH, definition, measured, low, high, rounding=rounding, fine=fine)


def angle(
    key: str, title: str, definition: str, measured: str, low: float = 0.0, high: float = 90.0
) -> Quantity:
    """A row for an angle from ``low`` to ``high`` degrees."""
    return Quantity(key, title, Kind.ANGLE, definition, measured, *degrees(low, high))


def count(key: str, title: str, definition: str, measured: str, low: int = 1, high: int = 100) -> Quantity:
    """A row for a whole number from ``low`` to ``high``."""
    return Quantity(key, title, Kind.COUNT, definition, measured, low, high, whole=True)


def ratio(key: str, title: str, definition: str, measured: str, low: float, high: float) -> Quantity:
    """A row for a bare ratio from ``low`` to ``high``."""
    return Quantity(key, title, Kind.RATIO, definition, measured, low, high)


def choice(key: str, title: str, definition: str, measured: str, choices: tuple[str, ...]) -> Quantity:
    """A row for one word out of ``choices``."""
    return Quantity(key, title, Kind.CHOICE, definition, measured, choices=choices)
