"""The web of a drill: how it grows toward the shank, and what thinning takes off it.

Seen from the side the two flute bottoms run apart from the point to the shank, evenly enough between two places that
were measured. A drill that was ground shorter has the web of the place where its point is now. All of it is derived.
"""

from __future__ import annotations

import math

from geometry.preconditions import (
    refuse,
    require_finite,
    require_not_negative,
    require_positive,
)
from geometry.sentences import Rounding, angle

USUAL_SHARE = 0.15
"""The web at the point that is taken where nobody measured it, as a share of the diameter; common practice, no source."""


def growth(web: float, further_back: float, distance: float) -> float:
    """How much thicker the web becomes for each unit of length: ``(w2 - w1) / l``.

    Args:
        web: at the point, in mm, from zero.
        further_back: the web at the second place, in mm, from zero.
        distance: between both places along the axis, in mm, above zero.

    Returns:
        A ratio; below zero where the web becomes thinner.

    Example:
        >>> round(growth(1.6, 2.4, 50.0), 6)
        0.016
    """
    rise = require_not_negative("second_web", further_back) - require_not_negative("web_thickness", web)
    return rise / require_positive("web_distance", distance)


def web_at(web: float, ratio: float, ground_off: float) -> float:
    """The web at the point of a drill that was ground shorter.

    Args:
        web: at the point before, in mm, from zero.
        ratio: from ``growth``.
        ground_off: along the axis, in mm, from zero.

    Returns:
        The web in mm.

    Raises:
        GeometryError: when nothing would be left of it.

    Example:
        >>> round(web_at(1.6, 0.016, 25.0), 6)
        2.0
    """
    found = require_not_negative("web_thickness", web) + require_finite(
        "web_growth", ratio
    ) * require_not_negative("length_ground_off", ground_off)
    if found < 0:
        raise refuse(
            "length_ground_off",
            "By these two measurements the web would be gone before that place. Measure it in both places again.",
        )
    return found


def notch_length(stock: float, notch_angle: float, ratio: float = 0.0) -> float:
    """How far a notch runs back along the axis: ``s / (tan(d) - growth / 2)``.

    Its floor leaves the middle at the notch's angle, the bottom of the flute at half of the growth; they meet where
    the notch ends.

    Args:
        stock: off one side of the web at the point, in mm, from zero.
        notch_angle: of its floor to the axis, in radians, under a right angle.
        ratio: from ``growth``.

    Returns:
        The length in mm.

    Raises:
        GeometryError: when the notch never comes out of the web.

    Example:
        >>> round(notch_length(0.5, math.atan(0.5)), 9)
        1.0
    """
    opens = math.tan(notch_angle) - ratio / 2
    if opens <= 1e-6 or notch_angle >= math.pi / 2:
        raise refuse(
            "notch_angle",
            "A notch at that angle never comes out of the web; it lies between {least} and {most} to the axis.",
            {
                "least": angle(max(math.atan(ratio / 2), 0.0), Rounding.UP),
                "most": angle(math.pi / 2, Rounding.DOWN),
            },
        )
    return require_not_negative("thinning_stock", stock) / opens
