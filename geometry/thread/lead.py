"""How a thread advances along the axis, and so how far a tap moves while its land is ground."""

from __future__ import annotations

import math

from geometry.preconditions import GeometryError, require_finite, require_positive

CUTS = {"right": "clockwise", "left": "anticlockwise"}
"""Which way a tap of each hand turns as it cuts, seen from its shank."""


def lead(pitch: float, starts: float) -> float:
    """How far the thread advances in one turn: starts times pitch.

    Definition of lead in the thread standards.

    Args:
        pitch: in mm, above zero.
        starts: how many threads run side by side, a whole number from one.

    Returns:
        The lead in mm.

    Example:
        >>> lead(1.5, 2)
        3.0
    """
    if require_positive("starts", starts) != int(starts):
        raise GeometryError("The starts of a thread are a whole number.", "starts")
    return require_positive("pitch", pitch) * starts


def advance(angle: float, lead_length: float) -> float:
    """How far the thread goes along the axis while the tool turns by ``angle``: ``L theta / (2 pi)``.

    Derived from the definition of lead. Turned the way it cuts, a tap of either hand shows its thread going away
    from the point: a left-hand tap is the mirror image of a right-hand one and turns the other way.

    Args:
        angle: turned from the edge, in radians.
        lead_length: the advance in one turn, in mm, above zero.

    Returns:
        The advance in mm.

    Example:
        >>> round(advance(3.2 / 6, 1.75), 5)
        0.14854
    """
    return require_positive("lead", lead_length) * require_finite("land_angle", angle) / (2 * math.pi)


def lead_angle(lead_length: float, diameter: float) -> float:
    """How steeply the thread climbs on ``diameter``: ``atan(L / (pi D))``.

    Args:
        lead_length: the advance in one turn, in mm, above zero.
        diameter: on which the angle is wanted, in mm, above zero.

    Returns:
        The angle in radians, from the plane square to the axis.

    Example:
        >>> round(math.degrees(lead_angle(1.75, 12.0)), 4)
        2.6578
    """
    return math.atan2(require_positive("lead", lead_length), math.pi * require_positive("diameter", diameter))
