"""The relief of a thread's flanks that follows from the fall of the thread land toward the axis.

A cam that lets the thread land fall by ``k`` for each radian moves the whole thread profile toward the axis. A flank
that lies at ``h`` to the plane square to the axis so falls away square to itself. With the lead angle ``l`` at the
diameter ``2 r``

    square to the flank    tan(a_f) = (k / r) tan h cos l / sqrt(1 + tan^2 l + tan^2 h), which is (k / r) sin h without lead
    along the axis         tan(a_s) = (k / r) tan h

Derived; the tests measure the way from a turned flank to the one in front of it. The second line is published for the
relieving of hobs, with ``h`` their pressure angle. ``h`` is half of the angle between the flanks of a symmetrical
thread: a flank of the 60 degree form has the sine of 30 degrees of the fall, not the cosine.
"""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_angle, require_relief

LEAST_FLANK = math.radians(0.5)
"""A flank that leans less has no relief from a fall toward the axis that anybody could want; no source."""


def _share(flank_angle: float, lead_angle: float) -> float:
    """How much of the slope toward the axis goes square to the flank."""
    leans = math.tan(require_angle("flank_angle", flank_angle, -1e-12, math.pi / 2))
    climbs = math.tan(require_angle("lead_angle", lead_angle, -1e-12, math.pi / 2))
    return leans * math.cos(lead_angle) / math.sqrt(1 + climbs * climbs + leans * leans)


def flank_relief(radial_relief: float, flank_angle: float, lead_angle: float = 0.0) -> float:
    """The relief square to a flank from the relief square to the axis at the same diameter.

    Args:
        radial_relief: square to the axis, in radians, from zero to under a right angle.
        flank_angle: of the flank to the plane square to the axis, in radians, from zero to under a right angle.
        lead_angle: of the thread at that diameter, in radians, from zero to under a right angle.

    Returns:
        The angle in radians, in the plane along the thread and square to the flank.

    Example:
        >>> round(math.degrees(flank_relief(math.radians(2), math.radians(30))), 4)
        1.0003
    """
    return math.atan(
        math.tan(require_relief("relief_angle", radial_relief)) * _share(flank_angle, lead_angle)
    )


def radial_of_flank(relief: float, flank_angle: float, lead_angle: float = 0.0) -> float:
    """The relief square to the axis that gives a flank a relief square to itself: the inverse of ``flank_relief``.

    Args:
        relief: square to the flank, in radians, from zero to under a right angle.
        flank_angle: of the flank to the plane square to the axis, in radians, above half a degree.
        lead_angle: of the thread at that diameter, in radians, from zero to under a right angle.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: for a flank square to the axis, which a fall toward the axis does not relieve.

    Example:
        >>> round(math.degrees(radial_of_flank(flank_relief(0.1, 0.5, 0.05), 0.5, 0.05)), 6) == round(math.degrees(0.1), 6)
        True
    """
    require_leaning(flank_angle)
    return math.atan(math.tan(require_relief("flank_relief_angle", relief)) / _share(flank_angle, lead_angle))


def side_relief(radial_relief: float, flank_angle: float) -> float:
    """How steeply a flank falls away along the axis: ``tan = tan(a_r) tan h``.

    Args:
        radial_relief: square to the axis, in radians, from zero to under a right angle.
        flank_angle: of the flank to the plane square to the axis, in radians, from zero to under a right angle.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(side_relief(math.radians(10), math.radians(20))), 2)
        3.67
    """
    leans = math.tan(require_angle("flank_angle", flank_angle, -1e-12, math.pi / 2))
    return math.atan(math.tan(require_relief("relief_angle", radial_relief)) * leans)


def flank_gap(fall: float, flank_angle: float, lead_angle: float = 0.0) -> float:
    """How far a flank stands off square to itself where the land has fallen toward the axis.

    Args:
        fall: toward the axis, in mm.
        flank_angle: of the flank to the plane square to the axis, in radians, from zero to under a right angle.
        lead_angle: of the thread, in radians, from zero to under a right angle.

    Returns:
        The gap in mm.

    Example:
        >>> round(flank_gap(0.1, math.radians(30)), 6)
        0.05
    """
    return fall * _share(flank_angle, lead_angle) / math.cos(lead_angle)


def require_leaning(flank_angle: float) -> float:
    """Return the angle of a flank (radians), or raise where it stands square to the axis."""
    if flank_angle < LEAST_FLANK:
        raise refuse(
            "flank_angle",
            "A flank that stands square to the axis has no relief from a fall toward the axis. Give the relief of the thread "
            "land instead.",
        )
    return flank_angle
