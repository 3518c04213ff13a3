"""The small end of a taper pipe tap: diameters at its planes, chamfer, and what shortening it takes away."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    worst_first,
)
from geometry.complaints import settled
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import OFF_THE_END, Role
from geometry.sentences import Rounding, angle, length, ratio
from geometry.side_view import SideView, chamfer_view
from geometry.thread import pipe_tap_advice as advice
from geometry.thread.chamfer import chip_per_tooth
from geometry.thread.pipe import TAPER, PipeThread, pipe_thread
from geometry.thread.pipe_advice import planes
from geometry.thread.pipe_tap import PipeTap, chamfer_length_for, chamfer_slope, projection_of_standard
from geometry.thread.pitch_input import NOMINAL, PITCH, basic_diameter, pitch_of


@dataclass(frozen=True)
class _Chamfer:
    """The chamfer at the small end.

    Attributes:
        length: along the axis, in mm.
        slope: to the axis, in radians.
        rise: how deep it cuts into the crests at the end, in mm.
    """

    length: float
    slope: float
    rise: float


def _made(given: Inputs) -> PipeThread:
    if given.choice("thread_taper") == "parallel":
        raise refuse(
            "thread_taper",
            "A parallel pipe tap is sharpened like any other; say npt or bspt for a tap that grows along its thread.",
        )
    return pipe_thread(given.choice("thread_taper"), basic_diameter(given), pitch_of(given))


def _projection(given: Inputs, made: PipeThread) -> float | None:
    """As it was measured, else as a new tap has it; nothing where neither is known."""
    if given.has("gauge_projection"):
        return given.number("gauge_projection")
    standard = projection_of_standard(made)
    return standard[0] if standard is not None else None


def _rise(given: Inputs, made: PipeThread, projection: float | None) -> float:
    """How deep the chamfer cuts in at the end: to the root, or to the diameter that was measured there."""
    if not given.has("point_diameter"):
        return made.depth
    point = given.number("point_diameter")
    if projection is None:
        raise refuse(
            "point_diameter",
            "The point diameter tells the chamfer only together with the gauge projection. Give that too, or leave the "
            "point diameter out.",
        )
    crest = made.front_pitch_diameter - TAPER * projection + made.depth
    if not crest - 2 * made.depth - 1e-9 <= point < crest:
        raise refuse(
            "point_diameter",
            "At its end this thread reaches from {root} to {crest}; a chamfer ends between them. Measure the point, "
            "{point}, again.",
            {
                "root": length(crest - 2 * made.depth, Rounding.UP),
                "crest": length(crest, Rounding.DOWN),
                "point": length(point),
            },
        )
    return (crest - point) / 2


def _chamfer(given: Inputs, made: PipeThread, projection: float | None) -> _Chamfer:
    rise = _rise(given, made, projection)
    row = quantity("chamfer_threads")
    if given.has("chamfer_threads"):
        long = given.number("chamfer_threads") * made.pitch
        return _Chamfer(long, chamfer_slope(rise, long), rise)
    slope = given.number("chamfer_angle")
    long = chamfer_length_for(rise, slope)
    low, high = row.low * made.pitch, row.high * made.pitch
    if not low * (1 - 1e-9) <= long <= high * (1 + 1e-9):
        raise refuse(
            "chamfer_angle",
            "A tap's chamfer has from {low} to {high} threads; here its angle may be from {flat} to {steep}.",
            {
                "low": ratio(row.low),
                "high": ratio(row.high),
                "flat": angle(chamfer_slope(rise, high), Rounding.UP),
                "steep": angle(chamfer_slope(rise, low), Rounding.DOWN),
            },
        )
    return _Chamfer(long, slope, rise)


def _tap(given: Inputs) -> tuple[PipeThread, _Chamfer, PipeTap | None]:
    """The thread, its chamfer, and the tap where its projection is known."""
    made = _made(given)
    projection = _projection(given, made)
    chamfer = _chamfer(given, made, projection)
    if projection is None:
        return made, chamfer, None
    return made, chamfer, PipeTap(made, projection, given.number_or("cut_back", 0.0), chamfer.length)


def _checks(given: Inputs) -> Iterator[Check]:
    made, chamfer, tap = _tap(given)
    if tap is None:
        yield note(
            "With the gauge projection it is told how deep the tap goes in, and how far it may be cut back."
        )
    else:
        yield from advice.of_projection(made, tap.projection, measured=given.has("gauge_projection"))
        yield from advice.of_full_threads(tap)
        yield from advice.of_shortening(tap)
    yield from advice.of_the_chamfer(chamfer.length / made.pitch, chamfer.slope)
    if given.has("flutes"):
        yield advice.every_tooth_cuts(made, given.number("flutes"))
    yield planes(made)


def _compute(given: Inputs) -> Result:
    made, chamfer, tap = _tap(given)
    outputs = {
        "chamfer_angle": chamfer.slope,
        "chamfer_length": chamfer.length,
        "chamfer_threads": chamfer.length / made.pitch,
        "front_pitch_diameter": made.front_pitch_diameter,
        "pitch_diameter": made.pitch_diameter,
        "gauge_length": made.gauge_length,
    }
    if tap is not None:
        outputs |= {
            "tap_depth": max(tap.depth_in_hole, 0.0),
            "projection_after": tap.left,
            "end_pitch_diameter": tap.end_pitch_diameter,
            "full_threads_beyond": tap.full_threads,
            "usable_length": max(tap.may_be_cut, 0.0),
            "turns_lost": tap.turns_lost,
            "point_diameter_after": tap.end_pitch_diameter + made.depth - 2 * chamfer.rise,
        }
    if given.has("flutes"):
        outputs["chip_per_tooth"] = chip_per_tooth(made.pitch, given.number("flutes"), chamfer.slope)
    raw = Result(outputs, checks=worst_first(_checks(given)), side=_side(made, chamfer, tap))
    return settled(raw, given, lambda changed, _: _checks(changed))


def _side(made: PipeThread, chamfer: _Chamfer, tap: PipeTap | None) -> SideView:
    """The small end from the side."""
    end = made.front_pitch_diameter if tap is None else tap.end_pitch_diameter
    crest = end + made.depth + TAPER * chamfer.length
    point = end + made.depth - 2 * chamfer.rise
    return chamfer_view(crest, max(point, 0.0), chamfer.length, made.pitch, made.depth, TAPER)


CALCULATION = Calculation(
    name="pipe-tap",
    title="Small end of a taper pipe tap",
    question="What is the chamfer of a taper pipe tap, how deep does it go in, and what does cutting its end back take away?",
    wants="The diameter is the one that the thread is called by, of an American one the outside of the pipe; give the nominal size too where that diameter was measured. The projection is how "
    "far the small end stands out of a thin ring gauge that is screwed on by hand; without it an American tap is taken as new.",
    neglects="It takes the thread as its standard has it, without tolerances, and the chamfer as a straight cone from the root of the "
    "thread unless the point diameter is given. The relief of chamfer and thread has calculations of its own.",
    kinds=("tap",),
    belongs_on=("chamfer",),
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("thread_taper"),
        NOMINAL,
        Field("chamfer_threads", one_of="chamfer"),
        Field("chamfer_angle", one_of="chamfer"),
        Field("gauge_projection", optional=True),
        Field("point_diameter", optional=True),
        Field("cut_back", optional=True),
        Field("flutes", optional=True),
    ),
    outputs=(
        "chamfer_angle",
        "chamfer_length",
        "chamfer_threads",
        "tap_depth",
        "front_pitch_diameter",
        "pitch_diameter",
        "gauge_length",
        "projection_after",
        "end_pitch_diameter",
        "point_diameter_after",
        "full_threads_beyond",
        "usable_length",
        "turns_lost",
        "chip_per_tooth",
    ),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    beside=True,
    role=Role(
        place=41,
        sets=("cut_back", "chamfer_angle"),
        counted=(OFF_THE_END,),
        hands_on="chamfer_angle",
        only=("thread_taper", "npt", "bspt"),
        ground=("chamfer",),
        tells=("pass", "note"),
    ),
    sample={
        "diameter": 21.336,
        "threads_per_inch": 14 / 25.4,
        "thread_taper": "npt",
        "chamfer_threads": 2.5,
        "gauge_projection": 14.5,
        "cut_back": 2.0,
        "flutes": 4.0,
    },
)
