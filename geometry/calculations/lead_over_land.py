"""How far a tap moves along its axis while one land is ground, and what the indicator shows on the way."""

from __future__ import annotations

import math

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    passed,
    stations,
    watch,
)
from geometry.sentences import angle, length
from geometry.thread.asked import PITCH, pitch_of
from geometry.thread.lead import advance, lead, lead_angle
from geometry.tooth.land import land_angle

_RIGHT = "From edge to heel the thread moves {travel} along the axis, away from the point, while the tap turns {turned}."

_LEFT = (
    "From edge to heel the thread moves {travel} along the axis, away from the point, while the tap turns {turned} the "
    "other way round than a right-hand tap; the minus says only that."
)
"""A left-hand tap is the mirror image of a right-hand one: it turns the other way, but its heel lies on the same side."""


def _checks(turned: float, travel: float) -> tuple[Check, ...]:
    if turned == 0:
        return (
            watch("The land has no width, so there is nothing to read along the axis. Measure the land."),
        )
    found = [
        passed(_RIGHT if travel > 0 else _LEFT, travel=length(abs(travel)), turned=angle(turned)),
    ]
    if turned > math.pi:
        found.append(
            watch(
                "This one land goes {turned} round the tap, more than half of it. Measure the land again.",
                turned=angle(turned),
            )
        )
    return tuple(found)


def _compute(given: Inputs) -> Result:
    diameter = given.number("diameter")
    advance_per_turn = lead(pitch_of(given), given.number("starts"))
    hand = given.choice("hand")
    turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    travel = advance(turned, advance_per_turn, hand)
    return Result(
        outputs={
            "lead_over_land": travel,
            "lead": advance_per_turn,
            "lead_angle": lead_angle(advance_per_turn, diameter),
            "land_angle": turned,
        },
        stations=stations(turned, {"lead_over_land": lambda a: advance(a, advance_per_turn, hand)}),
        checks=_checks(turned, travel),
    )


CALCULATION = Calculation(
    name="lead-over-land",
    title="Lead over the land over a tap land",
    question="How far does the thread move along the axis from the edge to the heel, and what does the indicator show on the way?",
    wants="The diameter is the tap's over its crests, and the land is measured on that diameter; "
    "say whether you laid a caliper across it (chord) or went round it (arc).",
    neglects="It follows the thread exactly and so says nothing of how the tap cuts: on a tap the radial relief does that, "
    "and the axial part only lays the grind along the thread.",
    families=("tap",),
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("starts", default=1.0),
        Field("hand", default="right"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
    ),
    outputs=("lead_over_land", "lead", "lead_angle", "land_angle"),
    cautions=AT_THE_WHEEL,
    compute=_compute,
)
