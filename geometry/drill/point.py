"""The point of a two-lipped drill: its length, its chisel edge, its lip relief and its lip heights.

Seen along the axis the two lips are parallel, each half a web off the axis, and the chisel edge joins
their inner ends through the axis. All relations are derived from that picture.
"""

from __future__ import annotations

import math

from geometry.preconditions import (
    refuse,
    require_angle,
    require_finite,
    require_not_negative,
    require_positive,
)
from geometry.sentences import Rounding, angle, length


def slope_of_point(point_angle: float) -> float:
    """How far the point rises along the axis for each millimetre toward it: ``cot(point / 2)``.

    Args:
        point_angle: the whole angle, in radians, above zero to half a turn.

    Returns:
        The slope, exactly 0 for a flat end.

    Example:
        >>> round(slope_of_point(math.radians(90)), 9), slope_of_point(math.pi)
        (1.0, 0.0)
    """
    if not 0 < require_finite("point_angle", point_angle) <= math.pi * (1 + 1e-12):
        raise refuse(
            "point_angle", "A point angle lies above zero and goes up to {flat}.", {"flat": angle(math.pi)}
        )
    return math.tan(max(math.pi - point_angle, 0.0) / 2)


def point_length(point_angle: float, diameter: float) -> float:
    """How far the tip of the whole cone stands ahead of the corners: ``(D / 2) cot(point / 2)``.

    Args:
        point_angle: the whole angle, in radians, above zero to half a turn.
        diameter: of the drill, in mm, above zero.

    Returns:
        The length in mm.

    Example:
        >>> round(point_length(math.radians(118), 10.0), 4)
        3.0043
    """
    return require_positive("diameter", diameter) / 2 * slope_of_point(point_angle)


def sharp_chisel_angle(chisel_edge_angle: float) -> float:
    """The chisel edge angle stated the way that is not over a right angle.

    Some books give the angle from the lip the long way round (120 to 135 degrees on common drills), others
    what is left to half a turn; both name the same edge.

    Args:
        chisel_edge_angle: either of the two, in radians, above zero and under half a turn.

    Returns:
        The smaller of the two, in radians.

    Example:
        >>> round(math.degrees(sharp_chisel_angle(math.radians(125))), 9)
        55.0
    """
    require_angle("chisel_edge_angle", chisel_edge_angle, 0.0, math.pi)
    return min(chisel_edge_angle, math.pi - chisel_edge_angle)


def chisel_edge_length(web_thickness: float, chisel_edge_angle: float, diameter: float) -> float:
    """How long the chisel edge is: ``web / sin(chisel edge angle)``.

    Args:
        web_thickness: at the point, in mm, from zero.
        chisel_edge_angle: either way, in radians, above zero and under half a turn.
        diameter: of the drill, in mm; the chisel edge has to end inside it.

    Returns:
        The length in mm, which is also the diameter of the circle on which the lips begin.

    Raises:
        GeometryError: when the chisel edge would be longer than the drill is thick.

    Example:
        >>> round(chisel_edge_length(1.5, math.radians(125), 10.0), 4)
        1.8312
    """
    require_positive("diameter", diameter)
    lies = math.sin(sharp_chisel_angle(chisel_edge_angle))
    found = require_not_negative("web_thickness", web_thickness) / lies
    if found < diameter:
        return found
    raise refuse(
        "web_thickness",
        "Over a web of {web} this chisel edge would be {found} long and leave no lip on a drill of {diameter}; the web "
        "has to be thinner than {thinner}. Measure both again.",
        {
            "web": length(web_thickness),
            "found": length(min(found, 1e6)),
            "diameter": length(diameter),
            "thinner": length(diameter * lies, Rounding.DOWN),
        },
    )


