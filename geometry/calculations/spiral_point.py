"""The spiral point of a gun tap: depth and length of its gash, and what grinding it takes."""

from __future__ import annotations

import math
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
    passed,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import Way, way
from geometry.role import Role
from geometry.sentences import Rounding, angle, length, ratio
from geometry.thread.pitch_input import PITCH, pitch_checks, pitch_of
from geometry.thread.spiral_point import Gash, gash_of_length, keeps_length, require_gash
from geometry.tooth.land import land_angle, land_width

LEAST_BEYOND, MOST_BEYOND = 1.0, 3.0
"""Threads that a gash goes past the chamfer: one in a service manual (T.O. 1-1A-9, 3-197), about two by a tool supplier;
more than three is common practice for too far, no source."""

THIN = 0.5
"""The share of the land that shall be left at the front; common practice, no source."""

SLACK = 1e-9


@dataclass(frozen=True)
class _Tap:
    """A tap with its gash before and after.

    Attributes:
        pitch: in mm.
        chamfer: length of the chamfer, in mm.
        before: as it is, or as it shall be.
        after: when the end was cut back and the gash ground.
        land: straight across, in mm; nothing where it was not measured.
        is_ground: whether anything is taken off.
    """

    pitch: float
    chamfer: float
    before: Gash
    after: Gash
    land: float | None
    is_ground: bool

    @property
    def beyond(self) -> float:
        """How many threads the gash goes past the chamfer, at the end of it all."""
        return (self.after.length - self.chamfer) / self.pitch


def _tap(given: Inputs) -> _Tap:
    pitch, slope = pitch_of(given), require_gash(given.number("spiral_point_angle"))
    chamfer = (
        given.number("chamfer_length")
        if given.has("chamfer_length")
        else given.number("chamfer_threads") * pitch
    )
    before = (
        Gash(slope, given.number("spiral_point_depth"))
        if given.has("spiral_point_depth")
        else gash_of_length(slope, chamfer + given.number("threads_beyond") * pitch)
    )
    after = before.cut_back(given.number_or("cut_back", 0.0))
    after = after.ground(given.number_or("stock_per_sharpening", 0.0))
    land = None
    if given.has("land_width"):
        diameter = given.number("diameter")
        turned = land_angle(given.number("land_width"), diameter, given.choice("land_measured_as"))
        land = land_width(min(turned, math.pi), diameter, "chord")
    is_ground = given.has("cut_back") or given.has("stock_per_sharpening")
    return _Tap(pitch, chamfer, before, after, land, is_ground)


def _wanted_depth(given: Inputs, tap: _Tap, threads: float) -> float:
    return gash_of_length(tap.after.angle, tap.chamfer + threads * tap.pitch).depth


def _longer(given: Inputs, tap: _Tap) -> list[Way]:
    """How a gash that ends too early is brought past the chamfer."""
    depth = _wanted_depth(given, tap, LEAST_BEYOND)
    stock = given.number_or("stock_per_sharpening", 0.0) + tap.after.stock_for(depth)
    ways = [
        way(
            "grind {stock} or more off the gash",
            "stock_per_sharpening",
            "stock",
            length(stock, Rounding.UP),
        )
    ]
    if not given.has("spiral_point_depth"):
        lost = (tap.before.length - tap.after.length) / tap.pitch
        threads = ratio(math.ceil((LEAST_BEYOND + lost) * 100) / 100)
        ways = [way("let it go {threads} threads past the chamfer", "threads_beyond", "threads", threads)]
    return ways


def _shorter(given: Inputs, tap: _Tap) -> list[Way]:
    back = given.number_or("cut_back", 0.0) + (tap.beyond - MOST_BEYOND) * tap.pitch
    return [way("cut {back} or more off the end", "cut_back", "back", length(back, Rounding.UP))]


def _reach(given: Inputs, tap: _Tap) -> Iterator[Check]:
    if tap.after.depth <= 0:
        yield complaint("stop", "The cut takes the whole gash away.", _longer(given, tap))
        return
    said = {"long": length(tap.after.length), "beyond": ratio(tap.beyond)}
    if tap.beyond < LEAST_BEYOND - SLACK:
        yield complaint(
            "watch",
            "The gash does not go a thread past the chamfer, so the last teeth that cut do not drive their chips ahead.",
            _longer(given, tap),
        )
    elif tap.beyond > MOST_BEYOND + SLACK:
        yield complaint(
            "watch",
            "The gash goes {beyond} threads past the chamfer: that weakens the front and takes threads that guide.",
            _shorter(given, tap),
            beyond=said["beyond"],
        )
    else:
        yield passed("The gash is {long} long and goes {beyond} threads past the chamfer.", **said)


