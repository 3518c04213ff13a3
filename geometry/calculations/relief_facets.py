"""The fewest facets that bring the back of a tool that was ground down from a larger one inside its new circle."""

from __future__ import annotations

import math

from geometry.calculation import AT_THE_WHEEL, Calculation, Field, Inputs, Result, Row, stations
from geometry.figure import Curve, Figure
from geometry.role import FACETS, Role
from geometry.tooth import facet_advice as advice
from geometry.tooth.facet_job import facet_job
from geometry.tooth.facets import Facet, drop, outline


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


def _compute(given: Inputs) -> Result:
    job = facet_job(given)

    def profile(angle: float) -> float:
        return drop(job.facets, angle) if angle <= job.facets[-1].end else job.heel_drop

    return Result(
        outputs=job.numbers,
        stations=stations(job.turned, {"drop": profile}),
        rows=_rows(job.facets),
        checks=advice.checks(given, job),
        figure=_figure(job.facets, given, job.turned),
        profile=profile,
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
    kinds=("twist-drill", "step-drill", "subland-drill", "reamer", "counterbore", "countersink", "end-mill"),
    belongs_on=("land", "cone"),
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
    methods=("wheel-head-height", "tooth-rest-height"),
    role=Role(
        place=110,
        of_course=(),
        about="body_diameter",
        replaces=("relief-drop",),
        ground=("land", "cone"),
        rows=FACETS,
        tells=("pass", "note"),
        tabled=True,
        drawn=2,
    ),
    sample={
        "diameter": 12.0,
        "body_diameter": 12.7,
        "land_width": 8.0,
        "land_measured_as": "arc",
        "relief_angle": math.radians(10),
        "primary_land": 0.8,
        "least_gap": 0.05,
        "deepest_gap": 0.5,
        "hole_diameter": 12.1,
    },
)
