"""The spiral point of a gun tap: depth and length of its gash, and what grinding it takes."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

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
from geometry.complaints import complaint, is_tried
from geometry.cures import Way
from geometry.role import OFF_THE_END, Role
from geometry.sentences import Rounding, angle, length, ratio
from geometry.thread.gun_tap import GONE, LONG, NARROW, SHORT, THIN, THROUGH, GunTap, gun_tap
from geometry.thread.gun_tap_cures import ways_out
from geometry.thread.pitch_input import PITCH, pitch_checks
from geometry.thread.spiral_point import keeps_length


def _reach(tap: GunTap, ways: Sequence[Way]) -> Check:
    if GONE in tap.faults:
        return complaint("stop", "The cut takes the whole gash away.", ways)
    beyond = ratio(tap.beyond)
    if SHORT in tap.faults:
        says = "The gash does not go a thread past the chamfer, so the last teeth that cut do not drive their chips ahead."
        return complaint("watch", says, ways)
    if LONG in tap.faults:
        says = "The gash goes {beyond} threads past the chamfer: that weakens the front and takes threads that guide."
        return complaint("watch", says, ways, beyond=beyond)
    says = "The gash is {long} long and goes {beyond} threads past the chamfer."
    return passed(says, long=length(tap.after.length), beyond=beyond)


def _land(tap: GunTap, ways: Sequence[Way]) -> Iterator[Check]:
    if tap.land is None or GONE in tap.faults:
        return
    left = tap.land - tap.after.depth
    deep = {"deep": length(tap.after.depth), "needed": length(tap.after.depth / (1 - THIN), Rounding.UP)}
    wants = "A gash {deep} deep wants a land of {needed}, straight across."
    if THROUGH in tap.faults:
        yield complaint("stop", f"At the front the gash goes through the whole land. {wants}", ways, **deep)
    elif NARROW in tap.faults:
        says = f"Only {{left}} of the land is left at the front, less than half of it. {wants}"
        yield complaint("watch", says, ways, left=length(left), **deep)
    else:
        yield passed("{left} of the land is left at the front.", left=length(left))


def _told(given: Inputs, tap: GunTap) -> Iterator[Check]:
    stock, back = given.number_or("stock_per_sharpening", 0.0), given.number_or("cut_back", 0.0)
    if back > 0:
        yield note(
            "Cut {back} off the end before anything is ground, and grind the chamfer anew; the gash is counted from the new end.",
            back=length(back),
        )
    yield note(
        "Swivel by {slope} to the axis and grind until the gash lies {depth} behind the face at the front, in every flute "
        "alike; grind the gash only and leave the rest of the flute.",
        slope=angle(tap.after.angle),
        depth=length(max(tap.after.depth, 0.0)),
    )
    if stock > 0:
        says = "{stock} off the gash makes it {longer} longer; "
        keep = "cut that off the end first, and grind the chamfer anew, to keep it as long as it is."
        cut = "the cut of {back} is counted against that."
        told = says + (cut if back > 0 else keep)
        amounts = {"stock": length(stock), "longer": length(keeps_length(stock, tap.after.angle))}
        yield note(told, **amounts, **({"back": length(back)} if back > 0 else {}))


def _checks(given: Inputs, tap: GunTap) -> tuple[Check, ...]:
    """The checks; where two things are wrong, the worse one tells the ways, which put right both."""
    ways = ways_out(given) if tap.faults and is_tried() else ()
    of_land = THROUGH in tap.faults or tap.faults == {NARROW}
    reach, land = _reach(tap, () if of_land else ways), _land(tap, ways if of_land else ())
    return worst_first((*pitch_checks(given), reach, *land, *_told(given, tap)))


def _compute(given: Inputs) -> Result:
    tap = gun_tap(given)
    outputs = {
        "spiral_point_angle": tap.before.angle,
        "spiral_point_depth": tap.before.depth,
        "spiral_point_length": tap.before.length,
        "threads_beyond": max(tap.beyond, 0.0),
    }
    if given.has("cut_back") or given.has("stock_per_sharpening"):
        outputs |= {
            "spiral_point_depth_after": max(tap.after.depth, 0.0),
            "spiral_point_length_after": max(tap.after.length, 0.0),
        }
    if given.has("stock_per_sharpening"):
        outputs["cut_back_wanted"] = keeps_length(given.number("stock_per_sharpening"), tap.after.angle)
    if tap.land is not None:
        outputs["front_land"] = min(max(tap.land - tap.after.depth, 0.0), tap.land)
    return Result(outputs, checks=_checks(given, tap))


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
        Field("least_spiral_point_angle", optional=True, end_of=("spiral_point_angle", "low")),
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
        place=38,
        of_course=(),
        about="spiral_point_depth",
        by_wanted="spiral_point_angle",
        sets=(
            "cut_back",
            "spiral_point_angle",
            "spiral_point_depth",
            "spiral_point_depth_after",
            "stock_per_sharpening",
        ),
        better=(("spiral_point_depth", "spiral_point_depth_after"),),
        counted=(
            OFF_THE_END,
            ("stock_per_sharpening", "off the gash, in every flute alike"),
        ),
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
        "least_spiral_point_angle": math.radians(8),
    },
)
