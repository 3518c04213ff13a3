"""The facets of one tool as they are asked for, the numbers they come to, and what is wrong with them."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from geometry.calculation import Inputs
from geometry.preconditions import GeometryError, refuse
from geometry.sentences import Rounding, angle, length
from geometry.tooth.back import Back, back
from geometry.tooth.corners import corners, deepest_gap, least_gap
from geometry.tooth.facet_plan import CORE, facets_behind, nearest_allowed
from geometry.tooth.facets import Facet, drop, facet_of_width, within_body
from geometry.tooth.land import land_angle

ROUNDING = 1e-9
"""The gap in mm that is forgiven, because it comes from the arithmetic and not from the tool."""


@dataclass(frozen=True)
class Job:
    """The facets behind an edge.

    Attributes:
        facets: one behind the other, the primary land first.
        turned: from the edge to the heel, in radians.
        heel_drop: how far the heel lies inside the circle, in mm; the old body where no facet comes so far.
        numbers: what the corners come to, by quantity key.
        rest: what the planner had to do behind the primary land; nothing where it had nothing to plan.
    """

    facets: tuple[Facet, ...]
    turned: float
    heel_drop: float
    numbers: Mapping[str, float]
    rest: Back | None = None


def facet_job(given: Inputs) -> Job:
    """Lay the facets of the inputs: as they are where the second angle is given, planned where it is not.

    Args:
        given: the inputs of the calculation ``relief-facets``.

    Raises:
        GeometryError: for values that do not fit one another, and where no plan fits them.

    Example:
        >>> tool = {"diameter": 12.0, "body_diameter": 12.7, "land_width": 8.0, "land_measured_as": "arc"}
        >>> wanted = {"relief_angle": 0.1745, "primary_land": 0.8, "least_gap": 0.05}
        >>> len(facet_job(Inputs({**tool, **wanted})).facets)
        2
    """
    require_sense(given)
    turned = land_angle(
        given.number("land_width"), given.number("diameter"), given.choice("land_measured_as")
    )
    facets, rest = (
        _as_it_is(given, turned) if given.has("secondary_relief_angle") else _planned(given, turned)
    )
    proud = (given.number("diameter") - given.number("body_diameter")) / 2
    heel = drop(facets, turned) if turned <= facets[-1].end else proud
    return Job(facets, turned, heel, _numbers(facets, given, turned, heel), rest)


def complaints(given: Inputs, job: Job) -> tuple[str, ...]:
    """What is wrong, the worst first: the ``back`` or the ``primary`` land short of the gap, a facet too ``deep``.

    A back no worse than a primary land that is short already is no complaint of its own.
    """
    least, found = given.number("least_gap") - ROUNDING, job.numbers["least_gap_found"]
    ends, lone = job.facets[0].end_drop, len(job.facets) == 1
    wrong = []
    if found < least and (ends >= least or (not lone and found < ends - ROUNDING)):
        wrong.append("back")
    if ends < least:
        wrong.append("primary")
    if job.numbers["deepest_gap_found"] > given.number_or("deepest_gap", math.inf) + ROUNDING:
        wrong.append("deep")
    return tuple(wrong)


def require_sense(given: Inputs) -> None:
    """Raise for values that fit their ranges but not one another."""
    diameter, body = given.number("diameter"), given.number("body_diameter")
    if body < diameter:
        raise refuse(
            "body_diameter",
            "The old body of {body} is smaller than the new diameter of {diameter}, so it stands in nobody's way. "
            "Give the body as it was before grinding down, {diameter} or more.",
            {"body": length(body), "diameter": length(diameter)},
        )
    if given.number("land_width") == 0:
        raise refuse(
            "land_width", "The land has no width, so there is no back to bring in. Measure the land."
        )
    _require_gap(given, diameter)
    hole = given.number_or("hole_diameter", diameter)
    if hole < diameter:
        raise refuse(
            "hole_diameter",
            "A tool of {diameter} does not go into a hole of {hole}. Give the hole it turns in, {diameter} or more.",
            {"hole": length(hole), "diameter": length(diameter)},
        )


def _require_gap(given: Inputs, diameter: float) -> None:
    """Raise for a least gap of nothing, one that leaves no core, or one that no facet may be laid for."""
    gap, limit = given.number("least_gap"), diameter / 2 * (1 - CORE)
    if gap <= 0:
        raise refuse("least_gap", "A gap of nothing still touches. Ask for a least gap of more than zero.")
    if gap >= limit:
        raise refuse(
            "least_gap",
            "A least gap of {gap} would leave no core in a tool of {diameter}. Ask for a least gap under {limit}.",
            {"gap": length(gap), "diameter": length(diameter), "limit": length(limit, Rounding.DOWN)},
        )
    deepest = given.number_or("deepest_gap", limit)
    if deepest <= gap:
        raise refuse(
            "deepest_gap",
            "The deepest gap allowed, {deepest}, is no deeper than the least gap, {gap}. Allow more than {gap}.",
            {"deepest": length(deepest), "gap": length(gap, Rounding.UP)},
        )


def not_steeper(first: Facet) -> GeometryError:
    """The error for a second facet that is no steeper than the primary land; the caller raises it.

    Example:
        >>> not_steeper(facet_of_width(0.0, 0.0, 0.25, 1.0, 12.0)).key
        'secondary_relief_angle'
    """
    return refuse(
        "secondary_relief_angle",
        "The second facet must fall more steeply than the primary land. Give it more than {angle}, or leave it out "
        "to have the facets planned.",
        {"angle": angle(first.angle, Rounding.UP)},
    )


def _as_it_is(given: Inputs, turned: float) -> tuple[tuple[Facet, ...], Back | None]:
    """The primary land and the one second facet that was given, whether they clear or not."""
    diameter, body = given.number("diameter"), given.number("body_diameter")
    relief, second = given.number("relief_angle"), given.number("secondary_relief_angle")
    wide = facet_of_width(0.0, 0.0, relief, given.number("primary_land"), diameter)
    first = within_body(0.0, 0.0, relief, min(wide.end, turned), body, diameter)
    if first.end < wide.end:
        return (first,), None
    if second <= relief:
        raise not_steeper(first)
    return (first, within_body(first.end, first.end_drop, second, turned, body, diameter)), None


def _planned(given: Inputs, turned: float) -> tuple[tuple[Facet, ...], Back | None]:
    """The fewest facets."""
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    first, rest = back(diameter, turned, relief, given.number("primary_land"), given.number("least_gap"))
    if rest is None:
        return (within_body(0.0, 0.0, relief, first.end, given.number("body_diameter"), diameter),), None
    deepest = given.number("deepest_gap") if given.has("deepest_gap") else None
    return (first, *facets_behind(rest, nearest_allowed(diameter, deepest))), rest


def _numbers(facets: tuple[Facet, ...], given: Inputs, turned: float, heel_drop: float) -> dict[str, float]:
    """The numbers, found from the corners that the angles and widths make, not from the planner's own."""
    diameter = given.number("diameter")
    walked = corners(facets, diameter)
    found, deepest = min(least_gap(walked[1:], diameter), heel_drop), deepest_gap(walked, diameter)
    numbers = {
        "facets": float(len(facets)),
        "least_gap_found": found,
        "deepest_gap_found": deepest,
        "heel_drop": heel_drop,
        "deepest_cut": (given.number("body_diameter") - diameter) / 2 + deepest,
        "land_angle": turned,
    }
    if given.has("hole_diameter"):
        numbers["hole_gap"] = found + (given.number("hole_diameter") - diameter) / 2
    return numbers
