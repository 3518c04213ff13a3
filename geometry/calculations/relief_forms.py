"""Eccentric relief, one flat and two facets behind the same edge, held against one another."""

from __future__ import annotations

import math

from geometry.calculation import AT_THE_WHEEL, Calculation, Field, Inputs, Result, stations
from geometry.figure import Curve, Figure, curve
from geometry.kinds import EVERY_KIND
from geometry.tooth import eccentric, flat
from geometry.tooth import forms_advice as advice
from geometry.tooth.facets import outline
from geometry.tooth.forms_job import forms_job


def _compute(given: Inputs) -> Result:
    diameter, job = given.number("diameter"), forms_job(given)
    even = eccentric.profile(given.number("relief_angle"), diameter)
    turned, one, two = job.turned, job.one, job.two
    profiles = {"eccentric_drop": even}
    if one.end >= turned:
        profiles["flat_drop"] = flat.profile(one.angle, diameter)
    if two[1].end >= turned:
        profiles["two_facet_drop"] = lambda angle: two[angle > two[0].end].drop(angle)
    return Result(
        outputs=job.outputs,
        stations=stations(turned, profiles),
        rows=job.rows,
        checks=advice.checks(given, job),
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
    title="Relief forms compared",
    question="How do an eccentric relief, one flat and two facets compare behind the same edge?",
    wants="The diameter is that of the circle the edges run on, and the land is measured on it from edge to heel, by caliper "
    "(chord) or round it (arc); the primary land is measured straight across its facet.",
    neglects="It compares sections square to the axis and takes the relief angle given for the eccentric relief and for the "
    "primary land; by heel-drop the flat and the second facet are laid so that their heels lie where the eccentric heel does. "
    "It says nothing of how strong or how cool an edge is, only how much metal stands behind it.",
    kinds=EVERY_KIND,
    inputs=(
        Field("compare_by", default="edge-angle"),
        Field("diameter"),
        Field("relief_angle", fill_from=("land_relief_angle",)),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("primary_land"),
        Field(
            "secondary_relief_angle",
            when=("compare_by", "edge-angle"),
            fill_from=("second_land_relief_angle",),
        ),
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
    sample={
        "compare_by": "heel-drop",
        "diameter": 12.0,
        "relief_angle": math.radians(8),
        "land_width": 2.0,
        "land_measured_as": "arc",
        "primary_land": 0.8,
    },
)
