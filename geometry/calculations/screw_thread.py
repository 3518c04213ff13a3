"""The diameters and heights of a screw thread, and the hole to drill before tapping it."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import Calculation, Check, Field, Inputs, Result, passed, stop
from geometry.sentences import Amount, Kind, Rounding, count, length
from geometry.thread.asked import PITCH, pitch_of
from geometry.thread.form import Thread, thread
from geometry.thread.lead import lead
from geometry.thread.tap_drill import hole_for_percent, percent_of_thread, rule_diameter


def _percent(value: float, rounding: Rounding = Rounding.NEAREST) -> Amount:
    return Amount(value, Kind.RATIO, rounding)


def _counted(made: Thread, counted_as: str) -> str:
    """What 100 percent is, in words for a sentence."""
    if made.shape.internal == made.shape.external:
        return "the whole depth of the Whitworth form"
    return f"{counted_as.replace('-', ' ')} of the sharp height on each side"


def _rule(made: Thread, counted_as: str) -> Check:
    drill = rule_diameter(made)
    return passed(
        "The common rule, diameter less pitch, asks for a hole of {drill}. That leaves {percent} percent of a full "
        "thread, counted as {counted}.",
        drill=length(drill),
        percent=_percent(percent_of_thread(drill, made, counted_as)),
        counted=_counted(made, counted_as),
    )


def _hole(made: Thread, hole: float, counted_as: str) -> Check:
    """What a hole that was given means."""
    minor = made.internal_minor_diameter
    if hole >= made.diameter:
        return stop(
            "A hole of {hole} is as large as the thread: nothing is left to cut. Drill {drill}.",
            hole=length(hole),
            drill=length(rule_diameter(made)),
        )
    if hole < minor:
        return stop(
            "A hole of {hole} is smaller than the nut's minor diameter: the root of the tap would have to cut, and it "
            "jams. Drill {minor} or larger.",
            hole=length(hole),
            minor=length(minor, Rounding.UP),
        )
    return passed(
        "A hole of {hole} leaves {percent} percent of a full thread, counted as {counted}.",
        hole=length(hole),
        percent=_percent(percent_of_thread(hole, made, counted_as)),
        counted=_counted(made, counted_as),
    )


def _wanted(made: Thread, percent: float, hole: float, counted_as: str) -> Check:
    """What a percentage that was asked for means."""
    minor = made.internal_minor_diameter
    if hole < minor - 1e-9:
        return stop(
            "{percent} percent wants a hole of {hole}, smaller than the nut's minor diameter: the tap jams. Ask for "
            "{most} percent or less.",
            percent=_percent(percent),
            hole=length(hole),
            most=_percent(percent_of_thread(minor, made, counted_as), Rounding.DOWN),
        )
    return passed(
        "For {percent} percent of a full thread, counted as {counted}, drill {hole}.",
        percent=_percent(percent),
        counted=_counted(made, counted_as),
        hole=length(hole),
    )


def _drilling(given: Inputs, made: Thread, counted_as: str) -> tuple[dict[str, float], Iterator[Check]]:
    """Hole and percentage where one of them was given, and what they mean."""
    if given.has("drilled_diameter"):
        hole = given.number("drilled_diameter")
        percent = percent_of_thread(hole, made, counted_as)
        check = _hole(made, hole, counted_as)
    elif given.has("thread_percent"):
        percent = given.number("thread_percent")
        hole = hole_for_percent(percent, made, counted_as)
        check = _wanted(made, percent, hole, counted_as)
    else:
        return {}, iter(())
    return {"drilled_diameter": hole, "thread_percent": max(percent, 0.0)}, iter((check,))


def _compute(given: Inputs) -> Result:
    made = thread(given.number("diameter"), pitch_of(given), given.choice("thread_form"))
    counted_as, starts = given.choice("full_thread"), given.number("starts")
    drilling, checks = _drilling(given, made, counted_as)
    advance = lead(made.pitch, starts)
    several = passed("With {starts} starts the thread goes on by {lead} in each turn, its pitch times its starts.",
                     starts=count(starts), lead=length(advance))  # fmt: skip
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
        },
        checks=(*checks, _rule(made, counted_as), *((several,) if starts > 1 else ())),
    )


CALCULATION = Calculation(
    name="screw-thread",
    title="Screw thread and tap drill",
    question="What are the diameters and heights of this thread, and what hole is drilled before tapping?",
    wants="The diameter is the basic one over the crests of the screw, the size the thread is called by; "
    "say what a full thread is counted as, because tap makers' rules and the standards differ.",
    neglects="All sizes are basic ones of the 60 degree ISO and unified form, or of the 55 degree Whitworth form, without "
    "tolerances. A drill cuts a little over its size, so measure the hole when the percentage matters.",
    families=("tap", "twist-drill"),
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("thread_form", default="iso"),
        Field("starts", default=1.0),
        Field("drilled_diameter", optional=True, one_of="hole"),
        Field("thread_percent", optional=True, one_of="hole"),
        Field("full_thread", default="three-quarters"),
    ),
    outputs=(
        "tap_drill_diameter",
        "drilled_diameter",
        "thread_percent",
        "pitch",
        "pitch_diameter",
        "internal_minor_diameter",
        "external_minor_diameter",
        "internal_thread_depth",
        "external_thread_depth",
        "sharp_height",
        "lead",
    ),
    cautions=("eyes", "hands", "sharp-edges"),
    compute=_compute,
)
