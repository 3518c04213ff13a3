"""The diameters and heights of a screw thread, and the hole to drill before tapping it."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Calculation, Check, Field, Inputs, Result, note, worst_first
from geometry.plausible import SHOWN
from geometry.preconditions import refuse
from geometry.sentences import count, length
from geometry.thread.class_advice import CLASS, LIMITS_OF_CLASS, class_limits, told_of_class
from geometry.thread.form import Thread, thread
from geometry.thread.hole_advice import counted, hole_check, percent, percent_check
from geometry.thread.lead import CUTS, lead
from geometry.thread.pipe import pipe_thread
from geometry.thread.pipe_advice import hole_limits, pipe_hole_check, planes
from geometry.thread.pitch_input import NOMINAL, PITCH, basic_diameter, pitch_checks, pitch_of
from geometry.thread.tap_drill import hole_for_percent, percent_of_thread, rule_diameter


def _rule(made: Thread, counted_as: str) -> Check:
    drill = rule_diameter(made)
    return note(
        "The common rule, diameter less pitch, asks for a hole of {drill}. That leaves {percent} percent of a full "
        "thread, counted as {counted}.",
        drill=length(drill),
        percent=percent(percent_of_thread(drill, made, counted_as)),
        counted=counted(made, counted_as),
    )


def _drilling(given: Inputs, made: Thread, counted_as: str) -> tuple[dict[str, float], tuple[Check, ...]]:
    """Hole and percentage where one of them was given, and what they mean."""
    if given.has("drilled_diameter"):
        hole = given.number("drilled_diameter")
        share = percent_of_thread(hole, made, counted_as)
        check = hole_check(made, hole, counted_as)
    elif given.has("thread_percent"):
        share = given.number("thread_percent")
        hole = hole_for_percent(share, made, counted_as)
        check = percent_check(made, share, hole, counted_as)
    else:
        return {}, ()
    return {"drilled_diameter": hole, "thread_percent": max(share, 0.0)}, (check,)


def _runs(given: Inputs, advance: float) -> Iterator[Check]:
    """What is told of a thread with several starts, and of a left-hand one."""
    if given.number("starts") != 1:
        yield note(
            "With {starts} starts the thread goes on by {lead} in each turn, its pitch times its starts.",
            starts=count(given.number("starts")),
            lead=length(advance),
        )
    if given.choice("hand") == "left":
        yield note(
            "With hand left the thread is left-hand: its tap cuts turning {turning}, seen from the shank.",
            turning=CUTS["left"],
        )


def _leadscrew(made: Thread) -> tuple[Check, ...]:
    """How large the tap of a leadscrew's nut is: its thread reaches beyond the screw's crests."""
    if not made.clearance:
        return ()
    return (
        note(
            "Screw and nut keep {clearance} off each other at both roots: the tap is at least {crests} over its crests.",
            clearance=length(made.clearance),
            crests=length(made.diameter + 2 * made.clearance),
        ),
    )


def _measured(given: Inputs) -> Iterator[Check]:
    """That a diameter beside the nominal one counts for nothing here, where the two differ."""
    if abs(basic_diameter(given) - given.number("diameter")) > SHOWN:
        yield note(
            "The thread goes by its nominal size of {nominal}; the {measured} that the tool measures change nothing in it.",
            nominal=length(basic_diameter(given)),
            measured=length(given.number("diameter")),
        )


def _parallel(given: Inputs) -> Result:
    diameter, pitch = basic_diameter(given), pitch_of(given)
    made = thread(diameter, pitch, given.choice("thread_form"))
    counted_as, advance = given.choice("full_thread"), lead(pitch, given.number("starts"))
    drilling, checks = _drilling(given, made, counted_as)
    allowed = class_limits(given, made)
    by_class = () if allowed is None else (allowed.low, allowed.high)
    return Result(
        outputs={
            "pitch": made.pitch,
            "pitch_diameter": made.pitch_diameter,
            "internal_minor_diameter": made.internal_minor_diameter,
            "external_minor_diameter": made.external_minor_diameter,
            "tap_drill_diameter": rule_diameter(made),
            **drilling,
            "internal_thread_depth": made.internal_depth,
            "external_thread_depth": made.external_depth,
            "sharp_height": made.sharp_height,
            "lead": advance,
            **dict(zip(LIMITS_OF_CLASS, by_class, strict=False)),
        },
        checks=worst_first(
            (
                *pitch_checks(given),
                *checks,
                *(told_of_class(given, made, allowed) if allowed is not None else ()),
                _rule(made, counted_as),
                *_leadscrew(made),
                *_measured(given),
                *_runs(given, advance),
            )
        ),
    )


def _taper(given: Inputs) -> Result:
    if given.has("thread_percent"):
        raise refuse(
            "thread_percent",
            "A straight hole leaves another share of a taper thread in every turn, so no percentage holds for it. Leave the "
            "percent of thread out and give the hole.",
        )
    if given.has("thread_class"):
        raise refuse("thread_class", "These classes are of parallel threads. Leave the class out.")
    made = pipe_thread(given.choice("thread_taper"), basic_diameter(given), pitch_of(given))
    advance = lead(made.pitch, given.number("starts"))
    outputs = {
        "pitch": made.pitch,
        "pitch_diameter": made.pitch_diameter,
        "front_pitch_diameter": made.front_pitch_diameter,
        "internal_minor_diameter": made.mouth_minor_diameter,
        "external_minor_diameter": made.front_minor_diameter,
        "internal_thread_depth": made.depth,
        "external_thread_depth": made.depth,
        "sharp_height": made.sharp_height,
        "lead": advance,
    }
    checks = [planes(made), hole_limits(made), *_measured(given), *_runs(given, advance)]
    if given.has("drilled_diameter"):
        outputs["drilled_diameter"] = given.number("drilled_diameter")
        checks.append(pipe_hole_check(made, given.number("drilled_diameter")))
    return Result(outputs=outputs, checks=worst_first(checks))


def _compute(given: Inputs) -> Result:
    return _parallel(given) if given.choice("thread_taper") == "parallel" else _taper(given)


CALCULATION = Calculation(
    name="screw-thread",
    title="Screw thread and tap drill",
    question="What are the diameters and heights of this thread, and what hole is drilled before tapping?",
    wants="The diameter is the basic one over the crests of the screw, the size the thread is called by, of an American taper "
    "pipe thread the outside of the pipe; give the nominal size too where that diameter was measured. Say what a full thread is counted as, because tap makers' rules and the standards differ.",
    neglects="All sizes are basic ones of the 60 degree ISO and unified form, the 55 degree Whitworth form, the 47.5 degree BA form, or the trapezoidal or Acme form, and only the pitch diameter has limits, "
    "by its class; taper pipe threads, NPT and BSPT, have those of their standards at their own planes. A drill cuts a little over its size, so measure the hole when the percentage matters.",
    kinds=("tap", "twist-drill"),
    belongs_on=("thread-land", "lip"),
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("thread_taper", default="parallel"),
        Field("thread_form", default="iso", when=("thread_taper", "parallel")),
        Field("starts", default=1.0),
        Field("hand", default="right"),
        NOMINAL,
        Field("drilled_diameter", optional=True, one_of="hole"),
        Field("thread_percent", optional=True, one_of="hole"),
        Field("full_thread", default="three-quarters", when=("thread_taper", "parallel")),
        *CLASS,
    ),
    outputs=(
        "tap_drill_diameter",
        "drilled_diameter",
        "thread_percent",
        "pitch",
        "pitch_diameter",
        "front_pitch_diameter",
        "internal_minor_diameter",
        "external_minor_diameter",
        "internal_thread_depth",
        "external_thread_depth",
        "sharp_height",
        "lead",
        *LIMITS_OF_CLASS,
    ),
    cautions=("eyes", "hands", "sharp-edges"),
    compute=_compute,
    sample={
        "diameter": 10.0,
        "pitch": 1.5,
        "starts": 2.0,
        "drilled_diameter": 8.6,
        "full_thread": "five-eighths",
    },
)
