"""The metal behind the edge, as areas of the section square to the axis."""

from __future__ import annotations

import math
from collections.abc import Sequence

from geometry.preconditions import require_not_negative, require_positive
from geometry.tooth.facets import Facet

_SERIES_BELOW = 0.1
"""Under this angle ``x - sin(x)`` is summed term by term, because the difference would lose its digits."""


def segment(turned: float) -> float:
    """``x - sin(x)``: twice the area that a chord cuts off a circle of radius one.

    Args:
        turned: the angle over the chord, in radians.

    Returns:
        The difference, with all its digits for small angles too.

    Example:
        >>> round(segment(1e-3) / 1e-9, 12)
        0.166666658333
    """
    if abs(turned) >= _SERIES_BELOW:
        return turned - math.sin(turned)
    square = turned * turned
    # x^3/3! - x^5/5! + x^7/7! - x^9/9! + x^11/11!, which at 0.1 leaves out less than 1e-17 of it.
    return (
        turned * square / 6 * (1 - square / 20 * (1 - square / 42 * (1 - square / 72 * (1 - square / 110))))
    )


def eccentric_removed(turned: float, fall_per_radian: float, diameter: float) -> float:
    """The area between the circle and an eccentric relief: ``k theta^2 (R - k theta / 3) / 2``.

    Derived: half the integral of ``R^2 - (R - k theta)^2``.

    Args:
        turned: from edge to heel, in radians, from zero.
        fall_per_radian: of the cam, in mm, from zero.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The area in mm2.

    Example:
        >>> round(eccentric_removed(0.5, 1.0, 12.0), 6)
        0.729167
    """
    fall = require_not_negative("cam_throw", fall_per_radian) * require_not_negative("land_angle", turned)
    return fall * turned * (require_positive("diameter", diameter) / 2 - fall / 3) / 2


def facets_removed(facets: Sequence[Facet], diameter: float) -> float:
    """The area between the circle and a chain of facets; what stands proud counts below zero.

    Derived: under each facet lies a triangle ``r0 r1 sin(phi) / 2`` of the sector ``R^2 phi / 2``.

    Args:
        facets: one behind the other, from the edge.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The area in mm2.

    Example:
        >>> facets_removed((), 12.0)
        0.0
    """
    radius = require_positive("diameter", diameter) / 2
    twice = 0.0
    for facet in facets:
        turned = facet.end - facet.start
        lost = radius * (facet.start_drop + facet.end_drop) - facet.start_drop * facet.end_drop
        twice += radius * radius * segment(turned) + math.sin(turned) * lost
    return twice / 2


def sector(turned: float, diameter: float) -> float:
    """The area of the tooth from the axis out to the circle, before any relief: ``R^2 theta / 2``.

    Args:
        turned: from edge to heel, in radians, from zero.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The area in mm2.

    Example:
        >>> sector(0.5, 12.0)
        9.0
    """
    return require_positive("diameter", diameter) ** 2 / 8 * require_not_negative("land_angle", turned)
