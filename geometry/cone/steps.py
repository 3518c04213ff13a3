"""A step drill as a list of diameters from the point up, with a shoulder between each two.

One cam relieves it all: each step on its circle, where only the radial throw counts, and each shoulder
square to its cone. Derived from the relief of a cone.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from geometry.cone import relief as cone
from geometry.drill.feed import left_of_fall, weakest_of_fall
from geometry.preconditions import refuse, require_positive
from geometry.sentences import count, length


@dataclass(frozen=True)
class Shoulder:
    """The cone between two steps.

    Attributes:
        number: counted from the point, from 1.
        included_angle: of its cone, in radians, above zero.
        inner: the diameter of the step below it, in mm.
        outer: the diameter of the step above it, in mm.
    """

    number: int
    included_angle: float
    inner: float
    outer: float


def in_order(diameters: tuple[float, ...]) -> tuple[float, ...]:
    """The diameters of the steps from the point up.

    Args:
        diameters: in mm, all rising from the point up, or all falling from the shank down.

    Raises:
        GeometryError: when they do not go one way.

    Example:
        >>> in_order((12.0, 8.0, 6.0))
        (6.0, 8.0, 12.0)
    """
    falls = len(diameters) > 1 and diameters[0] > diameters[1]
    rising = diameters[::-1] if falls else diameters
    for inner, outer in pairwise(rising):
        if outer <= inner:
            raise refuse(
                "diameter",
                "Give the steps in order from the point up, each larger than the one before: {outer} does not "
                "come next to {inner}.",
                {"outer": length(outer), "inner": length(inner)},
            )
    return rising


@lru_cache(maxsize=64)
def shoulders(diameters: tuple[float, ...], included_angles: tuple[float, ...]) -> tuple[Shoulder, ...]:
    """The shoulders between the steps of a tool.

    Args:
        diameters: of the steps in mm, all rising from the point up, or all falling from the shank down.
        included_angles: in radians, above zero to half a turn: one for all shoulders, or one for each in the
            same order as the diameters.

    Returns:
        One shoulder less than there are steps, counted from the point.

    Raises:
        GeometryError: when the diameters do not go one way, or the angles do not fit their number.

    Example:
        >>> [(s.inner, s.outer) for s in shoulders((12.0, 8.0, 6.0), (2.0,))]
        [(6.0, 8.0), (8.0, 12.0)]
    """
    count_of = len(diameters) - 1
    if count_of < 1 < len(included_angles):
        raise refuse(
            "diameter",
            "One diameter has no shoulder, and {given} shoulder angles are given. Give the diameters of all steps from the "
            "point up.",
            {"given": count(len(included_angles))},
        )
    angles = included_angles * count_of if len(included_angles) == 1 else included_angles
    if len(angles) != count_of:
        raise refuse(
            "included_angle",
            "There are {given} included angles for {wanted} shoulders; give one for all, or one for each."
            if count_of > 1
            else "There are {given} included angles for {wanted} shoulder; give one.",
            {"given": count(len(included_angles)), "wanted": count(count_of)},
        )
    rising = in_order(diameters)
    angles = angles[::-1] if rising != diameters else angles
    if any(cone.half_angle_parts(angle)[1] == 0 for angle in angles):
        raise refuse(
            "included_angle",
            "A shoulder without an angle never reaches the next step; give its angle above zero.",
        )
    return tuple(Shoulder(i + 1, angle, rising[i], rising[i + 1]) for i, angle in enumerate(angles))


@dataclass(frozen=True)
class RelievedShoulder:
    """A shoulder under a cam.

    Attributes:
        shoulder: which one.
        square_per_radian: how far its land sinks square to its cone, in mm for each radian turned.
        fall_per_turn: how far it falls back along the axis at any one diameter, in mm for one turn; a feed
            as large as that uses the relief up.
    """

    shoulder: Shoulder
    square_per_radian: float
    fall_per_turn: float

    def relief(self, diameter: float) -> float:
        """The relief (rad) square to the cone at a diameter (mm)."""
        return cone.relief_angle(self.square_per_radian, diameter)

    def left(self, feed: float, diameter: float) -> float:
        """What a feed (mm for one turn) leaves of the relief (rad) at a diameter (mm), along the axis."""
        return left_of_fall(self.fall_per_turn, feed, diameter)

    def weakest_diameter(self, feed: float) -> float:
        """The diameter (mm) on the shoulder where the feed (mm for one turn) leaves least."""
        return weakest_of_fall(self.fall_per_turn, feed, self.shoulder.inner, self.shoulder.outer)


def relieved(shoulder: Shoulder, radial_throw: float, axial_throw: float, turn: float) -> RelievedShoulder:
    """A shoulder with the relief that a cam gives it.

    Args:
        shoulder: which one.
        radial_throw: inward, in mm.
        axial_throw: away from the point, in mm.
        turn: the angle that the tool turns while the cam makes that travel, in radians, above zero.

    Returns:
        The shoulder and what falls away on it.

    Example:
        >>> import math
        >>> cut = relieved(Shoulder(1, math.pi / 2, 6.0, 8.0), 1.0, 0.5, 2 * math.pi)
        >>> round(cut.fall_per_turn, 9)
        1.5
    """
    square = cone.square_throw(radial_throw, axial_throw, shoulder.included_angle)
    _, axial_share = cone.half_angle_parts(shoulder.included_angle)
    per_radian = square / require_positive("turn", turn)
    return RelievedShoulder(shoulder, per_radian, per_radian * 2 * math.pi / axial_share)
