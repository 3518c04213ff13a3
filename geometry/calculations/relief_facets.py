"""The fewest facets that bring the back of a tool that was ground down from a larger one inside its new circle."""

from __future__ import annotations

from geometry.calculation import AT_THE_WHEEL, Calculation, Check, Field, Inputs, Result, Row, stations
from geometry.checking import refuse
from geometry.figure import Curve, Figure
from geometry.sentences import length
from geometry.tooth import facet_advice as advice
from geometry.tooth.back import back
from geometry.tooth.corners import corners, deepest_gap, least_gap
from geometry.tooth.facet_plan import facets_behind, nearest_allowed
from geometry.tooth.facets import Facet, drop, facet_of_width, outline, within_body
from geometry.tooth.land import land_angle


def _require_sense(given: Inputs) -> None:
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
    if given.number("least_gap") <= 0:
        raise refuse("least_gap", "A gap of nothing still touches. Ask for a least gap of more than zero.")
    hole = given.number_or("hole_diameter", diameter)
    if hole < diameter:
        raise refuse(
            "hole_diameter",
            "A tool of {diameter} does not go into a hole of {hole}. Give the hole it turns in, {diameter} or more.",
            {"hole": length(hole), "diameter": length(diameter)},
        )


def _as_it_is(given: Inputs, turned: float) -> tuple[Facet, ...]:
    """The primary land and the one second facet that was given, whether they clear or not."""
    diameter, body = given.number("diameter"), given.number("body_diameter")
    relief, second = given.number("relief_angle"), given.number("secondary_relief_angle")
    wide = facet_of_width(0.0, 0.0, relief, given.number("primary_land"), diameter)
    first = within_body(0.0, 0.0, relief, min(wide.end, turned), body, diameter)
    if first.end < wide.end:
        return (first,)
    if second <= relief:
        raise advice.not_steeper(first)
    return (first, within_body(first.end, first.end_drop, second, turned, body, diameter))


def _planned(given: Inputs, turned: float) -> tuple[tuple[Facet, ...], tuple[Check, ...]]:
    """The fewest facets, and what one more of them would save."""
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    first, rest = back(diameter, turned, relief, given.number("primary_land"), given.number("least_gap"))
    if rest is None:
        return (within_body(0.0, 0.0, relief, first.end, given.number("body_diameter"), diameter),), ()
    deepest = given.number("deepest_gap") if given.has("deepest_gap") else None
    behind = facets_behind(rest, nearest_allowed(diameter, deepest))
    return (first, *behind), advice.one_more(rest, len(behind))


def _rows(facets: tuple[Facet, ...]) -> tuple[Row, ...]:
    return tuple(
        Row(
            f"facet {number}" + (", primary land" if number == 1 else ""),
            {
                "facet_angle": facet.angle,
                "facet_width": facet.width,
                "facet_start": facet.start,
                "facet_start_drop": facet.start_drop,
                "facet_height": facet.height,
            },
        )
        for number, facet in enumerate(facets, 1)
    )


def _figure(facets: tuple[Facet, ...], given: Inputs, turned: float) -> Figure:
    """The facets, the gap wanted behind the primary land, and the old body outside the circle."""
    diameter, gap = given.number("diameter"), given.number("least_gap")
    proud = (diameter - given.number("body_diameter")) / 2
    first_end, last_end = facets[0].end, facets[-1].end
    standing = ((turned, proud),) if last_end < turned else ()
    meet = tuple(facet.end for facet in facets[:-1])
    curves = [Curve("facets", (*outline(facets, diameter), *standing), meet)]
    if first_end < turned:
        curves.append(Curve("gap wanted", ((first_end, gap), (turned, gap))))
    return Figure(diameter / 2, turned, (*curves, Curve("old body", ((0.0, proud), (turned, proud)))))


def _outputs(facets: tuple[Facet, ...], given: Inputs, turned: float, heel_drop: float) -> dict[str, float]:
    """The numbers, found from the corners that the angles and widths make, not from the planner's own."""
    diameter = given.number("diameter")
    walked = corners(facets, diameter)
    found, deepest = min(least_gap(walked[1:], diameter), heel_drop), deepest_gap(walked, diameter)
    outputs = {
        "facets": float(len(facets)),
        "least_gap_found": found,
        "deepest_gap_found": deepest,
        "heel_drop": heel_drop,
        "deepest_cut": (given.number("body_diameter") - diameter) / 2 + deepest,
        "land_angle": turned,
    }
    if given.has("hole_diameter"):
        outputs["hole_gap"] = found + (given.number("hole_diameter") - diameter) / 2
    return outputs


def _compute(given: Inputs) -> Result:
    _require_sense(given)
    diameter, body = given.number("diameter"), given.number("body_diameter")
    turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    tips: tuple[Check, ...] = ()
    if given.has("secondary_relief_angle"):
        facets = _as_it_is(given, turned)
    else:
        facets, tips = _planned(given, turned)

    def profile(angle: float) -> float:
        return drop(facets, angle) if angle <= facets[-1].end else (diameter - body) / 2

    outputs = _outputs(facets, given, turned, profile(turned))
    checks = advice.checks(given, facets, turned, outputs)
    return Result(
        outputs=outputs,
        stations=stations(turned, {"drop": profile}),
        rows=_rows(facets),
        checks=checks if checks[0].state == "stop" else (*checks, *tips),
        figure=_figure(facets, given, turned),
    )


CALCULATION = Calculation(
    name="relief-facets",
    title="Facets behind the edge of a tool ground down",
    question="How few facets bring the whole back inside the new circle, at which angles and widths, and where does each begin?",
    wants="The diameter is the NEW one, of the circle the edges run on after grinding down, and the land is measured on it "
    "from edge to heel, by caliper (chord) or round it (arc); the primary land is measured straight across its facet.",
    neglects="It looks at the section square to the axis, takes every facet as a true flat and the flute behind the heel as "
    "standing square to the circle. It goes no deeper than the deepest gap, or half the radius where none is given, "
    "and does not know how thick the web is.",
    families=("twist-drill", "step-drill", "subland-drill", "reamer", "counterbore", "countersink"),
    inputs=(
        Field("diameter"),
        Field("body_diameter"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("relief_angle", fill_from=("land_relief_angle",)),
        Field("primary_land"),
        Field("least_gap"),
        Field("deepest_gap", optional=True),
        Field("secondary_relief_angle", optional=True, fill_from=("second_land_relief_angle",)),
        Field("hole_diameter", optional=True),
    ),
    outputs=(
        "facets",
        "least_gap_found",
        "deepest_gap_found",
        "heel_drop",
        "deepest_cut",
        "hole_gap",
        "land_angle",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    methods=("wheel-head-height", "tooth-rest-height", "inclined-wheel"),
)
