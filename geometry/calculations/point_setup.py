"""Flat facets of a drill point on a work head: roll, swivel, the second facet, and what comes of them."""

from __future__ import annotations

import math

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Station,
    stations,
)
from geometry.complaints import settled
from geometry.drill import facet as facets
from geometry.drill.facet_checks import facet_checks
from geometry.drill.facet_point import SECOND, FacetPoint, facet_point
from geometry.role import Role
from geometry.side_view import point_view

ROLL, SECOND_ROLL = "roll_angle", "second_roll_angle"

FROM_THE_LIP = "from the level lip, the way it cuts"
"""From where a roll counts and which way; the other way round the flank would rise behind the lip."""


def _trial(given: Inputs, _: Check) -> tuple[Check, ...]:
    return facet_checks(given, facet_point(given))


def _outputs(given: Inputs, point: FacetPoint) -> dict[str, float]:
    first = point.first
    found = {
        "roll_angle": first.roll,
        "axis_to_wheel_angle": first.axis_to_wheel,
        **({} if given.has("point_angle") else {"point_angle": first.point_angle}),
        **({} if given.has("lip_relief_angle") else {"lip_relief_angle": point.at_corner}),
        "normal_relief_angle": math.atan(first.fall / math.hypot(1.0, first.slope)),
    }
    if point.second is not None:
        found |= {
            "second_roll_angle": point.second.roll,
            "second_axis_to_wheel_angle": point.second.axis_to_wheel,
        }
    if point.flank is not None:
        found["corner_relief_angle"] = point.at_corner
        if point.flank.ahead_of_corner > 0:
            found["point_height"] = point.flank.ahead_of_corner
    if point.web is not None and not given.has("web_thickness"):
        found["web_thickness"] = point.web
    sharp = facets.chisel_angle(first, point.second)
    if sharp is not None:
        found |= {"chisel_edge_angle": math.pi - sharp, "chisel_edge_supplement": sharp}
    if point.web is not None and point.second is not None:
        found["primary_land"] = facets.first_facet_width(first, point.web)
    return found


def _compute(given: Inputs) -> Result:
    point = facet_point(given)
    outputs = _outputs(given, point)
    read: tuple[Station, ...] = ()
    if point.flank is not None and point.heel is not None:
        outputs["axial_drop"] = point.flank.drop(point.heel)
        read = stations(point.heel, {"axial_drop": point.flank.drop})
    found = Result(
        outputs,
        read,
        checks=facet_checks(given, point),
        side=point_view(point.first.point_angle, given.number("diameter")) if given.has("diameter") else None,
    )
    return settled(found, given, _trial)


CALCULATION = Calculation(
    name="point-setup",
    title="Facet point of a drill on a work head",
    question="How far is a drill rolled and swivelled for a flat facet, and which lip relief and chisel edge come of it?",
    wants="Give the point or the axis to the wheel face, and the lip relief on the cylinder at the corner, or the roll; the "
    "second facet has a lip relief of its own, where it begins on the line through the axis. The roll counts from the lip "
    "level; the web is measured at the point, the land behind the corner.",
    neglects="It holds for a flat wheel face and two straight lips, each half a web ahead of the axis; a second facet is taken "
    "as beginning on the line through the axis.",
    kinds=("twist-drill", "step-drill", "subland-drill", "centre-drill"),
    belongs_on=("lip",),
    inputs=(
        Field("point_angle", one_of="point"),
        Field("axis_to_wheel_angle", one_of="point"),
        Field("lip_relief_angle", one_of="relief", fill_from=("relief_angle",)),
        Field("roll_angle", one_of="relief"),
        Field(SECOND, optional=True),
        Field("diameter", optional=True),
        Field("web_thickness", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
    ),
    outputs=(
        "roll_angle",
        "axis_to_wheel_angle",
        "second_roll_angle",
        "second_axis_to_wheel_angle",
        "point_angle",
        "lip_relief_angle",
        "normal_relief_angle",
        "corner_relief_angle",
        "chisel_edge_angle",
        "chisel_edge_supplement",
        "primary_land",
        "point_height",
        "axial_drop",
        "web_thickness",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    methods=("work-head",),
    role=Role(
        place=48,
        sets=(SECOND_ROLL, "second_axis_to_wheel_angle", ROLL, "axis_to_wheel_angle"),
        counted=((SECOND_ROLL, FROM_THE_LIP), (ROLL, FROM_THE_LIP)),
        turned=(
            (ROLL, "The drill cuts turning {cuts}, seen from the shank."),
            (SECOND_ROLL, "The second facet stops on the line through the axis."),
            (ROLL, "With the wheel stopped, the indicator must fall from lip to heel."),
        ),
        asks=("web_thickness",),
        of_facets=True,
        tells=("pass", "note"),
    ),
    sample={
        "point_angle": math.radians(118),
        "lip_relief_angle": math.radians(12),
        SECOND: math.radians(28),
        "diameter": 10.0,
        "web_thickness": 1.5,
        "land_width": 5.0,
    },
)
