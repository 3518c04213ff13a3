"""The fewest straight facets that bring the whole back of a tooth inside its circle.

A tool ground down from a larger one carries the old, larger body behind its new edges. Behind the
primary land the back is cut away in straight facets whose corners lie just at the gap wanted, where
the most metal stays. A facet may be laid the steeper, and so reach the further round, the deeper it may
go; that depth alone decides how many are needed.

All lines derived. A straight line that passes the axis at a distance ``p`` and meets the circle of
radius ``q`` at both ends turns the tool by ``2 acos(p / q)``; from a corner on the radius ``r`` to one on
``q`` it turns it by ``acos(p / r) + acos(p / q)``. No facet that stays outside ``p`` and inside ``q`` can
reach further; so a chain of such facets, each as deep as allowed, is the shortest chain there is.
"""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_positive
from geometry.sentences import Rounding, count, length
from geometry.tooth.back import HAIR, Back, back
from geometry.tooth.facets import Facet, facet_between

DEEPEST = 0.5
"""How far a facet may go toward the axis, as a share of the radius, where nobody says how deep it may go.

It is the depth of a facet laid at 60 degrees to the circle, the steepest that this vocabulary knows.
"""

CORE = 0.1
"""The share of the radius that no facet may reach, however deep it is allowed to go."""

STEEPER = math.radians(0.5)
"""A facet has to be so much steeper than the primary land to stand out behind it; common practice, no source."""

MOST_FACETS = 24
"""More facets than this are no work for a manual grinder."""


def fewest(rest: Back, nearest: float) -> int:
    """How many facets are needed behind the primary land when none may come nearer to the axis.

    Args:
        rest: what lies behind the primary land.
        nearest: how near to the axis a facet may come, in mm, under the radius of the corners.

    Returns:
        The number, at least one.

    Example:
        >>> first, rest = back(12.0, 2.0, 0.25, 1.0, 0.1)
        >>> [fewest(rest, nearest) for nearest in (3.0, 5.0, 5.5) if rest]
        [1, 2, 3]
    """
    first, half = rest.reach(nearest)
    if rest.span <= first:
        return 1
    return 1 + math.ceil((rest.span - first) / (2 * half) - HAIR)


def equal_half(rest: Back, behind: int) -> float | None:
    """Half the reach of each facet when ``behind`` facets all go equally deep, the least depth they can.

    Args:
        rest: what lies behind the primary land.
        behind: how many facets stand behind the primary land, at least one.

    Returns:
        The half angle in radians; nothing where they would have to be flatter than the primary land.

    Example:
        >>> first, rest = back(12.0, 2.0, 0.25, 1.0, 0.1)
        >>> rest is not None and round(math.degrees(equal_half(rest, 3) or 0.0), 2)
        17.86
    """
    low = math.acos(min(1.0, rest.flattest() / rest.corner_radius))
    high = min(rest.span / (2 * behind - 1), math.pi / 2)
    if _reached(rest, low, behind) >= rest.span:
        return None
    for _ in range(60):
        middle = (low + high) / 2
        if _reached(rest, middle, behind) < rest.span:
            low = middle
        else:
            high = middle
    return high


def _reached(rest: Back, half: float, behind: int) -> float:
    """How far ``behind`` facets reach that pass the axis as near as the half angle says."""
    nearest = rest.corner_radius * math.cos(half)
    return math.acos(min(1.0, nearest / rest.first_radius)) + (2 * behind - 1) * half


def facets_behind(rest: Back, nearest: float) -> tuple[Facet, ...]:
    """The fewest facets behind the primary land, and among those the ones that take the least depth.

    Args:
        rest: what lies behind the primary land.
        nearest: how near to the axis a facet may come, in mm.

    Returns:
        The facets, each steeper than the one before it.

    Raises:
        GeometryError: when the depth allowed is less than any facet there needs, or asks for too many.

    Example:
        >>> first, rest = back(12.0, 2.0, 0.25, 1.0, 0.1)
        >>> [round(math.degrees(facet.angle), 1) for facet in facets_behind(rest, 5.0)] if rest else []
        [34.8, 88.0]
    """
    _require_room(rest, nearest)
    behind = fewest(rest, nearest)
    if behind > MOST_FACETS:
        raise _too_many(rest, behind)
    turns = [rest.start, *_inner_corners(rest, nearest, behind), rest.land_angle]
    drops = [rest.start_drop, *[rest.gap] * behind]
    return tuple(
        facet_between(turns[i], drops[i], turns[i + 1], drops[i + 1], rest.diameter) for i in range(behind)
    )


