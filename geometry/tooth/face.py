"""The flat face of a tooth: how far its plane passes from the axis, and what rake that gives.

One plane serves every diameter of the tool, so its rake grows toward the axis.
"""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_angle, require_finite, require_positive
from geometry.sentences import Rounding, length


def face_offset(rake_angle: float, diameter: float) -> float:
    """How far the plane of the face passes from the axis: ``R sin(g)``.

    Published for taps as half the major diameter times the sine of the rake: rotating-tool catalogue 2017,
    user guide, regrinding of taps. The same follows from the triangle of axis, edge and foot of the plane.

    Args:
        rake_angle: at the edge, in radians, between a right angle negative and one positive.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The offset in mm; below zero for a negative rake.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> round(face_offset(math.radians(15), 10.0), 2)
        1.29
    """
    require_angle("rake_angle", rake_angle, -math.pi / 2, math.pi / 2)
    return require_positive("diameter", diameter) / 2 * math.sin(rake_angle)


def rake_angle(offset: float, diameter: float) -> float:
    """The rake that a plane at ``offset`` from the axis gives on ``diameter``: ``asin(e / R)``.

    The inverse of ``face_offset``; with the offset kept and another diameter it is the rake of the same
    flat face there. Derived. Near a right angle the sine is flat, so the angle there is worked out from
    both legs of the triangle.

    Args:
        offset: of the plane of the face from the axis, in mm; below zero for a negative rake.
        diameter: of the circle on which the rake is wanted, in mm, above zero.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: when the plane does not come so near the axis.

    Example:
        >>> round(math.degrees(rake_angle(1.0, 4.0)), 9)
        30.0
    """
    radius = require_positive("diameter", diameter) / 2
    if abs(require_finite("face_offset", offset)) >= radius:
        raise refuse(
            "face_offset",
            "A face {offset} off the axis never meets a circle of radius {radius}; set it nearer the axis.",
            {"offset": length(abs(offset), Rounding.UP), "radius": length(radius, Rounding.DOWN)},
        )
    return math.atan2(offset, math.sqrt((radius - offset) * (radius + offset)))
