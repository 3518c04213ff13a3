"""Flat relief: one straight facet behind the edge.

A straight line that leaves the circle comes back to it. The facet is deepest at an angle ``a`` behind
the edge and meets the circle again at ``2 a``; what lies beyond stands proud and rubs.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from geometry.preconditions import (
    GeometryError,
    require_finite,
    require_not_negative,
    require_positive,
    require_relief,
)


def drop(angle: float, relief_angle: float, diameter: float) -> float:
    """How far inside the circle the facet lies at ``angle`` behind the edge.

    Relation: ``R - R cos(a) / cos(theta - a)``, written as
    ``2 R sin(theta / 2) sin(a - theta / 2) / cos(theta - a)``, which keeps its digits for small angles
    and where the heel nearly touches. Derived.

    Args:
        angle: behind the edge, in radians, from zero to under ``a`` plus a right angle.
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The drop in mm; below zero where the facet stands proud of the circle.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> round(drop(1 / 3, math.radians(8), 12.0), 5)
        -0.05485
    """
    require_positive("diameter", diameter)
    require_relief("relief_angle", relief_angle)
    if require_not_negative("land_angle", angle) >= relief_angle + math.pi / 2:
        raise GeometryError(
            "One flat facet cannot reach that far round the tool; narrow the land or grind a second facet.",
            "land_width",
        )
    return profile(relief_angle, diameter)(angle)


def profile(relief_angle: float, diameter: float) -> Callable[[float], float]:
    """The drop as a function of the angle behind the edge, checked once and then plain arithmetic.

    Args:
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        A function that gives the drop (mm) at an angle (rad) from zero to under ``a`` plus a right angle.

    Example:
        >>> round(profile(math.radians(8), 12.0)(1 / 3), 5)
        -0.05485
    """
    require_positive("diameter", diameter)
    require_relief("relief_angle", relief_angle)

    def fall(angle: float) -> float:
        half = angle / 2
        return diameter * math.sin(half) * math.sin(relief_angle - half) / math.cos(angle - relief_angle)

    return fall


def drop_along_facet(distance: float, relief_angle: float, diameter: float) -> float:
    """How far inside the circle the facet lies at a straight ``distance`` from the edge.

    Relation: ``R - sqrt(R^2 + s^2 - 2 R s sin(a))``. Derived.

    Args:
        distance: along the facet from the edge, in mm, from zero.
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The drop in mm; below zero beyond the chord ``D sin(a)``.

    Example:
        >>> round(drop_along_facet(12 * math.sin(math.radians(8)), math.radians(8), 12.0), 12)
        0.0
    """
    radius = require_positive("diameter", diameter) / 2
    require_relief("relief_angle", relief_angle)
    require_not_negative("land_width", distance)
    gain = distance * (2 * radius * math.sin(relief_angle) - distance)
    return gain / (radius + math.sqrt(radius * radius - gain)) if gain <= radius * radius else radius


def clear_angle(relief_angle: float) -> float:
    """How far behind the edge the facet meets the circle again: ``2 a``.

    Args:
        relief_angle: at the edge, in radians, from zero to under a right angle.

    Returns:
        The angle in radians.

    Example:
        >>> clear_angle(0.125)
        0.25
    """
    return 2 * require_relief("relief_angle", relief_angle)


def deepest_drop(relief_angle: float, diameter: float) -> float:
    """The most that one facet ever falls inside the circle: ``R (1 - cos(a))``, at ``a`` behind the edge.

    Args:
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The drop in mm.

    Example:
        >>> round(deepest_drop(math.radians(8), 12.0), 5)
        0.05839
    """
    require_relief("relief_angle", relief_angle)
    return require_positive("diameter", diameter) * math.sin(relief_angle / 2) ** 2


def relief_angle_from_drop(heel_drop: float, angle: float, diameter: float) -> float:
    """The relief angle of the facet that lies ``heel_drop`` inside the circle after ``angle``.

    Relation: ``tan(a) = (R / r - cos(theta)) / sin(theta)`` with ``r = R - drop``; the inverse of ``drop``.

    Args:
        heel_drop: in mm; below zero for a heel that stands proud, under the radius.
        angle: from the edge to where the drop was read, in radians, above zero and under half a turn.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: when no facet with a relief from zero up passes there.

    Example:
        >>> round(math.degrees(relief_angle_from_drop(-0.0548499, 1 / 3, 12.0)), 4)
        8.0
    """
    radius = require_positive("diameter", diameter) / 2
    if not 0 < require_finite("land_angle", angle) < math.pi:
        raise GeometryError(
            "The drop of a flat is read between the edge and half a turn behind it.", "land_width"
        )
    if require_finite("drop", heel_drop) >= radius:
        raise GeometryError("The drop is more than the radius of the tool; read it again.", "drop")
    # R/r - cos(theta) = drop/r + 2 sin^2(theta/2), without the loss of digits at small angles.
    rise = heel_drop / (radius - heel_drop) + 2 * math.sin(angle / 2) ** 2
    relief = math.atan2(rise, math.sin(angle))
    if relief < 0:
        raise GeometryError(
            "The heel stands so proud that the surface would rise behind the edge; read the drop again.",
            "drop",
        )
    return relief
