"""Checks on a straight hole for a taper pipe thread, and notes on the plane at which its diameters hold."""

from __future__ import annotations

from geometry.calculation import Check, note, passed, stop, watch
from geometry.sentences import Amount, Kind, Rounding, length
from geometry.thread.hole_advice import PRINTED
from geometry.thread.pipe import TAPER, PipeThread

SHALLOW, LEAKS = 0.75, 0.50
"""Share of the depth at the mouth under which a pipe thread is doubtful, and no thread. Common practice, no source."""


def planes(made: PipeThread) -> Check:
    """At which planes the two pitch diameters hold."""
    plane = "hand-tight" if made.series == "NPT" else "gauge"
    return note(
        f"{made.size} {made.series} is a taper thread: its pitch diameter is {{small}} at the small end and {{mouth}} at "
        f"the {plane} plane, {{way}} behind it. It grows by {{turn}} in each turn.",
        small=length(made.front_pitch_diameter),
        mouth=length(made.pitch_diameter),
        way=length(made.gauge_length),
        turn=length(TAPER * made.pitch),
    )


def hole_limits(made: PipeThread) -> Check:
    """Between which diameters a straight hole is drilled."""
    return note(
        "A straight hole is drilled between {inner}, the minor diameter where the thread ends inside, and {mouth}, that "
        "at the mouth. The rule of diameter less pitch holds for parallel threads only.",
        inner=length(made.inner_minor_diameter, Rounding.UP),
        mouth=length(made.mouth_minor_diameter),
    )


def pipe_hole_check(made: PipeThread, hole: float) -> Check:
    """What a straight hole that was given means.

    Derived: on the tapered thread the crests of the hole lie between the minor diameters of its two ends.
    """
    inner, mouth = made.inner_minor_diameter, made.mouth_minor_diameter
    limits = {"inner": length(inner, Rounding.UP), "mouth": length(mouth)}
    cure = (("drilled_diameter", inner), ("drilled_diameter", mouth))
    if hole < inner - PRINTED:
        says = "A hole of {hole} is smaller than the minor diameter all along the thread"
        if hole < inner - made.depth:
            return stop(
                says + ": the tap jams. Drill from {inner} to {mouth}.",
                cure=cure,
                hole=length(hole),
                **limits,
            )
        return watch(
            says + ". Ream it to the taper of 1 in 16 before tapping, or drill from {inner} to {mouth}.",
            cure=cure,
            hole=length(hole),
            **limits,
        )
    share = 100 * made.depth_at_mouth(hole)
    parts = {"hole": length(hole), "share": Amount(max(share, 0.0), Kind.RATIO)}
    says = "A hole of {hole} leaves {share} percent of the depth of thread at its mouth"
    if hole > made.hole_for_depth(LEAKS) + PRINTED:
        return stop(
            says + " and less inside: it does not hold. Drill from {inner} to {mouth}.",
            cure=cure,
            **parts,
            **limits,
        )
    if hole > made.hole_for_depth(SHALLOW) + PRINTED:
        return watch(
            says + " and less inside: it may leak. Drill from {inner} to {mouth}.",
            cure=cure,
            **parts,
            **limits,
        )
    return passed(says + " and enters the thread all along.", **parts)
