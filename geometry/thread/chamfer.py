"""The chamfer of a tap: the part that cuts.

A cone lifts the first threads from the point to their full height. Angles are per side, from the axis.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from geometry.preconditions import (
    GeometryError,
    require_angle,
    require_not_negative,
    require_positive,
    require_relief,
)
from geometry.thread.form import Thread
from geometry.thread.tap_drill import rule_diameter

SLACK = 1e-9
"""A point that is larger than the hole by less than this many millimetres is only rounding."""


@dataclass(frozen=True)
class Chamfer:
    """The chamfer of one tap.

    Attributes:
        thread: the thread of the tap, over its crests as they measure.
        height: how far the chamfer rises on the radius, in mm.
        length: along the axis, in mm.
        angle: per side from the axis, in radians.
        nominal: the thread by its name, where the crests of the tap measure otherwise; else nothing.
    """

    thread: Thread
    height: float
    length: float
    angle: float
    nominal: Thread | None = None

    @property
    def hole(self) -> float:
        """The hole before tapping, which goes by the thread and not by how much its tap measures: diameter less pitch."""
        return rule_diameter(self.nominal or self.thread)

    @property
    def threads(self) -> float:
        """How many threads it takes to its full height."""
        return self.length / self.thread.pitch

    def point_diameter(self, length: float) -> float:
        """The diameter at the front of a chamfer of this angle that is ``length`` long."""
        return self.thread.diameter - 2 * length * math.tan(self.angle)


def chamfer_angle(height: float, length: float) -> float:
    """The angle of a chamfer that rises ``height`` over ``length``: ``atan(h / L)``.

    Derived. Which height is meant must be said: a tap is chamfered by about the depth of its thread.

    Args:
        height: how far the chamfer rises on the radius, in mm, above zero.
        length: along the axis, in mm, above zero; threads times pitch.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> round(math.degrees(chamfer_angle(17 / 24 * math.sqrt(3) / 2, 4.0)), 2)
        8.72
    """
    return math.atan2(require_positive("point_diameter", height), require_positive("chamfer_length", length))


def chamfer_length(height: float, angle: float) -> float:
    """How long a chamfer of ``angle`` is that rises ``height``: ``h / tan(phi)``; the inverse of the above.

    Args:
        height: how far the chamfer rises on the radius, in mm, above zero.
        angle: per side from the axis, in radians, above zero and under a right angle.

    Returns:
        The length along the axis in mm.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> round(chamfer_length(1.0, math.radians(45)), 9)
        1.0
    """
    require_angle("chamfer_angle", angle, 0.0, math.pi / 2)
    return require_positive("point_diameter", height) / math.tan(angle)


def chip_per_tooth(lead: float, flutes: float, angle: float) -> float:
    """How much deeper each tooth cuts than the one before it: ``L tan(phi) / Z``, square to the axis.

    From one tooth to the next the tap goes on by ``L / Z`` along the axis, and the chamfer rises by the
    tangent of its angle. With one start the lead is the pitch. Derived. Square to the chamfer itself the
    chip is this times ``cos(phi)``.

    Args:
        lead: the advance in one turn, in mm, above zero.
        flutes: how many lands cut, from one.
        angle: of the chamfer per side, in radians, above zero and under a right angle.

    Returns:
        The chip in mm.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> round(chip_per_tooth(1.5, 3, math.atan(0.2)), 9)
        0.1
    """
    require_angle("chamfer_angle", angle, 0.0, math.pi / 2)
    return require_positive("lead", lead) * math.tan(angle) / require_positive("flutes", flutes)


RELIEF_FACTORS: Mapping[str, Callable[[float], float]] = {
    "radial_chamfer_relief": lambda angle: 1.0,
    "axial_chamfer_relief": lambda angle: 1 / math.tan(angle),
    "square_chamfer_relief": math.cos,
}
"""How many times the radial fall a chamfer falls in each sense.

A cone that moves in by ``d`` along the radius moves by ``d / tan(phi)`` along the axis and by
``d cos(phi)`` square to itself. Derived.
"""


def reliefs(relief: float, given_as: str, angle: float) -> dict[str, float]:
    """The relief of a chamfer in all three senses, from one of them.

    Relation: the tangents stand as 1 : 1 / tan(phi) : cos(phi) for radial, along the axis and square.

    Args:
        relief: in radians, from zero to under a right angle.
        given_as: ``"radial_chamfer_relief"``, ``"axial_chamfer_relief"`` or ``"square_chamfer_relief"``.
        angle: of the chamfer per side, in radians, above zero and under a right angle.

    Returns:
        The three angles in radians, by those keys.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> found = reliefs(math.radians(4), "radial_chamfer_relief", math.radians(10))
        >>> round(math.degrees(found["axial_chamfer_relief"]), 2)
        21.63
    """
    require_angle("chamfer_angle", angle, 0.0, math.pi / 2)
    if given_as not in RELIEF_FACTORS:
        raise GeometryError(
            "A chamfer's relief is radial, along the axis or square.", "radial_chamfer_relief"
        )
    slope = math.tan(require_relief(given_as, relief)) / RELIEF_FACTORS[given_as](angle)
    found = {key: math.atan(slope * factor(angle)) for key, factor in RELIEF_FACTORS.items()}
    return found | {given_as: relief}


def moved_back(stock: float, angle: float) -> float:
    """How far the first full thread moves back when ``stock`` is ground off the chamfer: ``s / sin(phi)``.

    Derived: the chamfer moves square to itself and keeps its angle, so where it meets the crests it moves
    along the axis by the stock over the sine.

    Args:
        stock: square to the chamfer, in mm, from zero.
        angle: of the chamfer per side, in radians, above zero and under a right angle.

    Returns:
        The way along the axis in mm.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> round(moved_back(0.1, math.radians(30)), 9)
        0.2
    """
    require_angle("chamfer_angle", angle, 0.0, math.pi / 2)
    return require_not_negative("chamfer_stock", stock) / math.sin(angle)


def stock_for(way: float, angle: float) -> float:
    """What has to come off the chamfer to move the first full thread back by ``way``; the inverse.

    Args:
        way: along the axis, in mm, from zero.
        angle: of the chamfer per side, in radians, above zero and under a right angle.

    Returns:
        The stock square to the chamfer, in mm.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> round(stock_for(0.2, math.radians(30)), 9)
        0.1
    """
    require_angle("chamfer_angle", angle, 0.0, math.pi / 2)
    return require_not_negative("cut_back", way) * math.sin(angle)
