"""Whether the heel of a tooth with margin, primary and secondary facet clears, and what the indicator shows."""

from __future__ import annotations

import math

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Row,
    note,
    passed,
    stations,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import Step, Way, way
from geometry.figure import Figure, curve
from geometry.plausible import land_plausible, relief_plausible
from geometry.preconditions import NotGiven, require_positive
from geometry.quantities import quantity
from geometry.role import HEIGHTS, Role
from geometry.sentences import Rounding, angle, length
from geometry.tooth.heel_advice import HAIR, READABLE
from geometry.tooth.land import land_angle, land_width
from geometry.tooth.margin import MarginedLand, margined_land

NARROW = 0.1
"""The primary land, as a share of the diameter, to narrow one to that no relief can bring in; no source."""


def _agree(given: Inputs) -> None:
    """See that a secondary relief has the primary land before it, whatever else is still to be given."""
    if given.has("secondary_relief_angle") and not given.has("primary_land"):
        raise NotGiven(
            "Give the width of the primary land as well, where the secondary begins.", "primary_land"
        )


def _land(given: Inputs) -> MarginedLand:
    _agree(given)
    heel = land_angle(given.number("land_width"), given.number("diameter"), given.choice("land_measured_as"))
    secondary = given.number("secondary_relief_angle") if given.has("secondary_relief_angle") else None
    width = (
        require_positive("primary_land", given.number("primary_land")) if given.has("primary_land") else None
    )
    return margined_land(
        given.number("diameter"),
        given.number("margin_width"),
        heel,
        (given.number("relief_angle"), width),
        secondary,
    )


def _last_facet(land: MarginedLand) -> tuple[str, str, float]:
    """The last facet in words, the input that holds its angle, and the greatest angle that one takes."""
    words, key = (
        ("relief", "relief_angle")
        if len(land.facets) == 1
        else ("secondary relief", "secondary_relief_angle")
    )
    return words, key, quantity(key).high


def _wide_primary(land: MarginedLand) -> Check:
    """The stop for a primary land that is back on the circle where it ends."""
    first = land.facets[0]
    ways: list[Way] = []
    if first.angle > 0:
        width = length(land.diameter * math.sin(first.angle) * (1 - HAIR), Rounding.DOWN)
        ways.append(way("narrow the primary land to {width}", "primary_land", "width", width))
    enough = math.asin(min(1.0, first.width / land.diameter))
    if enough < quantity("relief_angle").high:
        ways.append(
            way("raise the relief above {enough}", "relief_angle", "enough", angle(enough, Rounding.UP))
        )
    return complaint(
        "stop",
        "The back of the primary land stands {proud} proud of the circle: it will rub.",
        ways or [_narrow_and_steep(land.diameter)],
        proud=length(-first.end_drop),
    )


def _narrow_and_steep(diameter: float) -> Way:
    """Both at once, for a primary land without relief that is too wide for any."""
    return Way(
        "narrow the primary land to {width} and raise the relief above {enough}",
        (
            Step("primary_land", "width", length(NARROW * diameter * (1 - HAIR), Rounding.DOWN)),
            Step("relief_angle", "enough", angle(math.asin(NARROW), Rounding.UP)),
        ),
    )


def _rubs(land: MarginedLand, heel_drop: float, measured_as: str) -> Check:
    words, key, steepest = _last_facet(land)
    ways: list[Way] = []
    if land.clear_angle() > land.margin:
        reach = min(land.clear_angle(), math.pi if measured_as == "chord" else math.inf)
        widest = length(land_width(reach, land.diameter, measured_as) * (1 - HAIR), Rounding.DOWN)
        ways.append(way("narrow the land to {widest}", "land_width", "widest", widest))
    enough = land.last_angle_for(0.0)
    if enough < steepest:
        ways.append(way(f"raise the {words} above {{enough}}", key, "enough", angle(enough, Rounding.UP)))
    return complaint(
        "stop",
        "The heel stands {proud} proud of the circle: it will rub.",
        ways,
        ["grind one more facet behind it"],
        proud=length(-heel_drop),
    )


def _clears(land: MarginedLand, heel_drop: float) -> Check:
    words, key, steepest = _last_facet(land)
    if heel_drop >= READABLE * (1 - HAIR):
        return passed("The heel lies {drop} inside the circle: it clears.", drop=length(heel_drop))
    enough = land.last_angle_for(READABLE)
    says = f"raise the {words} to {{enough}} for a drop that can be read"
    ways = [way(says, key, "enough", angle(enough, Rounding.UP))] if enough <= steepest else []
    return complaint(
        "watch",
        "The heel lies only {drop} inside the circle, less than an indicator shows well.",
        ways,
        ["look at the heel under a glass"],
        drop=length(heel_drop),
    )


