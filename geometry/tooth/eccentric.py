"""Eccentric relief: a cam lets the surface behind the edge fall evenly with the angle turned.

``r(theta) = R - k theta``: an Archimedean spiral. It leaves the edge at the relief angle and, unlike a
flat facet, never comes back to the circle.
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


def throw_per_radian(relief_angle: float, diameter: float) -> float:
    """How far the cam falls for each radian turned: ``k = R tan(a)``.

    Derived: the slope of ``r = R - k theta`` against the circle at the edge is ``k / R``.

    Args:
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The fall in mm for each radian.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> throw_per_radian(math.atan(0.25), 8.0)
        1.0
    """
    require_relief("relief_angle", relief_angle)
    return require_positive("diameter", diameter) / 2 * math.tan(relief_angle)


def throw_per_turn(relief_angle: float, diameter: float) -> float:
    """How far the surface would fall in one whole turn: ``pi D tan(a)``.

    Divided by the number of teeth it is the throw of a relieving cam with one lobe for each tooth.
    Published in that form for the relieving cam of form-relieved hobs; the same line follows from ``2 pi k``.

    Args:
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The fall in mm.

    Example:
        >>> round(throw_per_turn(math.radians(10), 80.0) / 10, 2)
        4.43
    """
    return 2 * math.pi * throw_per_radian(relief_angle, diameter)


def drop(angle: float, relief_angle: float, diameter: float) -> float:
    """How far inside the circle the surface lies at ``angle`` behind the edge: ``k theta``.

    Args:
        angle: behind the edge, in radians, from zero.
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The drop in mm, never below zero.

    Raises:
        GeometryError: when the cam would have passed the centre of the tool.

    Example:
        >>> round(drop(1 / 3, math.radians(8), 12.0), 5)
        0.28108
    """
    fall = throw_per_radian(relief_angle, diameter) * require_not_negative("land_angle", angle)
    if fall >= diameter / 2:
        raise GeometryError(
            "The relief is so steep that the heel would pass the centre of the tool.", "relief_angle"
        )
    return fall


def profile(relief_angle: float, diameter: float) -> Callable[[float], float]:
    """The drop as a function of the angle behind the edge, checked once and then plain arithmetic.

    Args:
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        A function that gives the drop (mm) at an angle (rad) from zero.

    Example:
        >>> round(profile(math.radians(8), 12.0)(1 / 3), 5)
        0.28108
    """
    fall = throw_per_radian(relief_angle, diameter)
    return lambda angle: fall * angle


def relief_angle_from_drop(heel_drop: float, angle: float, diameter: float) -> float:
    """The relief angle at the edge that gives ``heel_drop`` after ``angle``: ``atan(drop / (R theta))``.

    The inverse of ``drop``.

    Args:
        heel_drop: in mm, from zero to under the radius.
        angle: from the edge to where the drop was read, in radians, above zero.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: outside those ranges; a heel that stands proud is not an eccentric relief.

    Example:
        >>> round(math.degrees(relief_angle_from_drop(0.28108, 1 / 3, 12.0)), 3)
        8.0
    """
    require_positive("diameter", diameter)
    require_positive("land_angle", angle)
    if require_finite("drop", heel_drop) < 0:
        raise GeometryError("A heel that stands proud of the circle has no eccentric relief.", "drop")
    if heel_drop >= diameter / 2:
        raise GeometryError("The drop is more than the radius of the tool; read it again.", "drop")
    return math.atan2(heel_drop, diameter / 2 * angle)


def local_relief(angle: float, relief_angle: float, diameter: float) -> float:
    """The relief at a place behind the edge, against the circle through that place.

    Relation: ``atan(k / r(theta))``. It grows slowly toward the heel, because the radius shrinks.

    Args:
        angle: behind the edge, in radians, from zero.
        relief_angle: at the edge, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The local relief angle in radians.

    Example:
        >>> round(math.degrees(local_relief(0.0, math.radians(8), 12.0)), 6)
        8.0
    """
    radius = diameter / 2 - drop(angle, relief_angle, diameter)
    return math.atan2(throw_per_radian(relief_angle, diameter), radius)


def clear_angle(relief_angle: float) -> float:
    """How far behind the edge an eccentric relief stays inside the circle.

    It never comes back: the limit is the whole turn, or the centre of the tool for a steep cam, at
    ``1 / tan(a)`` radians.

    Args:
        relief_angle: at the edge, in radians, from zero to under a right angle.

    Returns:
        The angle in radians; zero for no relief at all.

    Example:
        >>> clear_angle(math.radians(8)) == 2 * math.pi
        True
    """
    require_relief("relief_angle", relief_angle)
    if relief_angle == 0:
        return 0.0
    return min(2 * math.pi, 1 / math.tan(relief_angle))
