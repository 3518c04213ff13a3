"""How far the heel falls inside the circle for a relief angle, and whether it clears."""

from __future__ import annotations

import math

from geometry.calculation import AT_THE_WHEEL, Calculation, Check, Field, Inputs, Result, passed, stations
from geometry.checking import GeometryError, refuse
from geometry.figure import Curve, Figure, curve
from geometry.sentences import Rounding, angle, length
from geometry.tooth import eccentric, flat
from geometry.tooth.heel_advice import clears, no_drop, require_short_of_centre, rubs
from geometry.tooth.land import land_angle, land_width


def _checks(
    form: str, heel_drop: float, turned: float, relief: float, diameter: float, measured_as: str
) -> tuple[Check, ...]:
    if turned == 0 or relief == 0:
        return (no_drop(turned),)
    if heel_drop <= 0:
        return (rubs(heel_drop, turned, relief, diameter, measured_as),)
    found = clears(heel_drop, turned, diameter, form)
    return (found, *_rises_again(turned, relief, diameter)) if form == "flat" else (found,)


def _rises_again(turned: float, relief: float, diameter: float) -> tuple[Check, ...]:
    """Tell of the deepest place of a flat, where that is not the heel."""
    if turned <= relief:
        return ()
    return (
        passed(
            "The flat is deepest, {depth}, at {deepest} behind the edge and rises again toward the heel.",
            depth=length(flat.deepest_drop(relief, diameter)),
            deepest=angle(relief),
        ),
    )


def _require_within_reach(form: str, turned: float, relief: float, diameter: float, measured_as: str) -> None:
    """Raise where the surface would go past the centre, or a flat never comes round to the heel."""
    if form == "eccentric":
        require_short_of_centre(turned, relief)
    elif turned >= relief + math.pi / 2:
        if relief == 0:
            raise GeometryError(no_drop(turned).sentence, "relief_angle")
        widest = land_width(flat.clear_angle(relief), diameter, measured_as)
        raise refuse(
            "land_width",
            "One flat facet cannot reach so far round the tool. Narrow the land to {widest}, or plan the facets behind it.",
            {"widest": length(widest, Rounding.DOWN)},
        )


def _curves(form: str, turned: float, relief: float, diameter: float) -> tuple[Curve, ...]:
    """Both profiles, the chosen one first, the flat only as far round as it reaches."""
    reach = min(turned, relief + math.radians(80))
    curves = (
        curve("eccentric", turned, eccentric.profile(relief, diameter)),
        curve("flat", reach, flat.profile(relief, diameter)),
    )
    return curves if form == "eccentric" else curves[::-1]


def _compute(given: Inputs) -> Result:
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    measured_as, form = given.choice("land_measured_as"), given.choice("relief_form")
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    _require_within_reach(form, turned, relief, diameter, measured_as)
    shape = eccentric if form == "eccentric" else flat
    heel_drop, reach = shape.drop(turned, relief, diameter), shape.clear_angle(relief)
    outputs = {
        "heel_drop": heel_drop,
        "clear_land_width": land_width(
            min(reach, math.pi) if measured_as == "chord" else reach, diameter, measured_as
        ),
        "land_angle": turned,
    }
    if form == "eccentric":
        outputs["throw_per_turn"] = eccentric.throw_per_turn(relief, diameter)
        if given.has("flutes"):
            outputs["throw_per_tooth"] = outputs["throw_per_turn"] / given.number("flutes")
    return Result(
        outputs=outputs,
        stations=stations(turned, {"drop": shape.profile(relief, diameter)}),
        checks=_checks(form, heel_drop, turned, relief, diameter, measured_as),
        figure=Figure(diameter / 2, turned, _curves(form, turned, relief, diameter)) if turned > 0 else None,
    )


CALCULATION = Calculation(
    name="relief-drop",
    title="Indicator drop at the heel for a relief angle",
    question="How far inside the circle does the heel lie, does it clear, and what does the indicator show on the way?",
    wants="The diameter is that of the circle the edges run on, and the land is measured on it; "
    "say whether you laid a caliper across it (chord) or went round it (arc).",
    neglects="It takes the edge as sharp and the tool as running true, and looks only at the section square to the axis. "
    "A flat is one facet over the whole land; an eccentric relief is an even cam.",
    families=(
        "tap",
        "countersink",
        "step-drill",
        "twist-drill",
        "reamer",
        "counterbore",
        "centre-drill",
        "subland-drill",
    ),
    inputs=(
        Field("diameter"),
        Field("relief_angle"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("relief_form", default="eccentric"),
        Field("flutes", optional=True),
    ),
    outputs=("heel_drop", "clear_land_width", "land_angle", "throw_per_turn", "throw_per_tooth"),
    cautions=AT_THE_WHEEL,
    compute=_compute,
)