def _land(given: Inputs, tap: _Tap) -> Iterator[Check]:
    if tap.land is None or tap.after.depth <= 0:
        return
    left = tap.land - tap.after.depth
    if left >= THIN * tap.land:
        yield passed("{left} of the land is left at the front.", left=length(left))
        return
    too_deep = tap.after.depth - (1 - THIN) * tap.land
    back = given.number_or("cut_back", 0.0) + too_deep / math.tan(tap.after.angle)
    ways = [way("cut {back} or more off the end", "cut_back", "back", length(back, Rounding.UP))]
    if left <= 0:
        yield complaint("stop", "At the front the gash goes through the whole land.", ways)
        return
    yield complaint(
        "watch",
        "Only {left} of the land is left at the front, less than half of it.",
        ways,
        left=length(left),
    )


def _told(given: Inputs, tap: _Tap) -> Iterator[Check]:
    yield note(
        "Swivel by {slope} to the axis and grind until the gash lies {depth} behind the face at the front, in every flute "
        "alike; grind the gash only and leave the rest of the flute.",
        slope=angle(tap.after.angle),
        depth=length(max(tap.after.depth, 0.0)),
    )
    stock = given.number_or("stock_per_sharpening", 0.0)
    if stock > 0:
        yield note(
            "{stock} off the gash makes it {longer} longer; cut that off the end first, and grind the chamfer anew, to keep "
            "it as long as it is.",
            stock=length(stock),
            longer=length(keeps_length(stock, tap.after.angle)),
        )


def _checks(given: Inputs, tap: _Tap) -> tuple[Check, ...]:
    return worst_first((*pitch_checks(given), *_reach(given, tap), *_land(given, tap), *_told(given, tap)))


def _compute(given: Inputs) -> Result:
    tap = _tap(given)
    outputs = {
        "spiral_point_angle": tap.before.angle,
        "spiral_point_depth": tap.before.depth,
        "spiral_point_length": tap.before.length,
        "threads_beyond": max(tap.beyond, 0.0),
    }
    if tap.is_ground:
        outputs |= {
            "spiral_point_depth_after": max(tap.after.depth, 0.0),
            "spiral_point_length_after": max(tap.after.length, 0.0),
        }
    if given.has("stock_per_sharpening"):
        outputs["cut_back_wanted"] = keeps_length(given.number("stock_per_sharpening"), tap.after.angle)
    if tap.land is not None:
        outputs["front_land"] = min(max(tap.land - tap.after.depth, 0.0), tap.land)
    found = Result(outputs, checks=_checks(given, tap))
    return settled(found, given, lambda other, _: _checks(other, _tap(other)))


CALCULATION = Calculation(
    name="spiral-point",
    title="Spiral point of a gun tap",
    question="How deep and how long is the gash of a spiral point, does it go past the chamfer, and what does grinding it take?",
    wants="The angle is that of the gash to the axis, the depth is measured at the very front, square to the face of the flute, and "
    "the chamfer as on any tap. Give the depth to see what is there, or the threads past the chamfer to see what to grind.",
    neglects="It takes gash and face of the flute as flat and the cut back end as still without a chamfer. Grinding the gash leaves "
    "another rake along it; hold it against a new tap of the same kind.",
    kinds=("tap",),
    belongs_on=("chamfer",),
    inputs=(
        Field("diameter"),
        *PITCH,
        Field("spiral_point_angle"),
        Field("chamfer_threads", one_of="chamfer"),
        Field("chamfer_length", one_of="chamfer"),
        Field("spiral_point_depth", optional=True),
        Field("threads_beyond", default=2.0),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
        Field("stock_per_sharpening", optional=True),
        Field("cut_back", optional=True),
    ),
    outputs=(
        "spiral_point_depth",
        "spiral_point_length",
        "threads_beyond",
        "spiral_point_depth_after",
        "spiral_point_length_after",
        "cut_back_wanted",
        "front_land",
        "spiral_point_angle",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    role=Role(
        place=42,
        of_course=(),
        about="spiral_point_depth",
        by_wanted="spiral_point_angle",
        sets=("spiral_point_angle", "spiral_point_depth"),
        tells=("pass", "note"),
    ),
    sample={
        "diameter": 10.0,
        "pitch": 1.5,
        "spiral_point_angle": math.radians(10),
        "chamfer_threads": 4.0,
        "threads_beyond": 2.0,
        "land_width": 4.0,
        "stock_per_sharpening": 0.1,
        "cut_back": 0.5,
    },
)
