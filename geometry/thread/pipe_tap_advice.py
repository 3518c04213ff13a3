"""What the small end of a taper pipe tap means: its projection, its full threads, what shortening does, its chamfer."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import Check, note, passed, watch
from geometry.complaints import complaint
from geometry.cures import way
from geometry.sentences import Rounding, angle, count, length, ratio
from geometry.thread.pipe import TAPER, PipeThread
from geometry.thread.pipe_tap import PipeTap, projection_of_standard

LONGEST_CHAMFER = 3.5
"""Threads in the chamfer of a pipe tap at the most; common practice, no source."""


def of_projection(made: PipeThread, projection: float, *, measured: bool) -> Iterator[Check]:
    """The projection beside that of a new tap."""
    standard = projection_of_standard(made)
    if standard is None:
        return
    basic, tolerance = standard
    amounts = {"new": length(basic), "tolerance": length(tolerance)}
    if not measured:
        yield note(
            "The tap is taken as new: its small end stands {new} out of the ring gauge, {tolerance} either way. Measure it.",
            **amounts,
        )
    elif projection > basic + tolerance * (1 + 1e-9):
        yield watch(
            "The small end stands {found} out of the ring gauge, further than any new tap of this size: {new}, {tolerance} "
            "either way. Measure it again with the gauge hand-tight; else the tap is worn under size.",
            found=length(projection),
            **amounts,
        )
    elif projection < basic - tolerance * (1 + 1e-9):
        yield note(
            "The small end stands {found} out of the ring gauge, a new one {new}, {tolerance} either way: the tap has been "
            "shortened before.",
            found=length(projection),
            **amounts,
        )


def of_full_threads(tap: PipeTap) -> Iterator[Check]:
    """Whether the full threads reach as far into the hole as a fitting is made up."""
    wanted = ratio(tap.threads_wanted)
    amounts = {"full": ratio(round(tap.full_threads, 2)), "wanted": wanted}
    if tap.may_be_cut >= -1e-9:
        yield passed(
            "Ahead of the small face of the gauge stand {full} full threads, and {wanted} are needed: {more} more may be "
            "cut off.",
            more=length(max(tap.may_be_cut, 0.0), Rounding.DOWN),
            **amounts,
        )
        return
    most = tap.cut_back + tap.may_be_cut
    yield complaint(
        "stop",
        "Too few full threads are left ahead of the small face of the gauge. There are {full}, and {wanted} are needed for the "
        "make-up of the pipe.",
        [way("cut back {most} or less", "cut_back", "most", length(most, Rounding.DOWN))]
        if tap.cut_back > 0 and most >= 0
        else [],
        ["grind a shorter chamfer", "replace the tap"],
        **amounts,
    )


def of_shortening(tap: PipeTap) -> Iterator[Check]:
    """How deep the tap goes in, and what happens where nobody thinks of that."""
    plane = "hand-tight" if tap.thread.series == "NPT" else "gauge"
    if tap.depth_in_hole <= 0:
        yield complaint("stop", "So much off the end leaves nothing of the thread that the gauge takes.")
        return
    yield note(
        f"Run the tap in until {{depth}} of it is in the hole; then its {plane} plane is at the mouth.",
        depth=length(tap.depth_in_hole),
    )
    if tap.cut_back > 0:
        yield note(
            "Cutting {cut} off takes {turns} turns. Run in as deep as before, it would make the mouth {larger} larger, and the "
            "pipe would go in that many turns further.",
            cut=length(tap.cut_back),
            turns=ratio(round(tap.turns_lost, 2)),
            larger=length(tap.mouth_grows),
        )


def of_the_chamfer(threads: float, slope: float) -> Iterator[Check]:
    """Whether the chamfer leaves the tap its full threads."""
    if threads > LONGEST_CHAMFER * (1 + 1e-9):
        yield watch(
            "A chamfer of {threads} threads is long for a pipe tap, whose hole is short: {most} are the most as a rule.",
            threads=ratio(round(threads, 2)),
            most=ratio(LONGEST_CHAMFER),
        )
    yield note(
        "Set the chamfer at {slope} to the axis: the crests behind it climb by {thread} themselves.",
        slope=angle(slope),
        thread=angle(math.atan(TAPER / 2)),
    )


def every_tooth_cuts(made: PipeThread, flutes: float) -> Check:
    """What the teeth behind the chamfer take."""
    return note(
        "Behind the chamfer each tooth of {flutes} goes on cutting, {chip} deeper than the one before, for the thread grows by "
        "{turn} in a turn: it wants thread relief all along.",
        flutes=count(flutes),
        chip=length(TAPER / 2 * made.pitch / flutes),
        turn=length(TAPER * made.pitch),
    )
