"""The flat facets of a drill's point, as they follow from what is set or wanted."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.calculation import (
    Inputs,
)
from geometry.drill import facet as facets
from geometry.drill.facet import Facet
from geometry.drill.flank import Flank
from geometry.drill.web import USUAL_SHARE
from geometry.preconditions import NotGiven
from geometry.tooth.land import land_angle

SECOND = "second_lip_relief_angle"


@dataclass(frozen=True)
class FacetPoint:
    """The facets of one side.

    Attributes:
        web: as it was measured, or the usual one of the diameter; nothing where neither is known.
        first: at the lip.
        second: behind it, where there is one.
        flank: both on the cylinder of the corner, where the diameter is known.
        heel: from the corner to the heel, in radians, where the land was measured.
    """

    web: float | None
    first: Facet
    second: Facet | None
    flank: Flank | None
    heel: float | None

    @property
    def ahead(self) -> float:
        """How far the lip lies ahead of the axis at the corner, in radians; zero where nothing tells it."""
        return 0.0 if self.flank is None else math.asin(self.flank.half_web / self.flank.radius)

    @property
    def at_corner(self) -> float:
        """The lip relief on the cylinder at the corner, in radians."""
        ahead = self.ahead
        return math.atan(self.first.fall * math.cos(ahead) + self.first.slope * math.sin(ahead))


def _first(given: Inputs, ahead: float) -> Facet:
    if given.has("point_angle"):
        whole = given.number("point_angle")
        if given.has("roll_angle"):
            return facets.facet_of_roll(whole, given.number("roll_angle"))
        return facets.facet(whole, given.number("lip_relief_angle"), ahead)
    axis = given.number("axis_to_wheel_angle")
    if given.has("roll_angle"):
        return facets.facet_of_setting(axis, given.number("roll_angle"))
    return facets.facet_of_axis(axis, given.number("lip_relief_angle"), ahead)


def _web(given: Inputs) -> float | None:
    if given.has("web_thickness"):
        return given.number("web_thickness")
    return USUAL_SHARE * given.number("diameter") if given.has("diameter") else None


def facet_point(given: Inputs) -> FacetPoint:
    """The facets of one side, as the inputs of the calculation give them; where no web was measured, with the usual one.

    Args:
        given: point or axis to the wheel face, lip relief or roll, and what else is known; lengths in mm, angles in radians.

    Raises:
        NotGiven: where a land was measured and no diameter.
    """
    web = _web(given)
    sized = web is not None and given.has("diameter")
    ahead = facets.lip_ahead(web, given.number("diameter")) if web is not None and sized else 0.0
    first = _first(given, ahead)
    second = Facet(first.slope, math.tan(given.number(SECOND))) if given.has(SECOND) else None
    if web is None or not sized:
        if given.has("land_width"):
            raise NotGiven("Give the diameter as well, so that the land can be laid round it.", "diameter")
        return FacetPoint(web, first, second, None, None)
    diameter = given.number("diameter")
    flank = Flank(first, second, web / 2, diameter / 2)
    heel = None
    if given.has("land_width"):
        heel = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    return FacetPoint(web, first, second, flank, heel)
