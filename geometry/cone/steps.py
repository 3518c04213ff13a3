"""A step drill as a list of diameters from the point up, with a shoulder between each two.

One cam relieves it all: each step on its circle, where only the radial cam counts, and each shoulder
square to its cone. Derived from the relief of a cone.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from geometry.checking import refuse
from geometry.cone import relief as cone
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
    angles = included_angles * count_of if len(included_angles) == 1 else included_angles
    if len(angles) != count_of:
        raise refuse(
            "included_angle",
            "There are {given} included angles for {wanted} shoulders; give one for all, or one for each.",
            {"given": count(len(included_angles)), "wanted": count(count_of)},
        )
    falls = count_of > 0 and diameters[0] > diameters[1]
    rising, angles = (diameters[::-1], angles[::-1]) if falls else (diameters, angles)
    for inner, outer in pairwise(rising):
        if outer <= inner:
            raise refuse(
                "diameter",
                "Give the steps in order from the point up, each larger than the one before: {outer} does not "
                "come next to {inner}.",
                {"outer": length(outer), "inner": length(inner)},
            )
    if any(cone.half_angle_parts(angle)[1] == 0 for angle in angles):
        raise refuse(
            "included_angle",
            "A shoulder without an angle never reaches the next step; give its angle above zero.",
        )
    return tuple(Shoulder(i + 1, angle, rising[i], rising[i + 1]) for i, angle in enumerate(angles))


def shoulder_cam(radial_cam: float, axial_cam: float, shoulder: Shoulder) -> float:
    """How far a shoulder falls back along the axis at any one diameter.

    Relation: ``axial + radial / tan(half)``, the same at all diameters of the shoulder; over one turn it is
    also the feed that would use the relief up (see ``geometry.drill.feed.left_of_fall``). Derived.

    Args:
        radial_cam: inward, in mm over any turn.
        axial_cam: away from the point, in mm over the same turn.
        shoulder: which shoulder.

    Returns:
        The fall in mm over the same turn.

    Example:
        >>> import math
        >>> round(shoulder_cam(1.0, 0.5, Shoulder(1, math.pi / 2, 6.0, 8.0)), 9)
        1.5
    """
    _, axial_share = cone.half_angle_parts(shoulder.included_angle)
    return cone.square_cam(radial_cam, axial_cam, shoulder.included_angle) / axial_share
