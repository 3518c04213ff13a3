"""What the feed takes off the relief of an edge that cuts along the axis.

A place on the edge screws into the work while it turns. Its path climbs ``feed`` in one turn round its
own circle, steepest where that circle is smallest, so relief is used up from the inside outward.
"""

from __future__ import annotations

import math
from collections.abc import Callable

from geometry.preconditions import refuse, require_not_negative, require_positive, require_relief
from geometry.sentences import length


def feed_slope(feed: float, diameter: float) -> float:
    """How steeply the path of one place on the edge climbs: ``atan(f / (pi D))``. Derived.

    Args:
        feed: along the axis in one turn, in mm, from zero; with several edges still the feed of a turn.
        diameter: of the circle that the place runs on, in mm, above zero.

    Returns:
        The angle in radians, from the plane square to the axis.

    Example:
        >>> round(math.degrees(feed_slope(0.25, 6.0)), 4), round(math.degrees(feed_slope(0.25, 1.5)), 4)
        (0.7599, 3.0368)
    """
    return math.atan2(require_not_negative("feed", feed), math.pi * require_positive("diameter", diameter))


def largest_feed(lip_relief: float, diameter: float) -> float:
    """The feed whose path is as steep as the relief: ``pi D tan(a)``, the inverse of ``feed_slope``.

    Args:
        lip_relief: on the cylinder through the place, in radians, from zero to under a right angle.
        diameter: of the circle that the place runs on, in mm, above zero.

    Returns:
        The feed in mm for one turn; a feed has to stay under it.

    Example:
        >>> round(largest_feed(math.radians(8), 1.5), 4)
        0.6623
    """
    require_relief("relief_angle", lip_relief)
    return math.pi * require_positive("diameter", diameter) * math.tan(lip_relief)


def relief_left(lip_relief: float, feed: float, diameter: float) -> float:
    """The relief that the feed leaves at one place: ``a - atan(f / (pi D))``.

    Args:
        lip_relief: on the cylinder through the place, in radians, from zero to under a right angle.
        feed: along the axis in one turn, in mm, from zero.
        diameter: of the circle that the place runs on, in mm, above zero.

    Returns:
        The angle in radians; at zero the land lies on the cut surface, below it drags.

    Example:
        >>> round(math.degrees(relief_left(math.radians(8), 0.25, 1.5)), 4)
        4.9632
    """
    return require_relief("relief_angle", lip_relief) - feed_slope(feed, diameter)


def left_of_fall(fall_per_turn: float, feed: float, diameter: float) -> float:
    """The relief that the feed leaves where the land falls back evenly along the axis.

    Relation: ``atan(fall / (pi D)) - atan(f / (pi D))``, above zero at every diameter or at none. Derived.

    Args:
        fall_per_turn: of the land along the axis, in mm for one turn; below zero it rises.
        feed: along the axis in one turn, in mm, from zero.
        diameter: of the circle that the place runs on, in mm, above zero.

    Returns:
        The angle in radians; at zero the land lies on the cut surface, below it drags.

    Example:
        >>> left_of_fall(0.25, 0.25, 6.0)
        0.0
    """
    return math.atan2(fall_per_turn, math.pi * require_positive("diameter", diameter)) - feed_slope(
        feed, diameter
    )


def weakest_of_fall(fall_per_turn: float, feed: float, inner: float, outer: float) -> float:
    """The diameter at which ``left_of_fall`` is least.

    Where relief is left that is one of the ends. A land that drags may drag most in between, at
    ``sqrt(fall feed) / pi``, where the difference of the two slopes turns. Derived.

    Args:
        fall_per_turn: of the land along the axis, in mm for one turn.
        feed: along the axis in one turn, in mm, from zero.
        inner: the smallest diameter of the edge, in mm, above zero.
        outer: the largest, in mm.

    Returns:
        The diameter in mm, from ``inner`` to ``outer``.

    Example:
        >>> weakest_of_fall(2.0, 0.25, 6.0, 8.0)
        8.0
    """
    between = math.sqrt(max(fall_per_turn, 0.0) * require_not_negative("feed", feed)) / math.pi
    places = (inner, between, outer) if inner < between < outer else (inner, outer)
    return min(places, key=lambda diameter: left_of_fall(fall_per_turn, feed, diameter))


def relief_along_lip(
    runs: str, outer: tuple[float, float], inner: tuple[float, float]
) -> Callable[[float], float]:
    """The lip relief as a function of the diameter of the place.

    ``constant`` keeps the outer relief; ``rising`` goes evenly with the diameter from the outer relief to
    the inner; ``cam`` falls back evenly along the axis, ``tan(a) = tan(outer) D / d``.

    Args:
        runs: ``"constant"``, ``"rising"`` or ``"cam"``.
        outer: diameter (mm) and lip relief (rad) at the outer corner.
        inner: diameter (mm) and lip relief (rad) where the lip begins; the relief counts for ``rising`` only.

    Returns:
        A function from a diameter in mm to the lip relief there in radians.

    Raises:
        GeometryError: when the lip would begin outside the drill, or an angle is no relief.

    Example:
        >>> relief = relief_along_lip("rising", (10.0, 0.1), (2.0, 0.3))
        >>> round(relief(6.0), 6)
        0.2
    """
    (outer_diameter, outer_relief), (inner_diameter, inner_relief) = outer, inner
    require_lip(outer_diameter, inner_diameter)
    require_relief("relief_angle", outer_relief)
    if runs == "constant":
        return lambda diameter: outer_relief
    if runs == "cam":
        fall = math.tan(outer_relief) * outer_diameter
        return lambda diameter: math.atan2(fall, diameter)
    if runs == "rising":
        require_relief("inner_relief_angle", inner_relief)
        steepening = (inner_relief - outer_relief) / (outer_diameter - inner_diameter)
        return lambda diameter: outer_relief + steepening * (outer_diameter - diameter)
    raise refuse("lip_relief_runs", "Lip relief runs constant, rising, or as a cam makes it.")


def require_lip(outer_diameter: float, inner_diameter: float) -> None:
    """Raise unless a lip lies between the two diameters (mm), the inner one under the outer."""
    require_positive("diameter", outer_diameter)
    if require_positive("inner_diameter", inner_diameter) >= outer_diameter:
        raise refuse(
            "inner_diameter",
            "The lip would begin at {inner}, not inside the tool's diameter of {outer}; give an inner diameter under it.",
            {"inner": length(inner_diameter), "outer": length(outer_diameter)},
        )
