"""What an indicator reads behind an edge at an angle to the axis, by where it points, and back.

The indicator stands over the edge and is set to zero there; then the tool is turned on. Pointed at the
axis it reads the radial view, square to the surface the normal view, along the axis the axial view.

Eccentric relief falls evenly, so a reading is ``r theta tan(relief in that view)``. A flat is the plane
through the edge: with ``t = tan(a_n)``, and the turn ``theta``, the plunger meets it at

    radial   r (cos(theta) + (t / cos k) sin(theta) - 1) / (cos(theta) + (t / cos k) sin(theta))
    axial    r (sin(theta) t / sin k - (1 - cos(theta)) cos k / sin k)
    normal   r (t sin(theta) - cos k (1 - cos(theta))) / (sin k^2 + cos k^2 cos(theta) + t cos k sin(theta))

All derived; the tests find the same by cutting a plane with the turned line of the plunger.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from geometry.edge.views import View, normal_of, require_kappa, seen, share
from geometry.preconditions import GeometryError, refuse, require_finite, require_positive

POINTS: dict[View, str] = {
    "radial": "at the axis",
    "normal": "square to the surface",
    "axial": "along the axis",
}
"""Where the indicator points, in words, for each view."""


def eccentric_reading(
    normal_relief: float, kappa: float, diameter: float, view: View
) -> Callable[[float], float]:
    """The readings behind the edge of an eccentric relief, as a function of the turn (rad), in mm.

    Args:
        normal_relief: square to the edge, in radians, from zero to under a right angle.
        kappa: of the edge to the axis, in radians, from zero to a right angle.
        diameter: of the place on the edge, in mm, above zero.
        view: in which the indicator points.

    Raises:
        GeometryError: where the view shows nothing of that edge.

    Example:
        >>> cone = eccentric_reading(math.radians(8), math.radians(41), 25.4, "radial")
        >>> round(cone(0.5) / 25.4, 4)
        0.0466
    """
    angle = seen(normal_relief, kappa, view)
    if angle is None:
        raise _shows_nothing(view)
    fall = math.tan(angle) * require_positive("diameter", diameter) / 2
    return lambda turned: fall * turned


def flat_reading(normal_relief: float, kappa: float, diameter: float, view: View) -> Callable[[float], float]:
    """The readings behind the edge of one flat, as a function of the turn (rad), in mm.

    Args:
        normal_relief: square to the edge, in radians, from zero to under a right angle.
        kappa: of the edge to the axis, in radians, from zero to a right angle.
        diameter: of the place on the edge, in mm, above zero.
        view: in which the indicator points.

    Returns:
        A function that holds as far round as ``flat_reach``; below zero the flat stands proud.

    Example:
        >>> land = flat_reading(math.radians(8), 0.0, 12.0, "radial")
        >>> round(land(1 / 3), 5)
        -0.05485
    """
    radius, kap = require_positive("diameter", diameter) / 2, require_kappa(kappa)
    if share(kap, view) == 0:
        raise _shows_nothing(view)
    slope, cos, sin = math.tan(normal_relief), share(kap, "radial"), share(kap, "axial")

    def gain(turned: float) -> float:
        """How far the plane falls below the cone square to it, for a radius of one."""
        return slope * math.sin(turned) - cos * 2 * math.sin(turned / 2) ** 2

    if view == "axial":
        return lambda turned: radius * gain(turned) / sin
    if view == "radial":
        return lambda turned: radius * gain(turned) / (cos * math.cos(turned) + slope * math.sin(turned))
    return lambda turned: (
        radius * gain(turned) / (sin * sin + cos * cos * math.cos(turned) + slope * cos * math.sin(turned))
    )


def flat_reach(normal_relief: float, kappa: float) -> float:
    """How far behind the edge one flat is back on the circle: twice the radial relief, half a turn on an end.

    Example:
        >>> round(math.degrees(flat_reach(math.radians(8), 0.0)), 6)
        16.0
    """
    radial = seen(normal_relief, kappa, "radial")
    return math.pi if radial is None else 2 * radial


def eccentric_from_reading(reading: float, turned: float, kappa: float, diameter: float, view: View) -> float:
    """The relief square to the edge of an eccentric surface that gives a reading: the inverse.

    Args:
        reading: in mm, from zero.
        turned: from the edge to where it was read, in radians, above zero.
        kappa: of the edge to the axis, in radians, from zero to a right angle.
        diameter: of the place on the edge, in mm, above zero.
        view: in which the indicator points.

    Example:
        >>> round(math.degrees(eccentric_from_reading(0.0466 * 25.4, 0.5, math.radians(41), 25.4, "radial")), 2)
        8.01
    """
    radius = require_positive("diameter", diameter) / 2
    require_positive("land_angle", turned)
    if require_finite("drop", reading) < 0:
        raise GeometryError("A heel that stands proud has no eccentric relief.", "drop")
    return normal_of(math.atan2(reading, radius * turned), kappa, view)


def flat_from_reading(reading: float, turned: float, kappa: float, diameter: float, view: View) -> float:
    """The relief square to the edge of the flat that gives a reading: the inverse of ``flat_reading``.

    Args:
        reading: in mm; below zero for a place that stands proud.
        turned: from the edge to where it was read, in radians, above zero and under half a turn.
        kappa: of the edge to the axis, in radians, from zero to a right angle.
        diameter: of the place on the edge, in mm, above zero.
        view: in which the indicator points.

    Raises:
        GeometryError: when no flat with a relief from zero up passes there.

    Example:
        >>> round(math.degrees(flat_from_reading(-0.0548499, 1 / 3, 0.0, 12.0, "radial")), 4)
        8.0
    """
    radius, kap = require_positive("diameter", diameter) / 2, require_kappa(kappa)
    if share(kap, view) == 0:
        raise _shows_nothing(view)
    if not 0 < require_finite("land_angle", turned) < math.pi:
        raise refuse("land_width", "The drop of a flat is read between the edge and half a turn behind it.")
    cos, sin = share(kap, "radial"), share(kap, "axial")
    read = require_finite("drop", reading) / radius
    sunk = 2 * math.sin(turned / 2) ** 2
    if view == "axial":
        top, bottom = read * sin + cos * sunk, math.sin(turned)
    elif view == "radial":
        top, bottom = cos * (read * math.cos(turned) + sunk), math.sin(turned) * (1 - read)
    else:
        top = read * (sin * sin + cos * cos * math.cos(turned)) + cos * sunk
        bottom = math.sin(turned) * (1 - read * cos)
    if bottom <= 0:
        raise refuse("drop", "The drop is more than the radius of the tool; read it again.")
    if top < 0:
        raise refuse(
            "drop",
            "The heel stands so proud that the surface would rise behind the edge; read the drop again.",
        )
    return math.atan2(top, bottom)


def _shows_nothing(view: View) -> GeometryError:
    return refuse(
        "indicator_points",
        "Pointed {points} an indicator sees nothing of this edge. Point it square to the surface.",
        {"points": POINTS[view]},
    )