def _inner_corners(rest: Back, nearest: float, behind: int) -> list[float]:
    """Where the facets meet, from the first corner behind the primary land to the last before the heel."""
    if behind == 1:
        return []
    half = equal_half(rest, behind)
    if half is not None:
        step = 2 * half
        first = rest.land_angle - (behind - 1) * step
    else:
        # Facets all equally deep would be flatter than the primary land: the first is just so much steeper that it
        # shows, and those behind it, which share what is left, are shallower still.
        first = rest.start + rest.reach(max(nearest, rest.flattest(STEEPER)))[0]
        step = (rest.land_angle - first) / (behind - 1)
    return [first + i * step for i in range(behind - 1)]


def _require_room(rest: Back, nearest: float) -> None:
    """Raise unless facets that are steeper than the primary land and keep the gap may go so deep."""
    bound = max(rest.gap, rest.diameter / 2 - rest.shallowest)
    if nearest < rest.diameter / 2 - bound:
        return
    why = (
        "The primary land, carried on, dips {bound} inside the circle, and the facets behind it are steeper."
    )
    if bound == rest.gap:
        why = "The deepest gap allowed is no deeper than the least gap."
    raise refuse(
        "deepest_gap",
        why + " Allow a deepest gap of more than {bound}.",
        {"bound": length(bound, Rounding.UP)},
    )


def _too_many(rest: Back, behind: int) -> Exception:
    half = rest.span / (2 * MOST_FACETS - 1)
    enough = rest.diameter / 2 - min(rest.corner_radius * math.cos(half), rest.shallowest)
    return refuse(
        "deepest_gap",
        "So shallow, the back needs {behind} facets behind the primary land. "
        "Allow a deepest gap of {enough} to do with {most} or fewer.",
        {"behind": count(behind), "enough": length(enough, Rounding.UP), "most": count(MOST_FACETS)},
    )


def depth_with(rest: Back, behind: int) -> float | None:
    """How deep the deepest facet has to go when there are ``behind`` of them behind the primary land.

    Args:
        rest: what lies behind the primary land.
        behind: how many facets, at least two.

    Returns:
        The depth in mm inside the circle; nothing where the primary land, carried on, dips deeper.

    Example:
        >>> first, rest = back(12.0, 2.0, 0.25, 1.0, 0.1)
        >>> rest is not None and round(depth_with(rest, 3) or 0.0, 3)
        0.384
    """
    half = equal_half(rest, behind)
    if half is None or rest.corner_radius * math.cos(half) >= rest.shallowest:
        return None
    return rest.diameter / 2 - rest.corner_radius * math.cos(half)


def plan(
    diameter: float,
    land_angle: float,
    relief_angle: float,
    primary_land: float,
    least_gap: float,
    deepest_gap: float | None = None,
) -> tuple[Facet, ...]:
    """The fewest facets from edge to heel that keep the back inside the circle by ``least_gap``.

    Args:
        diameter: of the circle of the edges, in mm, above zero.
        land_angle: from the edge to the heel, in radians, above zero.
        relief_angle: of the primary land, in radians, from zero to under a right angle.
        primary_land: its width straight across, in mm, from zero.
        least_gap: wanted behind it, in mm, from zero.
        deepest_gap: the most that a facet may go inside the circle, in mm; half the radius where not given.

    Returns:
        The facets, the primary land first; only that one where it ends on or over the circle, because
        nothing ground behind it helps then.

    Raises:
        GeometryError: when the deepest gap leaves no room, or asks for too many facets.

    Example:
        >>> [round(facet.width, 2) for facet in plan(12.0, 1.5, 0.25, 1.0, 0.1)]
        [1.0, 7.25]
    """
    first, rest = back(diameter, land_angle, relief_angle, primary_land, least_gap)
    if rest is None:
        return (first,)
    return (first, *facets_behind(rest, nearest_allowed(diameter, deepest_gap)))


def nearest_allowed(diameter: float, deepest_gap: float | None) -> float:
    """How near to the axis a facet may come, for a deepest gap, or where none is given.

    Args:
        diameter: of the circle of the edges, in mm, above zero.
        deepest_gap: the most that a facet may go inside the circle, in mm, or nothing.

    Returns:
        The distance from the axis in mm.

    Raises:
        GeometryError: when the deepest gap would leave no core in the tool.

    Example:
        >>> nearest_allowed(12.0, None), nearest_allowed(12.0, 0.5)
        (3.0, 5.5)
    """
    radius = require_positive("diameter", diameter) / 2
    if deepest_gap is None:
        return radius * DEEPEST
    if require_positive("deepest_gap", deepest_gap) > radius * (1 - CORE):
        raise refuse(
            "deepest_gap",
            "A facet {deepest} deep would cut through to the axis of the tool. Allow a deepest gap of {limit} at most.",
            {"deepest": length(deepest_gap), "limit": length(radius * (1 - CORE), Rounding.DOWN)},
        )
    return radius - deepest_gap
