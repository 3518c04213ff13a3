"""Teeth on the end of a tool, dished toward the middle, and the corner at which they meet the outside.

The edge of an end tooth runs from the corner inward and, dished by ``d``, back toward the shank. Its relief ``a`` is
that on the cylinder through the corner. With ``x`` outward along the edge's radius, ``y`` behind the edge and ``z``
toward the shank, the tooth is the plane

    z = -x tan d + y tan a

A work head that is tilted on a base that is swivelled lays that plane along a cup wheel when it is tilted by
``a`` and swivelled by ``atan(tan d cos a)``. All derived; the tests turn vectors.
"""

from __future__ import annotations

import math

from geometry.preconditions import require_angle, require_not_negative, require_positive, require_relief


def dish_depth(dish_angle: float, diameter: float, inner_diameter: float = 0.0) -> float:
    """How far the inner end of the edge lies behind the corner: ``(D - d) / 2 tan(dish)``.

    Args:
        dish_angle: from the plane square to the axis, in radians, under a right angle either way.
        diameter: over the corners, in mm, above zero.
        inner_diameter: where the edges begin, in mm, from zero.

    Returns:
        The depth in mm along the axis; below zero the middle stands ahead.

    Example:
        >>> round(dish_depth(math.radians(2), 20.0), 4)
        0.3492
    """
    across = _across(diameter, inner_diameter)
    return across * math.tan(require_angle("dish_angle", dish_angle, -math.pi / 2, math.pi / 2))


def dish_of_depth(depth: float, diameter: float, inner_diameter: float = 0.0) -> float:
    """The dish of a depth: the inverse of ``dish_depth``, for an inner diameter under the outer one.

    Example:
        >>> round(math.degrees(dish_of_depth(dish_depth(0.05, 20.0, 4.0), 20.0, 4.0)), 6) == round(math.degrees(0.05), 6)
        True
    """
    return math.atan2(depth, require_positive("inner_diameter", _across(diameter, inner_diameter)))


def _across(diameter: float, inner_diameter: float) -> float:
    return (
        require_positive("diameter", diameter) - require_not_negative("inner_diameter", inner_diameter)
    ) / 2


def head_swivel(dish_angle: float, relief_angle: float) -> float:
    """How far the base of the work head is swivelled from square to the wheel face: ``atan(tan(dish) cos(a))``.

    Args:
        dish_angle: from the plane square to the axis, in radians, under a right angle either way.
        relief_angle: along the axis, to which the work head is tilted, in radians, from zero to under a right angle.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(head_swivel(math.radians(2), math.radians(8))), 4)
        1.9806
    """
    dish = require_angle("dish_angle", dish_angle, -math.pi / 2, math.pi / 2)
    return math.atan(math.tan(dish) * math.cos(require_relief("relief_angle", relief_angle)))


def end_drop(turned: float, relief_angle: float, dish_angle: float, diameter: float) -> float:
    """What an indicator along the axis reads behind the corner: ``R (sin(t) tan(a) + (1 - cos(t)) tan(dish))``.

    Args:
        turned: behind the edge, in radians, from zero to half a turn.
        relief_angle: along the axis, in radians, from zero to under a right angle.
        dish_angle: from the plane square to the axis, in radians, under a right angle either way.
        diameter: over the corners, in mm, above zero.

    Returns:
        The fall along the axis in mm.

    Example:
        >>> round(end_drop(0.2, math.radians(8), 0.0, 20.0), 5)
        0.27921
    """
    dish = require_angle("dish_angle", dish_angle, -math.pi / 2, math.pi / 2)
    fall = math.sin(turned) * math.tan(require_relief("relief_angle", relief_angle))
    return (
        require_positive("diameter", diameter) / 2 * (fall + 2 * math.sin(turned / 2) ** 2 * math.tan(dish))
    )


def corner_relief(land_relief: float, end_relief: float, corner_angle: float) -> float:
    """The relief square to a corner chamfer that keeps its width from the edge to the heel.

    Relation: ``tan = tan(a_land) cos(k) + tan(a_end) sin(k)``: the chamfer falls as the two surfaces beside it do. Derived.

    Args:
        land_relief: of the outside, square to the axis, in radians, from zero to under a right angle.
        end_relief: of the end, along the axis, in radians, from zero to under a right angle.
        corner_angle: of the chamfer to the axis, in radians, from zero to a right angle.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(corner_relief(math.radians(8), math.radians(8), math.radians(45))), 3)
        11.241
    """
    lies = require_angle("corner_angle", corner_angle, -1e-12, math.pi / 2 + 1e-12)
    land = math.tan(require_relief("land_relief_angle", land_relief)) * math.cos(lies)
    return math.atan(land + math.tan(require_relief("relief_angle", end_relief)) * math.sin(lies))
