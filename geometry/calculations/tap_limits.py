"""The limits of a tap by its mark, and how far a worn one is above its least pitch diameter."""

from __future__ import annotations

from collections.abc import Iterator

from geometry.calculation import (
    Calculation,
    Check,
    Cure,
    Field,
    Inputs,
    Result,
    note,
    passed,
    stop,
    watch,
    worst_first,
)
from geometry.fit.hole import Limits
from geometry.plausible import pitch_plausible
from geometry.preconditions import NotGiven, refuse
from geometry.quantities.limits import LIMITS
from geometry.role import Role
from geometry.sentences import Sentence, length
from geometry.thread.class_advice import (
    CLASS,
    LIMITS_OF_CLASS,
    READ,
    class_limits,
    foreign_mark,
    measured_in_class,
    tap_in_class,
    told_of_class,
)
from geometry.thread.form import Thread, thread
from geometry.thread.iso_965 import D_READ
from geometry.thread.pitch_input import PITCH, pitch_of
from geometry.thread.tap_limits import number_of, tap_limits

ANOTHER_TAP = 0.1
"""From which share on a measured pitch diameter is that of another tap. Common practice, no source."""

NEITHER = Sentence(
    "Give tap_limit, the mark on the shank of the tap such as H5 or ISO2-6H; or give thread_class, such as 2B or 6H, to be told "
    "the limits of the thread and a mark that keeps within them."
)
"""What is said where neither the tap nor its thread is known closer."""

ONE_STEP = (25.4, 25.4 / 8)
"""Diameter and pitch, in mm, up to which every H number is one step wide. A tap maker's technical page."""


def _thread(given: Inputs) -> Thread:
    if given.choice("thread_taper") != "parallel":
        raise refuse(
            "thread_taper",
            "A taper pipe tap has no one pitch diameter, and no such limits: its gauge says how far it goes in.",
        )
    return thread(given.number("nominal_diameter"), pitch_of(given), given.choice("thread_form"))


def _limits(given: Inputs, made: Thread) -> Limits | None:
    """The limits of the tap; nothing where no mark was given and the class of its thread is known."""
    if not given.has("tap_limit"):
        if given.has("thread_class"):
            return None
        raise NotGiven(NEITHER, "tap_limit")
    if given.choice("tap_limit") == LIMITS:
        found = Limits(given.number("tap_lower_limit"), given.number("tap_upper_limit"))
        if not found.width > 0:
            raise refuse("tap_upper_limit", "The upper limit of the tap must be larger than the lower one.")
        return found
    if given.choice("thread_form") != "iso":
        raise refuse(
            "tap_limit",
            "These marks are of the 60 degree form. Set tap_limit to limits and give those of the tap's maker.",
        )
    return tap_limits(made, given.choice("tap_limit"))


def _too_large(given: Inputs, made: Thread, measured: float) -> Check:
    number = number_of(made, given.choice("tap_limit")[0], measured)
    says = (
        "The tap measures {measured}, over its upper limit: its thread may come out loose. Measure it again"
    )
    cure: Cure = (("tap_limit", number),) if number else ()
    says += ", or see the mark, for it measures as {number}." if number else ", or see the mark."
    parts = {"number": number} if number else {}
    return watch(says, measured=length(measured), cure=cure, **parts)


def _measured(given: Inputs, made: Thread, limits: Limits) -> Check:
    """What a measured pitch diameter means."""
    measured, basic = given.number("tap_pitch_diameter"), made.pitch_diameter
    if abs(measured - basic) > ANOTHER_TAP * basic:
        return stop(
            "The pitch diameter that was measured is not one of this thread. Measure it again, and see the size."
        )
    if measured > limits.high + READ:
        return _too_large(given, made, measured)
    if measured >= limits.low - READ:
        return passed(
            "The tap lies within its limits, {above} above the least.",
            above=length(max(measured - limits.low, 0.0)),
        )
    if measured < basic - READ:
        return stop(
            "The tap is worn to {measured}, under the basic pitch diameter: a gauge will not go in. Cut it back to threads "
            "that are not worn, or set it aside.",
            measured=length(measured),
        )
    return watch(
        "The tap is worn {under} under its lower limit, and still {over} over the basic pitch diameter. Try its thread with a "
        "gauge before and after sharpening.",
        under=length(limits.low - measured),
        over=length(max(measured - basic, 0.0)),
    )