def lip_reach(web_thickness: float, chisel_edge_angle: float, diameter: float) -> float:
    """How long a lip looks along the axis: from the outer corner to the end of the chisel edge.

    The corner lies ``sqrt(R^2 - (web / 2)^2)`` along the lip from the middle of the drill, the end of the
    chisel edge ``(web / 2) / tan(chisel edge angle)``. Derived.

    Args:
        web_thickness: at the point, in mm, from zero.
        chisel_edge_angle: either way, in radians, above zero and under half a turn.
        diameter: of the drill, in mm, above zero.

    Returns:
        The length in mm, square to the axis.

    Example:
        >>> round(lip_reach(0.0, math.radians(125), 10.0), 9)
        5.0
    """
    chisel_edge_length(web_thickness, chisel_edge_angle, diameter)
    half_web, radius = web_thickness / 2, diameter / 2
    corner = math.sqrt((radius - half_web) * (radius + half_web))
    return corner - half_web / math.tan(sharp_chisel_angle(chisel_edge_angle))


def chisel_height(reach: float, point_angle: float) -> float:
    """How far the ends of the chisel edge stand ahead of the corners: ``reach cot(point / 2)``.

    Args:
        reach: of the lip seen along the axis, from ``lip_reach``, in mm, from zero.
        point_angle: the whole angle, in radians, above zero to half a turn.

    Returns:
        The height in mm along the axis.

    Example:
        >>> round(chisel_height(5.0, math.radians(90)), 9)
        5.0
    """
    return require_not_negative("lip_length", reach) * slope_of_point(point_angle)


def relief_square_to_lip(lip_relief: float, point_angle: float) -> float:
    """The relief square to the lip that a lip relief on the cylinder is: ``tan(a) sin(point / 2)``.

    Lip relief is the angle between a plane square to the axis and the flank, in the plane square to the
    radius of the place (so defined by Armarego and Rotenberg, Int. J. Mach. Tool Des. Res. 13, 1973, and the
    same at the outer corner as the handbook's angle across the margin). Square to a lip in line with the
    axis it looks smaller. Derived.

    Args:
        lip_relief: on the cylinder through the place, in radians, from zero to under a right angle.
        point_angle: the whole angle, in radians, above zero to half a turn.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(relief_square_to_lip(math.radians(12), math.radians(118))), 4)
        10.3258
    """
    slope_of_point(point_angle)
    require_angle("lip_relief_angle", lip_relief, -1e-12, math.pi / 2)
    return math.atan(math.tan(lip_relief) * math.sin(point_angle / 2))


def lip_relief_of(square_relief: float, point_angle: float) -> float:
    """The lip relief on the cylinder of a relief square to the lip: the inverse of ``relief_square_to_lip``.

    Args:
        square_relief: square to a lip in line with the axis, in radians, from zero to under a right angle.
        point_angle: the whole angle, in radians, above zero to half a turn.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(lip_relief_of(math.radians(10), math.pi)), 9)
        10.0
    """
    slope_of_point(point_angle)
    require_angle("relief_angle", square_relief, -1e-12, math.pi / 2)
    return math.atan(math.tan(square_relief) / math.sin(point_angle / 2))


def point_offset(lip_height_difference: float, point_angle: float) -> float | None:
    """How far off the axis the tip lies when two lips of equal angle differ in height.

    A tip off by e makes one lip e longer and the other e shorter, so their heights at equal distance from
    the axis differ by ``2 e cot(point / 2)``. Derived.

    Args:
        lip_height_difference: along the axis, in mm, from zero.
        point_angle: the whole angle, in radians, above zero to half a turn.

    Returns:
        The offset in mm; nothing for a flat end, where no offset makes a difference in height.

    Example:
        >>> round(point_offset(0.1, math.radians(90)) or 0.0, 9)
        0.05
    """
    slope = slope_of_point(point_angle)
    half = require_not_negative("lip_height_difference", lip_height_difference) / 2
    offset = half / slope if slope > 0 else math.inf
    return offset if math.isfinite(offset) else None


def hole_oversize_by_rule(lip_height_difference: float) -> float:
    """How much too large the hole comes out by the shop rule: twice the difference in lip height.

    A rule of the shop, met only in a trade article with the example of a half-inch drill whose lips differ by
    0.003 in and which drills about 0.506 in; it names no point angle.

    Args:
        lip_height_difference: along the axis, in mm, from zero.

    Returns:
        The oversize on diameter, in mm.

    Example:
        >>> hole_oversize_by_rule(0.25)
        0.5
    """
    return 2 * require_not_negative("lip_height_difference", lip_height_difference)
