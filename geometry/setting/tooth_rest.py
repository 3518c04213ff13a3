"""A tooth of a helix on its rest: how far the edge rises along the axis, and what a rest beside the wheel does.

The edge winds round the tool once in its lead ``L = pi D / tan(psi)``. Over a way ``x`` along the axis it rises
``x tan(psi)`` round the circle, which turns the tool by ``x tan(psi) / R = 2 pi x / L``. A rest that the tooth touches
``x`` beside the line of the wheel so holds an edge that stands turned by as much against the one under the wheel.
All derived.
"""

from __future__ import annotations

import math

from geometry.preconditions import (
    refuse,
    require_angle,
    require_finite,
    require_not_negative,
    require_positive,
    require_relief,
)

STRAIGHT = 1e-9
"""The tangent of a helix under which a tooth counts as straight: its lead would be longer than any shop."""


def helix_lead(helix_angle: float, diameter: float) -> float | None:
    """How far along the axis the edge winds once round: ``pi D / tan(psi)``.

    Args:
        helix_angle: on the diameter, from the axis, in radians, from zero to under a right angle.
        diameter: in mm, above zero.

    Returns:
        The lead in mm; nothing for a straight tooth, which never comes round.

    Example:
        >>> round(helix_lead(math.radians(45), 20.0), 4)
        62.8319
    """
    rises = math.tan(require_angle("helix_angle", helix_angle, -1e-12, math.pi / 2))
    whole = math.pi * require_positive("diameter", diameter)
    return whole / rises if rises > STRAIGHT else None


def helix_of_lead(lead: float, diameter: float) -> float:
    """The helix angle of a lead: ``atan(pi D / L)``, the inverse of ``helix_lead``.

    Args:
        lead: in mm, above zero.
        diameter: in mm, above zero.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(helix_of_lead(helix_lead(0.5, 20.0), 20.0)), 6) == round(math.degrees(0.5), 6)
        True
    """
    return math.atan2(math.pi * require_positive("diameter", diameter), require_positive("helix_lead", lead))


def rise(along: float, helix_angle: float) -> float:
    """How far the edge rises round the circle over a way along the axis: ``x tan(psi)``.

    Example:
        >>> round(rise(10.0, math.radians(45)), 9)
        10.0
    """
    return require_finite("along", along) * math.tan(
        require_angle("helix_angle", helix_angle, -1e-12, math.pi / 2)
    )


def rest_height(relief_angle: float, turned: float, diameter: float) -> float:
    """How far below the axis the tooth touches its rest: ``R sin(a + turn)``.

    Args:
        relief_angle: of the flat that a cup wheel grinds opposite the edge, in radians.
        turned: how far the edge at the rest stands below the one under the wheel, in radians.
        diameter: of the tool, in mm, above zero.

    Returns:
        The height in mm; below zero it is above the axis.

    Raises:
        GeometryError: when the edge at the rest is a quarter turn away from level.

    Example:
        >>> round(rest_height(math.radians(6), 0.0, 20.0), 4)
        1.0453
    """
    found = require_relief("relief_angle", relief_angle) + require_finite("rest_turn", turned)
    if not -math.pi / 2 < found < math.pi / 2:
        raise refuse(
            "rest_offset",
            "So far beside the wheel the tooth has wound away from the rest. Bring the rest nearer to the line of the wheel.",
        )
    return require_positive("diameter", diameter) / 2 * math.sin(found)


def widest_level_rest(most_turn: float, helix_angle: float, diameter: float) -> float | None:
    """How wide a level rest may be for the tool to turn no more than so far as a tooth leaves it.

    Relation: ``R turn / tan(psi)``: the end of the tooth rides from one corner of the rest to the other.

    Args:
        most_turn: in radians, from zero.
        helix_angle: in radians, from zero to under a right angle.
        diameter: in mm, above zero.

    Returns:
        The width in mm; nothing for a straight tooth, for which any will do.

    Example:
        >>> round(widest_level_rest(math.radians(0.25), math.radians(30), 20.0), 4)
        0.0756
    """
    rises = math.tan(require_angle("helix_angle", helix_angle, -1e-12, math.pi / 2))
    turn = require_not_negative("rest_turn", most_turn)
    return require_positive("diameter", diameter) / 2 * turn / rises if rises > STRAIGHT else None
