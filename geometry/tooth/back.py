"""The back of a tooth: what lies behind the primary land and waits for its facets."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import require_not_negative
from geometry.tooth.facets import Facet, facet_of_width, facet_to

HAIR = 1e-12
"""The corners lie deeper than asked by this share of the diameter, so that rounding never makes them shallower."""


@dataclass(frozen=True, slots=True)
class Back:
    """What lies behind the primary land, waiting for its facets.

    Attributes:
        diameter: of the circle of the edges, in mm.
        start: where the primary land ends behind the edge, in radians.
        start_drop: how far inside the circle it ends, in mm.
        land_angle: from the edge to the heel, in radians.
        gap: how far inside the circle every corner has to lie, in mm.
        primary_angle: of the primary land, in radians.
    """

    diameter: float
    start: float
    start_drop: float
    land_angle: float
    gap: float
    primary_angle: float

    @property
    def span(self) -> float:
        """How far round the tool the facets behind the primary land have to reach."""
        return self.land_angle - self.start

    @property
    def corner_radius(self) -> float:
        """The radius at which the corners lie."""
        return self.diameter / 2 - self.gap

    @property
    def first_radius(self) -> float:
        """The radius at which the first of the facets begins."""
        return self.diameter / 2 - self.start_drop

    @property
    def shallowest(self) -> float:
        """How near to the axis the primary land dips, carried on; the facets behind it go deeper still."""
        return self.diameter / 2 * math.cos(self.primary_angle)

    def flattest(self, more: float = 0.0) -> float:
        """How near to the axis the flattest facet passes that may follow: so much steeper (rad) than the primary land.

        Behind the deepest place of the primary land any facet that does not rise at once is steeper than it.
        """
        return self.first_radius * math.cos(max(0.0, self.primary_angle - self.start) + more)

    def reach(self, nearest: float) -> tuple[float, float]:
        """How far the first facet, and half of each other, reaches when all pass the axis at ``nearest``."""
        half = math.acos(min(1.0, nearest / self.corner_radius))
        return math.acos(min(1.0, nearest / self.first_radius)) + half, half


def back(
    diameter: float, land_angle: float, relief_angle: float, primary_land: float, least_gap: float
) -> tuple[Facet, Back | None]:
    """The primary land, and what it leaves to do behind it.

    Where the primary land itself ends with less than the wanted gap, the gap it does leave is taken for
    everything behind it, which is the best that can be had.

    Args:
        diameter: of the circle of the edges, in mm, above zero.
        land_angle: from the edge to the heel, in radians, above zero.
        relief_angle: of the primary land, in radians, from zero to under a right angle.
        primary_land: its width straight across, in mm, from zero.
        least_gap: wanted behind it, in mm, from zero.

    Returns:
        The first facet, and the stretch behind it; nothing behind it where the first facet alone reaches
        the heel with the gap wanted, or ends on or over the circle so that nothing behind it can help.

    Example:
        >>> first, rest = back(12.0, 1.5, 0.25, 1.0, 0.1)
        >>> rest is not None and round(rest.span, 4)
        1.3331
    """
    first = facet_of_width(0.0, 0.0, relief_angle, primary_land, diameter)
    if first.end >= land_angle:
        return facet_to(0.0, 0.0, relief_angle, land_angle, diameter), None
    if first.end_drop <= 0:
        return first, None
    gap = min(require_not_negative("least_gap", least_gap), first.end_drop)
    if land_angle < relief_angle + math.pi / 2:
        alone = facet_to(0.0, 0.0, relief_angle, land_angle, diameter)
        if alone.end_drop >= gap:
            return alone, None
    gap = min(gap + HAIR * diameter, first.end_drop)
    return first, Back(diameter, first.end, first.end_drop, land_angle, gap, relief_angle)
