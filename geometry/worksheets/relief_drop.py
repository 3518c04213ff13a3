"""How far the heel falls inside the circle for a relief angle, and whether it clears."""

from __future__ import annotations

import math

from geometry.figure import Curve, Figure, curve
from geometry.sentences import Rounding, angle, length
from geometry.tooth import flat, progressive
from geometry.tooth.land import land_angle, land_width
from geometry.worksheet import Check, Field, Inputs, Result, Worksheet, passed, stations, stop, watch

READABLE = 0.01
"""The drop in mm under which a heel counts as nearly touching: one division of a common dial, no source."""


def _progressive_checks(turned: float, heel_drop: float) -> tuple[Check, ...]:
    if heel_drop <= 0:
        return _no_drop(turned)
    return (_clears(heel_drop),)


def _no_drop(turned: float) -> tuple[Check, ...]:
    if turned == 0:
        return (watch("The land has no width, so there is nothing to fall away. Measure the land."),)
    return (stop("There is no relief: the whole land runs on the circle and rubs. Choose a relief angle above {zero}.",
                 zero=angle(0.0)),)  # fmt: skip


def _clears(heel_drop: float) -> Check:
    if heel_drop < READABLE:
        return watch(
            "The heel lies only {drop} inside the circle, less than a dial shows well: take the relief or the land "
            "again before you trust it to clear.",
            drop=length(heel_drop),
        )
    return passed("The heel lies {drop} inside the circle: it clears.", drop=length(heel_drop))


def _flat_checks(turned: float, relief: float, diameter: float, measured_as: str) -> tuple[Check, ...]:
    heel_drop = flat.drop(turned, relief, diameter)
    if turned == 0 or relief == 0:
        return _no_drop(turned)
    if heel_drop <= 0:
        return (_rubs(heel_drop, turned, relief, diameter, measured_as),)
    found = [_clears(heel_drop)]
    if turned > relief:
        found.append(
            passed(
                "The flat is deepest, {depth}, at {deepest} behind the edge and rises again toward the heel.",
                depth=length(flat.deepest_drop(relief, diameter)),
                deepest=angle(relief),
            )
        )
    return tuple(found)


def _rubs(heel_drop: float, turned: float, relief: float, diameter: float, measured_as: str) -> Check:
    """The stop for a heel that touches or stands proud, with what would mend it."""
    widest = land_width(flat.clear_angle(relief), diameter, measured_as)
    enough = turned / 2
    say = {
        "proud": length(-heel_drop),
        "widest": length(widest, Rounding.DOWN),
        "enough": angle(enough, Rounding.UP),
    }
    stands = (
        "The heel stands {proud} proud of the circle: it will rub."
        if heel_drop < 0
        else "The heel just touches the circle: it will rub."
    )
    if enough < math.radians(45):
        mend = " Narrow the land to {widest}, raise the relief above {enough}, or grind a second facet behind it."
    else:
        mend = " Narrow the land to {widest}, or grind a second facet behind it."
    return stop(stands + mend, **{key: part for key, part in say.items() if f"{{{key}}}" in stands + mend})


def _curves(turned: float, relief: float, diameter: float) -> dict[str, Curve]:
    reach = min(turned, relief + math.radians(80))
    return {
        "progressive": curve("progressive", turned, lambda a: progressive.drop(a, relief, diameter)),
        "flat": curve("flat", reach, lambda a: flat.drop(a, relief, diameter)),
    }


def _compute(given: Inputs) -> Result:
    diameter, relief = given.number("diameter"), given.number("relief_angle")
    measured_as, style = given.choice("land_measured_as"), given.choice("relief_style")
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    shape = progressive if style == "progressive" else flat
    heel_drop = shape.drop(turned, relief, diameter)
    reach = shape.clear_angle(relief)
    if measured_as == "chord":
        reach = min(reach, math.pi)
    outputs = {
        "heel_drop": heel_drop,
        "clear_land_width": land_width(reach, diameter, measured_as),
        "land_angle": turned,
    }
    if style == "progressive":
        outputs["cam_fall_per_turn"] = progressive.cam_fall_per_turn(relief, diameter)
        checks = _progressive_checks(turned, heel_drop)
    else:
        checks = _flat_checks(turned, relief, diameter, measured_as)
    curves = _curves(turned, relief, diameter) if turned > 0 else {}
    chosen_first = sorted(curves.values(), key=lambda one: one.name != style)
    return Result(
        outputs=outputs,
        stations=stations(turned, {"drop": lambda a: shape.drop(a, relief, diameter)}),
        checks=checks,
        figure=Figure(diameter / 2, turned, tuple(chosen_first)) if curves else None,
    )


WORKSHEET = Worksheet(
    name="relief-drop",
    title="Drop of the heel for a relief angle",
    question="How far inside the circle does the heel lie, does it clear, and what does the dial show on the way?",
    wants="The diameter is that of the circle the edges run on, and the land is measured on it; "
    "say whether you laid a caliper across it (chord) or went round it (arc).",
    neglects="It takes the edge as sharp and the tool as running true, and looks only at the section square to the axis. "
    "A flat is one facet over the whole land; a progressive relief is an even cam.",
    families=("tap", "countersink", "step-drill", "twist-drill", "reamer", "counterbore"),
    inputs=(
        Field("diameter"),
        Field("relief_angle"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
        Field("relief_style", default="progressive"),
    ),
    outputs=("heel_drop", "clear_land_width", "land_angle", "cam_fall_per_turn"),
    cautions=("wheel-rating", "ring-test", "eyes", "hands", "guard-and-rest", "burning", "dust"),
    compute=_compute,
)
