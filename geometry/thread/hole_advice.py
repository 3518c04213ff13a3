"""Checks on the hole before tapping a parallel thread: too small, too large, or in between.

The lower limit is the minor diameter of the internal thread, as ISO 724 prints it. The upper one
is common practice without a source: under 60 percent of a thread, three quarters of the sharp height counted
as full, it begins to be weak, and under half it strips.
"""

from __future__ import annotations

from geometry.calculation import Check, Cure, passed, stop, watch
from geometry.sentences import Amount, Kind, Rounding, length
from geometry.thread.form import Thread
from geometry.thread.tap_drill import hole_for_percent, percent_of_thread, rule_diameter

WEAK, STRIPS = 60.0, 50.0
"""Percent of a thread, three quarters of the sharp height counted as full. Common practice, no source."""

PRINTED = 0.00128
"""Half of the ten-thousandth of an inch to which tables print, in mm: holes that read alike there are alike."""


LIMITS_SHOWN = 0.0254
"""As coarsely as a limit is shown, in mm: a thou."""


def percent(value: float, rounding: Rounding = Rounding.NEAREST) -> Amount:
    """A percentage as part of a sentence, without its sign."""
    return Amount(value, Kind.RATIO, rounding)


def counted(made: Thread, counted_as: str) -> str:
    """What 100 percent is, in words for a sentence."""
    if made.shape.has_one_depth:
        return f"the whole depth of the {made.shape.title} form"
    return f"{counted_as.replace('-', ' ')} of the sharp height on each side"


def largest_hole(made: Thread, least_percent: float = WEAK) -> float:
    """The hole that leaves so much of a thread, three quarters counted as full, in mm.

    Example:
        >>> from geometry.thread.form import thread
        >>> round(largest_hole(thread(10.0, 1.5, "iso")), 3)
        8.831
    """
    return hole_for_percent(least_percent, made, "three-quarters")


def _to_drill(smallest: float, largest: float) -> tuple[str, Cure, dict[str, Amount | str]]:
    """What to drill: from one hole to another where both can be told apart as limits are shown, else the smaller."""
    least: Cure = (("drilled_diameter", smallest),)
    if largest - smallest < LIMITS_SHOWN:
        return "Drill {smallest}", least, {"smallest": length(smallest)}
    return (
        "Drill from {smallest} to {largest}",
        (*least, ("drilled_diameter", largest)),
        {"smallest": length(smallest), "largest": length(largest, Rounding.DOWN)},
    )


def hole_check(made: Thread, hole: float, counted_as: str) -> Check:
    """What a hole that was given means."""
    smallest, largest = made.internal_minor_diameter, largest_hole(made)
    drill, cure, limits = _to_drill(smallest, largest)
    if hole >= made.diameter:
        return stop(
            "A hole of {hole} is as large as the thread: nothing is left to cut. Drill {drill}.",
            cure=(("drilled_diameter", rule_diameter(made)),),
            hole=length(hole),
            drill=length(rule_diameter(made)),
        )
    if hole < smallest - PRINTED:
        return stop(
            "A hole of {hole} is smaller than the minor diameter of the internal thread: the root of the tap would have "
            "to cut, and it jams. " + drill + ".",
            cure=cure,
            hole=length(hole),
            **limits,
        )
    leaves: dict[str, Amount | str] = {
        "hole": length(hole),
        "percent": percent(percent_of_thread(hole, made, counted_as)),
        "counted": counted(made, counted_as),
    }
    says = "A hole of {hole} leaves {percent} percent of a full thread, counted as {counted}"
    if hole > largest_hole(made, STRIPS) + PRINTED:
        return stop(says + ": it strips. " + drill + ".", cure=cure, **leaves, **limits)
    if hole > largest + PRINTED:
        return watch(
            says + ": a weak thread. " + drill + " for a sound one.",
            cure=cure,
            **leaves,
            **limits,
        )
    return passed(says + ".", **leaves)


def percent_check(made: Thread, wanted: float, hole: float, counted_as: str) -> Check:
    """What a percentage that was asked for means, and the hole for it."""
    smallest, largest = made.internal_minor_diameter, largest_hole(made)
    most = percent_of_thread(smallest, made, counted_as)
    least = percent_of_thread(largest, made, counted_as)
    says = "{percent} percent of a full thread, counted as {counted}, wants a hole of {hole}"
    parts: dict[str, Amount | str] = {
        "percent": percent(wanted),
        "counted": counted(made, counted_as),
        "hole": length(hole),
    }
    limits = {"least": percent(least, Rounding.UP), "most": percent(most, Rounding.DOWN)}
    cure = (("thread_percent", least), ("thread_percent", most))
    if hole < smallest - PRINTED:
        return stop(
            says
            + ", smaller than the minor diameter of the internal thread: the tap jams. Ask for {least} to {most} "
            "percent.",
            cure=cure,
            **parts,
            **limits,
        )
    if hole > largest_hole(made, STRIPS) + PRINTED:
        return stop(
            says + " and leaves a thread that strips. Ask for {least} to {most} percent.",
            cure=cure,
            **parts,
            **limits,
        )
    if hole > largest + PRINTED:
        return watch(
            says + " and leaves a weak thread. Ask for {least} to {most} percent for a sound one.",
            cure=cure,
            **parts,
            **limits,
        )
    return passed(says + ".", **parts)