def _checks(given: Inputs, made: Thread, limits: Limits | None, allowed: Limits | None) -> Iterator[Check]:
    key = "pitch" if given.has("pitch") else "threads_per_inch"
    yield from pitch_plausible(made.pitch, made.diameter, key=key)
    if limits is not None:
        if given.has("tap_pitch_diameter"):
            yield _measured(given, made, limits)
        yield from foreign_mark(given, made, allowed)
        if allowed is not None:
            yield from tap_in_class(given, made, limits, allowed)
    if allowed is not None:
        yield from measured_in_class(given, made, allowed)
        yield from told_of_class(given, made, allowed)
    if limits is not None:
        yield from _of_the_mark(given.choice("tap_limit"), made, limits)


def _of_the_mark(mark: str, made: Thread, limits: Limits) -> Iterator[Check]:
    """What is known of taps with a mark."""
    yield note(
        "A new tap of this mark measures {low} to {high} over its pitch diameter. Sharpening the chamfer or the faces does "
        "not bring worn flanks back.",
        low=length(limits.low),
        high=length(limits.high),
    )
    wide = made.diameter > ONE_STEP[0] + READ or made.pitch > ONE_STEP[1] + READ
    if mark[0] == "H" and wide:
        yield note(
            "Over 1 inch, or coarser than 8 threads to the inch, some H numbers are wider than one step: see the table of the "
            "tap's maker."
        )
    if mark[0] == "D" and not any(abs(one - made.pitch) < READ for one in D_READ):
        yield note(
            "The lower limit of a D tap of this pitch is from memory: see the table of the tap's maker."
        )


def _compute(given: Inputs) -> Result:
    made = _thread(given)
    limits, allowed = _limits(given, made), class_limits(given, made)
    outputs = {}
    if limits is not None:
        outputs["pitch_diameter"] = made.pitch_diameter
        if not given.has("tap_lower_limit"):
            outputs |= {"tap_lower_limit": limits.low, "tap_upper_limit": limits.high}
        if given.has("tap_pitch_diameter"):
            outputs["above_least"] = given.number("tap_pitch_diameter") - limits.low
    if allowed is not None:
        outputs |= dict(zip(LIMITS_OF_CLASS, (allowed.low, allowed.high), strict=True))
    outputs.setdefault("pitch_diameter", made.pitch_diameter)
    return Result(outputs=outputs, checks=worst_first(_checks(given, made, limits, allowed)))


CALCULATION = Calculation(
    name="tap-limits",
    title="Limits of a tap",
    question="How large is a tap of this mark, and how far is a worn one above its least pitch diameter?",
    wants="The nominal size is that of the thread, and the mark is the one on the shank of the tap; the pitch diameter of the "
    "tap is measured over wires behind the chamfer, and may be left out. With the class of the thread, 2B or 6H, the tap is held "
    "against it as well; without a mark the class alone says which one to take.",
    neglects="It knows the tap and not the thread that it cuts, which is wider where the tap is led badly; the gauge decides.",
    kinds=("tap",),
    belongs_on=("thread-land",),
    beside=True,
    inputs=(
        Field("nominal_diameter", fill_from=("diameter",)),
        *PITCH,
        Field("thread_taper", default="parallel"),
        Field("thread_form", default="iso"),
        Field("tap_limit", optional=True),
        Field("tap_lower_limit", when=("tap_limit", LIMITS)),
        Field("tap_upper_limit", when=("tap_limit", LIMITS)),
        Field("tap_pitch_diameter", optional=True, measured=True),
        *CLASS,
    ),
    outputs=("tap_lower_limit", "tap_upper_limit", "above_least", "pitch_diameter", *LIMITS_OF_CLASS),
    cautions=("eyes", "hands", "sharp-edges"),
    compute=_compute,
    role=Role(place=22, of_course=(), about="tap_pitch_diameter", tells=("pass", "note")),
    sample={"nominal_diameter": 12.0, "pitch": 1.75, "tap_limit": "ISO2-6H", "tap_pitch_diameter": 10.9},
)
