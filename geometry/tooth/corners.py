"""Verify a chain of facets: its corners from the edge on, and how near the lines between them come to the circle."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from geometry.preconditions import require_positive
from geometry.tooth.facets import Facet


def corners(facets: Sequence[Facet], diameter: float) -> tuple[tuple[float, float], ...]:
    """The corners that the angles and widths of the facets make, walked out from the edge.

    This is how a shop would find them with a protractor and a scale, and it uses none of the corners
    that a planner had in mind; so it can prove a plan.

    Args:
        facets: one behind the other, from the edge.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        For each corner, the edge first, how far it lies behind the edge along the tangent there, and how
        high over the axis, in mm.

    Example:
        >>> corners((), 12.0)
        ((0.0, 6.0),)
    """
    across, up = 0.0, require_positive("diameter", diameter) / 2
    found = [(across, up)]
    for facet in facets:
        across += facet.width * math.cos(facet.angle)
        up -= facet.width * math.sin(facet.angle)
        found.append((across, up))
    return tuple(found)


def least_gap(points: Sequence[tuple[float, float]], diameter: float) -> float:
    """The least distance inside the circle along straight lines from corner to corner.

    A straight line is farthest from the axis at one of its ends, so the corners decide.

    Args:
        points: corners as from ``corners``, at least one.
        diameter: of the circle, in mm, above zero.

    Returns:
        The gap in mm; below zero where a corner stands proud.

    Example:
        >>> least_gap(((0.0, 5.75), (3.0, 4.0)), 12.0)
        0.25
    """
    return require_positive("diameter", diameter) / 2 - max(math.hypot(*point) for point in points)


def deepest_gap(points: Sequence[tuple[float, float]], diameter: float) -> float:
    """How far the deepest place of straight lines from corner to corner lies inside the circle.

    Args:
        points: corners as from ``corners``, at least one.
        diameter: of the circle, in mm, above zero.

    Returns:
        The gap in mm.

    Example:
        >>> deepest_gap(((-3.0, 4.0), (3.0, 4.0)), 12.0)
        2.0
    """
    nearest = min(math.hypot(*point) for point in points)
    for one, other in pairwise(points):
        nearest = min(nearest, _distance_from_axis(one, other))
    return require_positive("diameter", diameter) / 2 - nearest


def _distance_from_axis(one: tuple[float, float], other: tuple[float, float]) -> float:
    """How near to the axis a straight line from ``one`` to ``other`` comes."""
    along = (other[0] - one[0], other[1] - one[1])
    square = along[0] ** 2 + along[1] ** 2
    share = -(one[0] * along[0] + one[1] * along[1]) / square if square > 0 else 0.0
    share = min(1.0, max(0.0, share))
    return math.hypot(one[0] + share * along[0], one[1] + share * along[1])
