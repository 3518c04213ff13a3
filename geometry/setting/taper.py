"""The taper of reamers, drills and taps, and the swivel of the table that grinds it.

Taper is counted on the diameter: 1 in 1000 takes 0.1 mm off the diameter in 100 mm. The side makes half of
the whole angle with the axis, and that half is what the table is swivelled by.
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
from geometry.sentences import Amount, Rounding, length

STEEP = 0.005
"""The taper from which on a tool cuts a taper, and is not merely smaller toward its back: 1 in 200, where a back taper takes 1 in
1000. Common practice, no source."""

FOOT = 304.8
"""A foot in mm, exactly (1959)."""

PER = 100.0
"""The length in mm over which a taper is told where no length was given; where inches are worked in it is a foot."""


def over(changes: float, per: float | None) -> tuple[Amount, Amount]:
    """How much changes over a length, and that length, as parts of a sentence.

    Args:
        changes: for each unit of length.
        per: the length in mm, above zero; nothing where none was given.

    Returns:
        The change in mm and the length; without one over 100 mm, and where inches are worked in over a foot.

    Example:
        >>> change, per = over(1 / 48, None)
        >>> round(change.value, 4), per.value, round(change.in_inches.value, 4), per.in_inches
        (2.0833, 100.0, 6.35, 'a foot')
    """
    if per is not None:
        return length(changes * per), length(per)
    return length(changes * PER, in_inches=length(changes * FOOT)), length(PER, in_inches="a foot")


def taper_of_diameters(front_diameter: float, back_diameter: float, taper_length: float) -> float:
    """The taper between two measured diameters: ``(front - back) / length``.

    Args:
        front_diameter: in mm, above zero.
        back_diameter: in mm, above zero; larger than the front gives a taper below zero.
        taper_length: how far apart along the axis they were measured, in mm, above zero.

    Returns:
        The loss of diameter for each unit of length.

    Example:
        >>> round(taper_of_diameters(10.0, 9.95, 100.0), 9)
        0.0005
    """
    fall = require_positive("diameter", front_diameter) - require_positive("back_diameter", back_diameter)
    return fall / require_positive("taper_length", taper_length)


def swivel_of_taper(taper_ratio: float) -> float:
    """The angle of one side to the axis: ``atan(taper / 2)``.

    Args:
        taper_ratio: on diameter, for each unit of length; below zero it grows toward the back.

    Returns:
        Half of the whole angle in radians, below zero for such a taper.

    Example:
        >>> round(math.degrees(swivel_of_taper(1 / 16)), 4)
        1.7899
    """
    return math.atan(require_finite("taper_ratio", taper_ratio) / 2)


def taper_of_angle(taper_angle: float) -> float:
    """The taper of a whole angle: ``2 tan(angle / 2)``, the inverse of ``swivel_of_taper`` doubled.

    Args:
        taper_angle: the whole angle from side to side, in radians, from zero to under half a turn.

    Returns:
        The taper on diameter, for each unit of length.

    Example:
        >>> round(taper_of_angle(math.radians(10)), 5)
        0.17498
    """
    return 2 * math.tan(require_angle("taper_angle", taper_angle, -1e-12, math.pi) / 2)


def diameter_behind(front_diameter: float, taper_ratio: float, distance: float) -> float:
    """The diameter at a distance behind the front: ``D - taper x distance``.

    Args:
        front_diameter: in mm, above zero.
        taper_ratio: on diameter, for each unit of length.
        distance: behind the front along the axis, in mm, from zero.

    Returns:
        The diameter in mm.

    Raises:
        GeometryError: when the taper would have come to a point before that.

    Example:
        >>> round(diameter_behind(10.0, 0.001, 50.0), 9)
        9.95
    """
    require_positive("diameter", front_diameter)
    found = front_diameter - require_finite("taper_ratio", taper_ratio) * (
        require_not_negative("distance_from_front", distance)
    )
    if found > 0:
        return found
    raise refuse(
        "distance_from_front",
        "The taper comes to a point {end} behind the front, before {distance}; give a shorter distance.",
        {"end": length(front_diameter / taper_ratio, Rounding.DOWN), "distance": length(distance)},
    )
