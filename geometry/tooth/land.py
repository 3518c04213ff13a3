"""From the width of a land to the angle that the tool turns over it, and back.

A caliper laid across a land gives the chord, paper wrapped round the tool gives the arc. On a wide
land of a small tool the two differ by more than an indicator division, so every calculation asks which.
"""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_not_negative, require_positive
from geometry.sentences import length


def land_angle(land_width: float, diameter: float, measured_as: str) -> float:
    """The angle that the tool turns from the edge to the heel.

    Relation: ``2 w / D`` for an arc, ``2 asin(w / D)`` for a chord. Derived.

    Args:
        land_width: width of the land, in mm, from zero.
        diameter: of the circle that the edges run on, in mm, above zero.
        measured_as: ``"arc"`` or ``"chord"``.

    Returns:
        The angle in radians, from zero to a whole turn (arc) or half a turn (chord).

    Raises:
        GeometryError: when the land goes further round than the tool does.

    Example:
        >>> round(land_angle(2.0, 12.0, "arc"), 6)
        0.333333
        >>> round(land_angle(12.0, 12.0, "chord") / math.pi, 6)
        1.0
    """
    require_positive("diameter", diameter)
    require_not_negative("land_width", land_width)
    if measured_as == "arc":
        if land_width > math.pi * diameter:
            raise refuse(
                "land_width",
                "A land of {land} is longer than the whole way round a tool of {diameter}; measure the land again.",
                {"land": length(land_width), "diameter": length(diameter)},
            )
        return 2 * land_width / diameter
    if measured_as == "chord":
        if land_width > diameter:
            raise refuse(
                "land_width",
                "A caliper cannot find a land of {land} on a tool of {diameter}; measure the land again, "
                "or say that it is an arc.",
                {"land": length(land_width), "diameter": length(diameter)},
            )
        return 2 * math.asin(land_width / diameter)
    raise refuse("land_measured_as", "A land is measured as arc or as chord.")


def land_width(angle: float, diameter: float, measured_as: str) -> float:
    """The width of a land that the tool turns through ``angle``: the inverse of ``land_angle``.

    Relation: ``angle D / 2`` for an arc, ``D sin(angle / 2)`` for a chord. Derived.

    Args:
        angle: from edge to heel, in radians, from zero to a whole turn; for a chord to half a turn.
        diameter: of the circle that the edges run on, in mm, above zero.
        measured_as: ``"arc"`` or ``"chord"``.

    Returns:
        The width in mm.

    Raises:
        GeometryError: when no land of that measure turns so far.

    Example:
        >>> land_width(0.5, 12.0, "arc")
        3.0
    """
    require_positive("diameter", diameter)
    require_not_negative("land_angle", angle)
    if measured_as == "arc":
        return angle * diameter / 2
    if measured_as == "chord":
        if angle > math.pi * (1 + 1e-12):
            raise refuse(
                "land_angle", "A land that goes more than half way round has no chord; give its arc."
            )
        return diameter * math.sin(min(angle, math.pi) / 2)
    raise refuse("land_measured_as", "A land is measured as arc or as chord.")
