"""Straight facets standing one behind the other: a primary land, and what is ground behind it.

Every facet is given by where it begins and by its angle from the tangent to the circle at the cutting
edge, so that the difference of two facet angles is how far the tool is turned between grinding them.
Drops are carried along the chain from corner to corner and never found as a difference of two radii.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from geometry.preconditions import refuse, require_finite, require_not_negative, require_positive
from geometry.sentences import Rounding, angle


@dataclass(frozen=True, slots=True)
class Facet:
    """One straight facet behind the edge.

    Attributes:
        start: how far behind the edge it begins, in radians.
        start_drop: how far inside the circle of the edges it begins, in mm.
        angle: how steeply it falls, from the tangent at the edge, in radians.
        end: how far behind the edge it ends, in radians.
        end_drop: how far inside the circle it ends, in mm.
        width: straight across it, in mm.
        height: how far its plane passes from the axis, in mm.
    """

    start: float
    start_drop: float
    angle: float
    end: float
    end_drop: float
    width: float
    height: float

    def drop(self, turned: float) -> float:
        """How far inside the circle the facet lies, ``turned`` behind the edge; plain arithmetic."""
        radius = self.height / math.cos(self.angle - self.start)
        return self.start_drop + _fall(radius, self.angle - self.start, turned - self.start)


def _fall(radius: float, relief: float, turned: float) -> float:
    """How much a line falls over ``turned`` that leaves the circle of ``radius`` at ``relief``."""
    half = turned / 2
    return 2 * radius * math.sin(half) * math.sin(relief - half) / math.cos(turned - relief)


def facet_to(start: float, start_drop: float, facet_angle: float, end: float, diameter: float) -> Facet:
    """The facet that begins at ``start`` and goes on at its angle until ``end``.

    Derived: with ``r0 = R - start_drop`` and ``b = facet_angle - start`` its radius after a further turn
    of ``phi`` is ``r0 cos(b) / cos(phi - b)`` and its width ``r0 sin(phi) / cos(phi - b)``.

    Args:
        start: where it begins behind the edge, in radians, from zero.
        start_drop: how far inside the circle it begins, in mm, under the radius.
        facet_angle: from the tangent at the edge, in radians, within a right angle of ``start``.
        end: where it ends, in radians, from ``start`` to under ``facet_angle`` plus a right angle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The facet.

    Raises:
        GeometryError: when no straight facet reaches from ``start`` to ``end`` at that angle.

    Example:
        >>> round(facet_to(0.0, 0.0, math.radians(8), 1 / 3, 12.0).end_drop, 5)
        -0.05485
    """
    radius = require_positive("diameter", diameter) / 2 - require_finite("facet_start_drop", start_drop)
    require_not_negative("facet_start", start)
    relief = require_finite("facet_angle", facet_angle) - start
    turned = require_finite("land_angle", end) - start
    if radius <= 0:
        raise refuse("drop", "A facet cannot begin at or beyond the axis of the tool.")
    if abs(relief) >= math.pi / 2 or not 0 <= turned < relief + math.pi / 2:
        raise refuse(
            "land_width",
            "A facet at {facet} that begins {start} behind the edge never comes round to {end}: keep the heel under {limit}, "
            "or put one more facet between.",
            {"facet": angle(facet_angle), "start": angle(start), "end": angle(end),
             "limit": angle(facet_angle + math.pi / 2, Rounding.DOWN)},
        )  # fmt: skip
    return Facet(
        start=start,
        start_drop=start_drop,
        angle=facet_angle,
        end=end,
        end_drop=start_drop + _fall(radius, relief, turned),
        width=radius * math.sin(turned) / math.cos(turned - relief),
        height=radius * math.cos(relief),
    )


def facet_of_width(
    start: float, start_drop: float, facet_angle: float, width: float, diameter: float
) -> Facet:
    """The facet that begins at ``start`` and is ``width`` wide.

    Derived: it turns the tool by ``atan2(w cos(b), r0 - w sin(b))``.

    Args:
        start: where it begins behind the edge, in radians, from zero.
        start_drop: how far inside the circle it begins, in mm, under the radius.
        facet_angle: from the tangent at the edge, in radians, within a right angle of ``start``.
        width: straight across, in mm, from zero.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The facet.

    Example:
        >>> first = facet_of_width(0.0, 0.0, math.radians(8), 0.8, 12.0)
        >>> round(first.end_drop, 5), round(math.degrees(first.end), 3)
        (0.05829, 7.662)
    """
    radius = require_positive("diameter", diameter) / 2 - start_drop
    relief = facet_angle - start
    across = require_not_negative("facet_width", width)
    turned = math.atan2(across * math.cos(relief), radius - across * math.sin(relief))
    return facet_to(start, start_drop, facet_angle, start + turned, diameter)


def facet_between(start: float, start_drop: float, end: float, end_drop: float, diameter: float) -> Facet:
    """The facet from one corner to another.

    Derived: ``tan(b) = (r0 / r1 - cos(phi)) / sin(phi)`` with the radii at both corners.

    Args:
        start: where it begins behind the edge, in radians, from zero.
        start_drop: how far inside the circle it begins, in mm, under the radius.
        end: where it ends, in radians, above ``start`` by less than half a turn.
        end_drop: how far inside the circle it ends, in mm, under the radius.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The facet.

    Raises:
        GeometryError: when the corners lie half a turn apart or more, or one lies beyond the axis.

    Example:
        >>> facet = facet_between(0.0, 0.0, 1 / 3, -0.0548499, 12.0)
        >>> round(math.degrees(facet.angle), 4)
        8.0
    """
    radius = require_positive("diameter", diameter) / 2
    turned = require_finite("land_angle", end) - require_not_negative("facet_start", start)
    if not 0 < turned < math.pi:
        raise refuse("land_width", "One facet goes less than half way round the tool; put one more between.")
    if max(require_finite("drop", start_drop), require_finite("drop", end_drop)) >= radius:
        raise refuse("drop", "A facet cannot begin or end at or beyond the axis of the tool.")
    rise = (end_drop - start_drop) / (radius - end_drop) + 2 * math.sin(turned / 2) ** 2
    return facet_to(start, start_drop, start + math.atan2(rise, math.sin(turned)), end, diameter)


def drop(facets: Sequence[Facet], turned: float) -> float:
    """How far inside the circle the chain of facets lies, ``turned`` behind the edge.

    Args:
        facets: one behind the other, from the edge, at least one.
        turned: behind the edge, in radians, up to the end of the last facet.

    Returns:
        The drop in mm; below zero where it stands proud.

    Example:
        >>> first = facet_of_width(0.0, 0.0, math.radians(8), 0.8, 12.0)
        >>> second = facet_to(first.end, first.end_drop, math.radians(18), 1 / 3, 12.0)
        >>> round(drop((first, second), 1 / 3), 5)
        0.15367
    """
    return next((one for one in facets if turned <= one.end), facets[-1]).drop(turned)


def outline(facets: Sequence[Facet], diameter: float, pieces: int = 24) -> tuple[tuple[float, float], ...]:
    """Points along the facets, every corner among them, for a figure; plain arithmetic.

    Args:
        facets: one behind the other, from the edge.
        diameter: of the circle of the edges, in mm.
        pieces: into how many each facet is cut.

    Returns:
        Pairs of the angle behind the edge (rad) and the drop below the circle (mm), the edge first.

    Example:
        >>> facet = facet_to(0.0, 0.0, 0.125, 0.25, 12.0)
        >>> [(at, round(drop, 4)) for at, drop in outline((facet,), 12.0, 2)]
        [(0.0, 0.0), (0.125, 0.0468), (0.25, 0.0)]
    """
    points = [(0.0, 0.0)]
    for facet in facets:
        step, height, leans = (facet.end - facet.start) / pieces, facet.height, facet.angle
        steps = [facet.start + step * piece for piece in range(1, pieces)]
        points += [(at, diameter / 2 - height / math.cos(at - leans)) for at in steps]
        points.append((facet.end, facet.end_drop))
    return tuple(points)


def clear_angle(facet: Facet, diameter: float) -> float:
    """How far behind the edge a facet, carried on, is back on the circle.

    Derived: its radius is the circle's again at ``facet_angle + acos(height / R)``.

    Args:
        facet: the facet; it must pass under the circle.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The angle in radians.

    Example:
        >>> round(clear_angle(facet_to(0.0, 0.0, 0.125, 0.2, 12.0), 12.0), 12)
        0.25
    """
    return facet.angle + math.acos(min(1.0, 2 * facet.height / require_positive("diameter", diameter)))


def within_body(
    start: float, start_drop: float, facet_angle: float, end: float, body_diameter: float, diameter: float
) -> Facet:
    """The facet carried on until ``end``, or until it rises out of the old body where no metal is left.

    Derived: on the body's radius ``Rb`` it has turned to ``facet_angle + acos(height / Rb)``.

    Args:
        start: where it begins behind the edge, in radians, from zero.
        start_drop: how far inside the circle it begins, in mm, inside the body.
        facet_angle: from the tangent at the edge, in radians, within a right angle of ``start``.
        end: where it ends at the latest, in radians, from ``start``.
        body_diameter: of the body behind the edges, in mm, from ``diameter``.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The facet.

    Example:
        >>> facet = within_body(0.0, 0.0, math.radians(8), 3.0, 13.0, 12.0)
        >>> round(facet.end_drop, 9), round(math.degrees(facet.end), 3)
        (-0.5, 31.923)
    """
    radius = require_positive("diameter", diameter) / 2 - require_finite("facet_start_drop", start_drop)
    height = max(0.0, radius * math.cos(facet_angle - start))
    meets = facet_angle + math.acos(min(1.0, 2 * height / require_positive("body_diameter", body_diameter)))
    return facet_to(start, start_drop, facet_angle, min(end, max(start, meets)), diameter)
