"""Whether the heel of a tooth with margin, primary and secondary facet clears, and what the indicator shows."""

from __future__ import annotations

import math

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Cure,
    Field,
    Inputs,
    Result,
    Together,
    note,
    passed,
    stations,
    stop,
    watch,
    worst_first,
)
from geometry.checking import NotGiven, require_positive
from geometry.cures import either
from geometry.figure import Figure, curve
from geometry.plausible import land_plausible, relief_plausible
from geometry.quantities import quantity
from geometry.sentences import Amount, Rounding, angle, length
from geometry.tooth.heel_advice import HAIR, READABLE
from geometry.tooth.land import land_angle, land_width
from geometry.tooth.margin import MarginedLand, margined_land

NARROW = 0.1
"""The primary land, as a share of the diameter, to narrow one to that no relief can bring in; no source."""


def _land(given: Inputs, heel: float) -> MarginedLand:
    secondary = given.number("secondary_relief_angle") if given.has("secondary_relief_angle") else None
    width = (
        require_positive("primary_land", given.number("primary_land")) if given.has("primary_land") else None
    )
    if secondary is not None and width is None:
        raise NotGiven(
            "Give the width of the primary land as well, where the secondary begins.", "primary_land"
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
    first = land.facets[0]
    parts = {"proud": length(-first.end_drop)}
    cures: list[str] = []
    cure: Cure = ()
    if first.angle > 0:
        cures.append("narrow the primary land to {width}")
        width = land.diameter * math.sin(first.angle) * (1 - HAIR)
        parts["width"] = length(width, Rounding.DOWN)
        cure += (("primary_land", width),)
    enough = math.asin(min(1.0, first.width / land.diameter))
    if enough < quantity("relief_angle").high:
        cures.append("raise the relief above {enough}")
        parts["enough"] = angle(enough, Rounding.UP)
        cure += (("relief_angle", enough * (1 + HAIR)),)
    both = not cures
    if both:
        cures.append("narrow the primary land to {width} and raise the relief above {enough}")
        parts["width"] = length(NARROW * land.diameter, Rounding.DOWN)
        parts["enough"] = angle(math.asin(NARROW), Rounding.UP)
        cure = (
            ("primary_land", NARROW * land.diameter * (1 - HAIR)),
            ("relief_angle", math.asin(NARROW) * (1 + HAIR)),
        )
    return stop(
        "The back of the primary land stands {proud} proud of the circle: it will rub. " + either(cures),
        cure=Together(cure) if both else cure,
        **parts,
    )


def _rubs(land: MarginedLand, heel_drop: float, measured_as: str) -> Check:
    words, key, steepest = _last_facet(land)
    parts: dict[str, Amount | str] = {"proud": length(-heel_drop)}
    cures: list[str] = []
    cure: Cure = ()
    if land.clear_angle() > land.margin:
        reach = min(land.clear_angle(), math.pi if measured_as == "chord" else math.inf)
        cures.append("narrow the land to {widest}")
        widest = land_width(reach, land.diameter, measured_as)
        parts["widest"] = length(widest, Rounding.DOWN)
        cure += (("land_width", widest * (1 - HAIR)),)
    if land.last_angle_for(0.0) < steepest:
        cures.append(f"raise the {words} above {{enough}}")
        enough = land.last_angle_for(0.0)
        parts["enough"] = angle(enough, Rounding.UP)
        cure += ((key, enough * (1 + HAIR)),)
    cures.append("grind one more facet behind it")
    return stop(
        "The heel stands {proud} proud of the circle: it will rub. " + either(cures), cure=cure, **parts
    )


def _clears(land: MarginedLand, heel_drop: float) -> Check:
    words, key, steepest = _last_facet(land)
    if heel_drop >= READABLE:
        return passed("The heel lies {drop} inside the circle: it clears.", drop=length(heel_drop))
    says = "The heel lies only {drop} inside the circle, less than an indicator shows well. "
    if land.last_angle_for(READABLE) > steepest:
        return watch(
            says + "The land is too narrow for an indicator: look at it under a glass.",
            drop=length(heel_drop),
        )
    return watch(
        says + f"Raise the {words} to {{enough}} for a drop that can be read.",
        cure=((key, land.last_angle_for(READABLE) * (1 + HAIR)),),
        drop=length(heel_drop),
        enough=angle(land.last_angle_for(READABLE), Rounding.UP),
    )


def _checks(given: Inputs, land: MarginedLand, heel_drop: float) -> list[Check]:
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
                "The margin runs on the circle for {turned} behind the edge, by design; relief begins where it ends.",
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


def _compute(given: Inputs) -> Result:
    diameter, measured_as = given.number("diameter"), given.choice("land_measured_as")
    heel = land_angle(given.number("land_width"), diameter, measured_as)
    land = _land(given, heel)
    heel_drop = land.drop(heel)
    outputs = {"heel_drop": heel_drop, "land_angle": heel}
    if len(land.facets) > 1:
        outputs["primary_drop"] = land.facets[0].end_drop
    reach = min(land.clear_angle(), math.pi if measured_as == "chord" else math.inf)
    outputs["clear_land_width"] = land_width(reach, diameter, measured_as)
    return Result(
        outputs,
        stations(heel, {"drop": land.drop}),
        checks=worst_first(_checks(given, land, heel_drop)),
        figure=Figure(diameter / 2, heel, (curve("facets", heel, land.drop, _corners(land)),)),
    )


CALCULATION = Calculation(
    name="reamer-land",
    title="Margin, primary and secondary land",
    question="Does the heel clear behind the margin and its facets, and what does the indicator show on the way?",
    wants="The diameter is that of the circle the edges run on and the land goes from edge to heel, margin included, as arc or chord; "
    "the margin is measured round the circle and the primary land straight across its facet.",
    neglects="It takes the margin as running on the circle without any relief and the facets as true flats, square to the axis. "
    "Both relief angles count from the tangent to the circle where the margin ends.",
    kinds=("reamer", "twist-drill", "subland-drill", "step-drill", "counterbore"),
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
)
