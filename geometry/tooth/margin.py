"""A tooth with a margin: a narrow strip on the circle, and one or two flat facets behind it.

So reamers and drills are made: the margin guides and holds the size, the primary facet begins where it
ends, and a steeper secondary facet takes the heel out of the way.
"""

from __future__ import annotations

from dataclasses import dataclass

from geometry.preconditions import refuse
from geometry.sentences import Rounding, length
from geometry.tooth.facets import (
    Facet,
    clear_angle,
    drop,
    facet_between,
    facet_of_width,
    facet_to,
)
from geometry.tooth.land import land_angle


@dataclass(frozen=True)
class MarginedLand:
    """The land of one tooth.

    Attributes:
        diameter: of the circle of the edges, in mm.
        margin: how far the strip on the circle goes round, in radians.
        facets: the facets behind it, their angles counted from the end of the margin.
        heel: how far behind the edge the land ends, in radians.
    """

    diameter: float
    margin: float
    facets: tuple[Facet, ...]
    heel: float

    def drop(self, turned: float) -> float:
        """How far inside the circle the land lies, ``turned`` (rad) behind the edge, in mm."""
        return drop(self.facets, turned - self.margin) if turned > self.margin else 0.0

    def clear_angle(self) -> float:
        """How far behind the edge the land is back on the circle for the first time, in radians."""
        proud = next((facet for facet in self.facets if facet.end_drop <= 0), self.facets[-1])
        return self.margin + clear_angle(proud, self.diameter)

    def last_angle_for(self, heel_drop: float) -> float:
        """The angle (rad) of the last facet that lays the heel ``heel_drop`` (mm) inside the circle."""
        last, end = self.facets[-1], self.heel - self.margin
        return facet_between(last.start, last.start_drop, end, heel_drop, self.diameter).angle


def margin_angle(margin_width: float, diameter: float, heel: float) -> float:
    """How far a margin goes round, which must leave something of the land to relieve.

    Args:
        margin_width: of the strip on the circle, round it, in mm, from zero.
        diameter: of the circle of the edges, in mm, above zero.
        heel: how far behind the edge the land ends, in radians.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: when the margin takes the whole land.

    Example:
        >>> margin_angle(0.5, 10.0, 0.4)
        0.1
    """
    margin = land_angle(margin_width, diameter, "arc")
    if margin >= heel:
        raise refuse(
            "margin_width",
            "The margin of {margin} takes up the whole land, which is {land} round the circle: nothing is left to relieve. "
            "Grind the margin narrower than {land}.",
            {"margin": length(margin_width), "land": length(heel * diameter / 2, Rounding.DOWN)},
        )
    return margin


def margined_land(
    diameter: float,
    margin_width: float,
    heel: float,
    primary: tuple[float, float | None],
    secondary_relief: float | None = None,
) -> MarginedLand:
    """The land of a tooth from its measured parts.

    Args:
        diameter: of the circle of the edges, in mm, above zero.
        margin_width: of the strip on the circle, round it, in mm, from zero.
        heel: how far behind the edge the land ends, in radians, beyond the margin.
        primary: relief (rad, from the tangent at the end of the margin) and width (mm, straight across) of
            the primary facet; without a width it goes to the heel.
        secondary_relief: of the facet behind it, in radians from the same tangent; it wants a primary width.

    Returns:
        The land, its facets cut off at the heel.

    Raises:
        GeometryError: when the margin takes the whole land, or the facets cannot reach the heel.

    Example:
        >>> land = margined_land(10.0, 0.3, 0.4, (0.14, 0.8), 0.3)
        >>> round(land.facets[0].end_drop, 5), round(land.drop(0.4), 5)
        (0.04786, 0.09194)
    """
    if heel <= 0:
        raise refuse(
            "land_width", "The land has no width, so that there is nothing to relieve. Measure the land."
        )
    margin = margin_angle(margin_width, diameter, heel)
    end, (relief, width) = heel - margin, primary
    if width is None or secondary_relief is None:
        return MarginedLand(diameter, margin, (facet_to(0.0, 0.0, relief, end, diameter),), heel)
    first = facet_of_width(0.0, 0.0, relief, width, diameter)
    if first.end >= end:
        return MarginedLand(diameter, margin, (facet_to(0.0, 0.0, relief, end, diameter),), heel)
    second = facet_to(first.end, first.end_drop, secondary_relief, end, diameter)
    return MarginedLand(diameter, margin, (first, second), heel)