def _checks(given: Inputs, land: MarginedLand) -> list[Check]:
    heel_drop = land.drop(land.heel)
    found = [
        *relief_plausible(given.number("relief_angle"), "land", key="relief_angle"),
        *land_plausible(land.heel),
    ]
    if len(land.facets) > 1:
        second = given.number("secondary_relief_angle")
        found += relief_plausible(second, "land", key="secondary_relief_angle")
    if land.margin > 0:
        found.append(
            note(
                "The margin runs on the circle for {turned} behind the edge, by design; relief begins where it ends. The "
                "angles given count from there, those of the facets from the tangent at the edge: each is {turned} more.",
                turned=angle(land.margin),
            )
        )
    if len(land.facets) > 1 and land.facets[0].end_drop <= 0:
        found.append(_wide_primary(land))
    found.append(
        _rubs(land, heel_drop, given.choice("land_measured_as"))
        if heel_drop <= 0
        else _clears(land, heel_drop)
    )
    return found


def _corners(land: MarginedLand) -> tuple[float, ...]:
    """Where margin and facets meet, in radians behind the edge."""
    after_margin = (land.margin,) if land.margin > 0 else ()
    return (*after_margin, *(land.margin + facet.end for facet in land.facets[:-1]))


def _rows(land: MarginedLand) -> tuple[Row, ...]:
    """Each facet from the tangent at the edge, by which it is set; the tool has turned by the margin when it begins."""
    return tuple(
        Row(f"facet {number}", {"facet_angle": facet.angle + land.margin, "facet_width": facet.width})
        for number, facet in enumerate(land.facets, 1)
    )


def _all_checks(given: Inputs) -> tuple[Check, ...]:
    return worst_first(_checks(given, _land(given)))


def _compute(given: Inputs) -> Result:
    diameter, measured_as = given.number("diameter"), given.choice("land_measured_as")
    land = _land(given)
    heel, heel_drop = land.heel, land.drop(land.heel)
    outputs = {"heel_drop": heel_drop, "land_angle": heel}
    if len(land.facets) > 1:
        outputs["primary_drop"] = land.facets[0].end_drop
    reach = min(land.clear_angle(), math.pi if measured_as == "chord" else math.inf)
    outputs["clear_land_width"] = land_width(reach, diameter, measured_as)
    found = Result(
        outputs,
        stations(heel, {"drop": land.drop}),
        rows=_rows(land),
        heads={"facet_angle": "facet angle from the edge"},
        checks=worst_first(_checks(given, land)),
        figure=Figure(diameter / 2, heel, (curve("facets", heel, land.drop, _corners(land)),)),
    )
    return settled(found, given, lambda other, _: _all_checks(other))


CALCULATION = Calculation(
    name="reamer-land",
    title="Margin, primary and secondary land",
    question="Does the heel clear behind the margin and its facets, and what does the indicator show on the way?",
    wants="The diameter is that of the circle the edges run on and the land goes from edge to heel, margin included, as arc or chord; "
    "the margin is measured round the circle and the primary land straight across its facet.",
    neglects="It takes the margin as running on the circle without any relief and the facets as true flats, square to the axis. "
    "Both relief angles count from the tangent to the circle where the margin ends.",
    kinds=("reamer", "twist-drill", "subland-drill", "step-drill", "counterbore", "end-mill"),
    belongs_on=("land",),
    inputs=(
        Field("diameter"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("margin_width", default=0.0),
        Field("relief_angle", fill_from=("land_relief_angle",)),
        Field("primary_land", optional=True),
        Field("secondary_relief_angle", optional=True, fill_from=("second_land_relief_angle",)),
    ),
    outputs=("heel_drop", "primary_drop", "clear_land_width", "land_angle"),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    agree=_agree,
    role=Role(
        place=130,
        of_course=("reamer",),
        about="margin_width",
        by_wanted="second_land_relief_angle",
        wanted_on=("end-mill",),
        replaces=("relief-drop",),
        left_out_by=("cam", "work-head", "inclined-wheel"),
        ground=("land",),
        rows=HEIGHTS,
        tells=("pass", "note"),
        drawn=1,
    ),
    sample={
        "diameter": 10.0,
        "land_width": 2.0,
        "land_measured_as": "chord",
        "margin_width": 0.2,
        "relief_angle": math.radians(6),
        "primary_land": 0.6,
        "secondary_relief_angle": math.radians(15),
    },
)
