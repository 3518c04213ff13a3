"""The chamfer of a tap: angle, threads, chip and relief, and what grinding it back does."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Station,
    stations,
    worst_first,
)
from geometry.plausible import land_plausible
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import OFF_THE_END, Role
from geometry.sentences import Rounding, angle, length, ratio
from geometry.side_view import chamfer_view
from geometry.thread.chamfer import (
    RELIEF_FACTORS,
    SLACK,
    Chamfer,
    chamfer_angle,
    chamfer_length,
    chip_per_tooth,
    moved_back,
    reliefs,
    stock_for,
)
from geometry.thread.chamfer_advice import (
    back_checks,
    chip_checks,
    far_from_its_thread,
    relief_checks,
    starts,
)
from geometry.thread.form import Thread, thread
from geometry.thread.lead import lead
from geometry.thread.pitch_input import NOMINAL, PITCH, basic_diameter, pitch_checks, pitch_of
from geometry.tooth import eccentric
from geometry.tooth.land import land_angle


def _parallel(given: Inputs) -> None:
    """See that the tap is one for a parallel thread; the crests of the others rise behind the chamfer as well."""
    if given.choice("thread_taper") != "parallel":
        raise refuse(
            "thread_taper",
            "A taper pipe tap grows behind its chamfer as well, so the depth of a parallel thread does not make its "
            "chamfer. The calculation for taper pipe taps works out the small end of such a tap.",
        )


def _named(given: Inputs, made: Thread) -> Thread | None:
    """The thread that the tap cuts, by its nominal diameter where that was given: the crests of a tap measure otherwise."""
    if not given.has("nominal_diameter"):
        return None
    return thread(basic_diameter(given), made.pitch, given.choice("thread_form"))


def _depth(made: Thread, named: Thread | None) -> float:
    """From the crests as they measure to the root, in mm.

    A tap that is larger over its crests was made so, and keeps the root of its thread. One that is smaller has become so
    as a whole, root and crests, as its thread runs smaller toward the back. Common practice, no source.
    """
    if named is None or made.diameter <= named.diameter:
        return made.external_depth
    return (made.diameter - named.external_minor_diameter) / 2


def _height(given: Inputs, made: Thread, named: Thread | None) -> float:
    """How far the chamfer rises: from the point, or from the root of the thread, to the crests as they measure."""
    if not given.has("point_diameter"):
        return _depth(made, named)
    point = given.number("point_diameter")
    if point >= made.diameter:
        raise refuse(
            "point_diameter",
            "The point, {point}, must be smaller than the tap, {diameter}; measure it again.",
            {"point": length(point), "diameter": length(made.diameter)},
        )
    return (made.diameter - point) / 2


def _chamfer(given: Inputs, made: Thread) -> Chamfer:
    named = _named(given, made)
    height = _height(given, made, named)
    if given.has("chamfer_angle"):
        slope = given.number("chamfer_angle")
        long = chamfer_length(height, slope)
    else:
        asked = given.has("chamfer_length")
        long = given.number("chamfer_length") if asked else given.number("chamfer_threads") * made.pitch
        slope = chamfer_angle(height, long)
    row = quantity("chamfer_threads")
    low, high = row.low * made.pitch, row.high * made.pitch
    if not low * (1 - 1e-9) <= long <= high * (1 + 1e-9):
        raise refuse(
            "chamfer_angle" if given.has("chamfer_angle") else "chamfer_length",
            "A tap's chamfer has from {low} to {high} threads; here its angle may be from {flat} to {steep}.",
            {
                "low": ratio(row.low),
                "high": ratio(row.high),
                "flat": angle(chamfer_angle(height, high), Rounding.UP),
                "steep": angle(chamfer_angle(height, low), Rounding.DOWN),
            },
        )
    return Chamfer(made, height, long, slope, named)


def _chips(given: Inputs, chamfer: Chamfer) -> dict[str, float]:
    if not given.has("flutes"):
        return {}
    advance = lead(chamfer.thread.pitch, given.number("starts"))
    chip = min(chip_per_tooth(advance, given.number("flutes"), chamfer.angle), chamfer.height)
    return {"chip_per_tooth": chip, "square_chip_per_tooth": chip * math.cos(chamfer.angle)}


def _given_relief(given: Inputs) -> str:
    """The sense in which the relief was given; empty where it was not."""
    return next((key for key in RELIEF_FACTORS if given.has(key)), "")


def _reliefs(given: Inputs, chamfer: Chamfer) -> dict[str, float]:
    key = _given_relief(given)
    return reliefs(given.number(key), key, chamfer.angle) if key else {}


def _readings(given: Inputs, chamfer: Chamfer, found: dict[str, float]) -> tuple[Station, ...]:
    """What an indicator shows behind the edge: along the radius, along the axis and square to the chamfer."""
    if not found or not given.has("land_width"):
        return ()
    diameter, radial = chamfer.thread.diameter, found["radial_chamfer_relief"]
    turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
    heel = eccentric.drop(turned, radial, diameter)

    def evenly(at_heel: float) -> Callable[[float], float]:
        return lambda angle: at_heel * (angle / turned) if turned else 0.0

    return stations(
        turned,
        {
            "drop": evenly(heel),
            "axial_drop": evenly(heel / math.tan(chamfer.angle)),
            "square_drop": evenly(heel * math.cos(chamfer.angle)),
        },
    )


def _ground_back(given: Inputs, chamfer: Chamfer) -> dict[str, float]:
    """What is left after the end is cut back, the chamfer is ground, or both."""
    found = {}
    moved = moved_back(given.number_or("chamfer_stock", 0.0), chamfer.angle)
    if given.has("chamfer_stock"):
        found["full_thread_moves_back"] = moved
    if not found and not given.has("cut_back"):
        return {}
    left = max(chamfer.length + moved - given.number_or("cut_back", 0.0), 0.0)
    point = chamfer.point_diameter(left)
    if point < -SLACK:
        spare = chamfer.point_diameter(chamfer.length) / 2 / math.tan(chamfer.angle)
        most = stock_for(max(spare, 0.0) + given.number_or("cut_back", 0.0), chamfer.angle)
        raise refuse(
            "chamfer_stock",
            "So much off the chamfer grinds the tap to a sharp point; take less than {most}, or cut the end back.",
            {"most": length(most, Rounding.DOWN)},
        )
    return found | {"threads_left": left / chamfer.thread.pitch, "point_diameter_after": max(point, 0.0)}


def _checks(given: Inputs, chamfer: Chamfer, found: dict[str, float]) -> Iterator[Check]:
    """What all of it means, the chips apart."""
    yield from pitch_checks(given)
    yield starts(chamfer)
    if chamfer.nominal is not None:
        yield from far_from_its_thread(chamfer.thread.diameter, chamfer.nominal.diameter)
    if given.has("land_width"):
        turned = land_angle(
            given.number("land_width"), chamfer.thread.diameter, given.choice("land_measured_as")
        )
        yield from land_plausible(turned, given.number("flutes") if given.has("flutes") else None)
    yield from relief_checks(found, _given_relief(given), chamfer.angle)


def _compute(given: Inputs) -> Result:
    _parallel(given)
    made = thread(given.number("diameter"), pitch_of(given), given.choice("thread_form"))
    chamfer = _chamfer(given, made)
    chips, found, back = _chips(given, chamfer), _reliefs(given, chamfer), _ground_back(given, chamfer)
    readings = _readings(given, chamfer, found)
    return Result(
        outputs={
            "chamfer_angle": chamfer.angle,
            "chamfer_length": chamfer.length,
            "chamfer_threads": chamfer.threads,
            "point_diameter": made.diameter - 2 * chamfer.height,
            **chips,
            **found,
            **(readings[-1].readings if readings else {}),
            **back,
        },
        stations=readings,
        checks=worst_first(
            (
                *_checks(given, chamfer, found),
                *chip_checks(chips),
                *back_checks(chamfer, given.number_or("cut_back", 0.0), back),
            )
        ),
        side=chamfer_view(
            made.diameter,
            chamfer.point_diameter(chamfer.length),
            chamfer.length,
            made.pitch,
            _depth(made, chamfer.nominal),
        ),
    )


IN_THE_BOOK = {"radial_chamfer_relief": "chamfer_relief_angle"}
"""The book has the relief of a chamfer square to the axis of the tool."""

CALCULATION = Calculation(
    name="tap-chamfer",
    title="Chamfer of a tap",
    question="What are the angle, the threads, the chip and the relief of this chamfer, and what is left after grinding it?",
    wants="The diameter is the tap's over its crests, the land is measured on it, and the chamfer's angle is that of one "
    "side to the axis. It rises by the depth of the external thread (17/24 of the fundamental triangle height for 60 degrees), from the root of "
    "its own thread where the tap is larger than its nominal size, unless you give the diameter at the point. The hole goes by the nominal size.",
    neglects="It takes the chamfer as a straight cone and its relief as an even cam. With a larger hole than the point the "
    "first threads of the chamfer meet no metal, and the point diameter of a spiral-point tap is hard to measure.",
    kinds=("tap",),
    belongs_on=("chamfer",),
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("thread_taper", default="parallel"),
        Field("thread_form", default="iso"),
        NOMINAL,
        Field("chamfer_threads", one_of="chamfer"),
        Field("chamfer_angle", one_of="chamfer"),
        Field("chamfer_length", one_of="chamfer"),
        Field("point_diameter", optional=True),
        Field("flutes", optional=True),
        Field("starts", default=1.0),
        *(
            Field(key, optional=True, one_of="chamfer relief", offered_from=IN_THE_BOOK.get(key, ""))
            for key in RELIEF_FACTORS
        ),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
        Field("cut_back", optional=True),
        Field("chamfer_stock", optional=True),
    ),
    outputs=(
        "chamfer_angle",
        "chamfer_length",
        "chamfer_threads",
        "point_diameter",
        "chip_per_tooth",
        "square_chip_per_tooth",
        "radial_chamfer_relief",
        "axial_chamfer_relief",
        "square_chamfer_relief",
        "drop",
        "axial_drop",
        "square_drop",
        "threads_left",
        "point_diameter_after",
        "full_thread_moves_back",
    ),
    cautions=AT_THE_WHEEL,
    compute=_compute,
    role=Role(
        place=40,
        sets=("cut_back", "chamfer_angle", "chamfer_stock"),
        counted=(OFF_THE_END, ("chamfer_stock", "square to the chamfer, off every land alike")),
        hands_on="chamfer_angle",
        ground=("chamfer",),
        only=("thread_taper", "parallel"),
    ),
    sample={
        "diameter": 10.0,
        "pitch": 1.5,
        "chamfer_threads": 4.0,
        "flutes": 3.0,
        "radial_chamfer_relief": math.radians(4),
        "land_width": 2.5,
        "chamfer_stock": 0.1,
        "cut_back": 0.5,
    },
)
