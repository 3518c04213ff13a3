"""How fast the rim of a wheel runs, and whether its rating allows it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.calculation import Calculation, Check, Field, Inputs, Result, Together, passed, stop, watch
from geometry.kinds import EVERY_KIND
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Rounding, rotation, speed
from geometry.wheel.speed import rotational_speed, surface_speed

ONE_TURN = 2 * math.pi / 60
"""One turn in a minute, in rad/s; a spindle that turns slower stands, and in whole turns would be told as what it is not."""


@dataclass(frozen=True)
class _Rating:
    """The rating that binds: the lower one where both are marked.

    Attributes:
        highest: the fastest that the spindle may turn, in rad/s.
        marked_in_turns: whether the wheel is marked in turns, and not with a surface speed.
    """

    highest: float
    marked_in_turns: bool


def _rating(given: Inputs, diameter: float) -> _Rating | None:
    marked = []
    if given.has("rated_speed"):
        marked.append(_Rating(rotational_speed(diameter, given.number("rated_speed")), marked_in_turns=False))
    if given.has("rated_rotational_speed"):
        marked.append(_Rating(given.number("rated_rotational_speed"), marked_in_turns=True))
    return min(marked, key=lambda one: one.highest, default=None)


def _check(turns: float, diameter: float, rating: _Rating | None, rounded: str) -> Check:
    """What is told of the speed; a surface speed that was worked out says that it is rounded, as somebody may reckon it again."""
    if rating is None:
        return watch(
            "No rating was given, so this speed is not checked. Read the greatest speed off the wheel itself before "
            "you mount it; a wheel without a readable rating is not used."
        )
    highest = rotation(rating.highest, Rounding.DOWN)
    if rating.marked_in_turns:
        now, marked, rounded = rotation(turns, quantity("rotational_speed").rounding), highest, ""
        over = rotation(max(turns - rating.highest, 0.0), Rounding.UP)
    else:
        rim, allowed = surface_speed(diameter, turns), surface_speed(diameter, rating.highest)
        now = speed(rim, quantity("surface_speed").rounding)
        marked = speed(allowed, Rounding.DOWN)
        over = speed(max(rim - allowed, 0.0), Rounding.UP)
    if turns > rating.highest:
        return stop(
            "The wheel would run at {now}{rounded}, {over} over its rating of {marked}: it can burst. "
            "Turn the spindle at {highest} or less, or mount a wheel rated for more.",
            cure=Together((("surface_speed", None), ("rotational_speed", rating.highest))),
            now=now,
            rounded=rounded,
            over=over,
            marked=marked,
            highest=highest,
        )
    return passed(
        "The wheel runs at {now}{rounded}, within its rating of {marked}. Do not turn it faster than {highest}.",
        now=now,
        rounded=rounded,
        marked=marked,
        highest=highest,
    )


def _compute(given: Inputs) -> Result:
    diameter = given.number("wheel_diameter")
    if given.has("rotational_speed"):
        turns = given.number("rotational_speed")
        rim = surface_speed(diameter, turns)
    else:
        rim = given.number("surface_speed")
        turns = rotational_speed(diameter, rim)
    if turns < ONE_TURN * (1 - 1e-9):
        raise refuse(
            "rotational_speed" if given.has("rotational_speed") else "surface_speed",
            "A wheel that stands grinds nothing, and one that turns less than once in a minute as good as stands. "
            "Give the speed at which it shall run.",
        )
    outputs = {"rotational_speed": turns, "surface_speed": rim}
    rating = _rating(given, diameter)
    if rating is not None and rating.highest < ONE_TURN * (1 - 1e-9):
        raise refuse(
            "rated_rotational_speed" if rating.marked_in_turns else "rated_speed",
            "No wheel is rated for nothing, or for less than one turn in a minute. Read the greatest speed off the wheel itself, or leave this open.",
        )
    if rating is not None:
        outputs["highest_rotational_speed"] = rating.highest
    rounded = ", rounded up" if given.has("rotational_speed") else ""
    return Result(outputs=outputs, checks=(_check(turns, diameter, rating, rounded),))


CALCULATION = Calculation(
    name="wheel-speed",
    title="Wheel speed against its rating",
    question="How fast does the rim run, and may this wheel run so fast?",
    wants="The diameter is the wheel's as it is now; the rating is what is marked on the wheel, as a surface speed or in turns.",
    neglects="It trusts the marking and the tachometer. A rating holds only for a sound wheel, rightly mounted and guarded; "
    "a worn wheel may turn faster only up to its original surface speed, and never over the turns marked on it.",
    kinds=EVERY_KIND,
    inputs=(
        Field("wheel_diameter"),
        Field("rotational_speed", one_of="speed"),
        Field("surface_speed", one_of="speed"),
        Field("rated_speed", optional=True),
        Field("rated_rotational_speed", optional=True),
    ),
    outputs=("rotational_speed", "surface_speed", "highest_rotational_speed"),
    cautions=(
        "wheel-rating",
        "ring-test",
        "mounting",
        "wheel-change",
        "wheel-balance",
        "coolant-off",
        "stand-aside",
        "guard-and-rest",
        "dressing",
        "eyes",
        "hearing",
        "dust",
    ),
    cautions_before=("wheel-storage",),
    compute=_compute,
    role=Role(place=10, every_job=True, rated=True, sets=("rotational_speed",), tells=("pass", "note")),
    sample={"wheel_diameter": 150.0, "rotational_speed": 100 * math.pi, "rated_speed": 35_000.0},
)
