"""How far a tap moves along its axis while one land is ground, and what the indicator shows on the way."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    stations,
    watch,
    worst_first,
)
from geometry.plausible import land_plausible
from geometry.role import Role
from geometry.sentences import angle, length
from geometry.thread.lead import CUTS, advance, lead, lead_angle
from geometry.thread.pitch_input import PITCH, pitch_checks, pitch_of
from geometry.tooth.land import land_angle


def _checks(given: Inputs, turned: float, travel: float) -> Iterator[Check]:
    yield from pitch_checks(given)
    yield from land_plausible(turned)
    if turned == 0:
        yield watch("The land has no width, so there is nothing to read along the axis. Measure the land.")
        return
    yield note(
        "From edge to heel the thread moves {travel} along the axis, away from the point, while the tap turns {turned} as "
        f"it cuts, {CUTS[given.choice('hand')]} seen from its shank.",
        travel=length(travel),
        turned=angle(turned),
    )
    if given.choice("thread_taper") != "parallel":
        yield note(
            "On a taper thread the travel along the axis is the same in every turn, but the diameter is not: measure the "
            "diameter where you measure the land."
        )


def _compute(given: Inputs) -> Result:
    diameter = given.number("diameter")
    advance_per_turn = lead(pitch_of(given), given.number("starts"))
    turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    travel = advance(turned, advance_per_turn)
    return Result(
        outputs={
            "lead_over_land": travel,
            "lead": advance_per_turn,
            "lead_angle": lead_angle(advance_per_turn, diameter),
            "land_angle": turned,
        },
        stations=stations(turned, {"lead_over_land": lambda a: advance(a, advance_per_turn)}),
        checks=worst_first(_checks(given, turned, travel)),
    )


CALCULATION = Calculation(
    name="lead-over-land",
    title="Lead over a tap land",
    question="How far does the thread move along the axis from the edge to the heel, and what does the indicator show on the way?",
    wants="The diameter is the tap's over its crests, and the land is measured on that diameter; "
    "say whether you laid a caliper across it (chord) or went round it (arc).",
    neglects="It follows the thread exactly and says nothing of how the tap cuts: it cuts by the relief of its chamfer, "
    "for which the lead over the land is not needed.",
    kinds=("tap",),
    belongs_on=("thread-land",),
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("thread_taper", default="parallel"),
        Field("starts", default=1.0),
        Field("hand", default="right"),
        Field("land_width"),
        Field("land_measured_as", default="arc"),
    ),
    outputs=("lead_over_land", "lead", "lead_angle", "land_angle"),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    role=Role(place=120),
    sample={"diameter": 12.0, "pitch": 1.75, "land_width": 3.2, "hand": "left"},
)
