"""Eccentric relief, one flat and two facets behind the same edge, held against one another."""

from __future__ import annotations

import math

from geometry.calculation import AT_THE_WHEEL, Calculation, Field, Inputs, Result, Row, stations
from geometry.checking import refuse
from geometry.figure import Curve, Figure, curve
from geometry.sentences import Rounding, length
from geometry.tooth import eccentric, flat
from geometry.tooth import forms_advice as advice
from geometry.tooth.area import eccentric_removed, facets_removed, sector
from geometry.tooth.crossing import crossing_angle
from geometry.tooth.facets import Facet, clear_angle, facet_between, facet_of_width, outline, within_body
from geometry.tooth.heel_advice import require_short_of_centre
from geometry.tooth.land import land_angle, land_width

FAR_OUT = 4.0
"""A facet that never comes round to the heel is followed out to this many diameters and no further."""


def _flat(given: Inputs, turned: float, heel_drop: float) -> Facet:
    """The one flat: of the same angle at the edge, or with the same drop at the heel."""
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    if given.choice("compare_by") == "heel-drop":
        if turned >= math.pi:
            raise refuse(
                "land_width",
                "No flat has a drop half way round the tool. Narrow the land to less than {widest}, or compare by edge-angle.",
                {
                    "widest": length(
                        land_width(math.pi, diameter, given.choice("land_measured_as")), Rounding.DOWN
                    )
                },
            )
        relief = flat.relief_angle_from_drop(heel_drop, turned, diameter)
    return within_body(0.0, 0.0, relief, turned, FAR_OUT * diameter, diameter)


def _two_facets(given: Inputs, turned: float, heel_drop: float) -> tuple[Facet, Facet]:
    """The primary land and the one facet behind it."""
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    first = facet_of_width(0.0, 0.0, relief, given.number("primary_land"), diameter)
    if first.end >= turned:
        raise refuse(
            "primary_land",
            "The primary land takes the whole land, so there is no second facet. Make it narrower than {whole}.",
            {
                "whole": length(
                    within_body(0.0, 0.0, relief, turned, FAR_OUT * diameter, diameter).width, Rounding.DOWN
                )
            },
        )
    if given.choice("compare_by") == "heel-drop":
        return first, facet_between(first.end, first.end_drop, turned, heel_drop, diameter)
    steeper = given.number("secondary_relief_angle")
    if steeper <= relief:
        raise advice.not_steeper(relief)
    return first, within_body(first.end, first.end_drop, steeper, turned, FAR_OUT * diameter, diameter)


def _facets_row(label: str, facets: tuple[Facet, ...], turned: float, diameter: float, even: float) -> Row:
    """What a form of straight facets comes to; no heel and no areas where it never comes round to the heel."""
    rubs = next((facet for facet in facets if facet.end_drop <= 0), facets[-1])
    values = {"relief_angle": facets[0].angle, "rub_angle": clear_angle(rubs, diameter)}
    if len(facets) > 1:
        values["secondary_relief_angle"] = facets[1].angle
    if facets[-1].end >= turned:
        removed = facets_removed(facets, diameter)
        values |= {
            "heel_drop": facets[-1].end_drop,
            "metal_removed": removed,
            "metal_left": sector(turned, diameter) - removed,
            "metal_more": even - removed,
        }
    return Row(label, values)


def _rows(
    given: Inputs, turned: float, one: Facet, two: tuple[Facet, Facet], heel_drop: float
) -> tuple[Row, ...]:
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    even = eccentric_removed(turned, eccentric.throw_per_radian(relief, diameter), diameter)
    return (
        Row(
            "eccentric",
            {
                "relief_angle": relief,
                "heel_drop": heel_drop,
                "metal_removed": even,
                "metal_left": sector(turned, diameter) - even,
                "metal_more": 0.0,
            },
        ),
        _facets_row("flat", (one,), turned, diameter, even),
        _facets_row("two facets", two, turned, diameter, even),
    )


def _compute(given: Inputs) -> Result:
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    measured_as = given.choice("land_measured_as")
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    advice.require_something_to_compare(turned, relief)
    require_short_of_centre(turned, relief)
    even = eccentric.profile(relief, diameter)
    one, two = _flat(given, turned, even(turned)), _two_facets(given, turned, even(turned))
    rows = _rows(given, turned, one, two, even(turned))
    outputs = {
        "flat_relief_angle": one.angle,
        "secondary_relief_angle": two[1].angle,
        "rub_angle": rows[1].values["rub_angle"],
        "clear_land_width": land_width(rows[1].values["rub_angle"], diameter, measured_as),
        "land_angle": turned,
    }
    crossing = crossing_angle(two[1], eccentric.throw_per_radian(relief, diameter), diameter)
    if crossing is not None:
        outputs["crossing_angle"] = crossing
    profiles = {"eccentric_drop": even}
    if one.end >= turned:
        profiles["flat_drop"] = flat.profile(one.angle, diameter)
    if two[1].end >= turned:
        profiles["two_facet_drop"] = lambda angle: two[angle > two[0].end].drop(angle)
    return Result(
        outputs=outputs,
        stations=stations(turned, profiles),
        rows=rows,
        checks=advice.checks(given, rows, two, outputs),
        figure=Figure(
            diameter / 2,
            turned,
            (
                curve("eccentric", turned, even),
                Curve("flat", outline((one,), diameter)),
                Curve("two facets", outline(two, diameter), (two[0].end,)),
            ),
        ),
    )


CALCULATION = Calculation(
    name="relief-forms",
    title="Relief form compared",
    question="How do an eccentric relief, one flat and two facets compare behind the same edge?",
    wants="The diameter is that of the circle the edges run on, and the land is measured on it from edge to heel, by caliper "
    "(chord) or round it (arc); the primary land is measured straight across its facet.",
    neglects="It compares sections square to the axis and takes the relief angle given for the eccentric relief and for the "
    "primary land; by heel-drop the flat and the second facet are laid so that their heels lie where the eccentric heel does. "
    "It says nothing of how strong or how cool an edge is, only how much metal stands behind it.",
    families=(
        "tap",
        "countersink",
        "step-drill",
        "twist-drill",
        "reamer",
        "counterbore",
        "subland-drill",
        "centre-drill",
    ),
    inputs=(
        Field("compare_by", default="edge-angle"),
        Field("diameter"),
        Field("relief_angle"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("primary_land"),
        Field("secondary_relief_angle", when=("compare_by", "edge-angle")),
    ),
    outputs=(
        "flat_relief_angle",
        "secondary_relief_angle",
        "clear_land_width",
        "rub_angle",
        "crossing_angle",
        "land_angle",
    ),
    cautions=AT_THE_WHEEL,
    compute=_compute,
)
