"""How fast the rim of a wheel runs, and whether its rating allows it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.calculation import Calculation, Check, Field, Inputs, Result, Together, passed, stop, watch
from geometry.kinds import EVERY_KIND
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Amount, Rounding, length, rotation, speed
from geometry.wheel.speed import rotational_speed, surface_speed

ONE_TURN = 2 * math.pi / 60
"""One turn in a minute, in rad/s; a spindle that turns slower stands, and in whole turns would be told as what it is not."""


@dataclass(frozen=True)
class _Rating:
    """The rating that binds: the lower one where both are marked.

    A surface speed is turned into spindle turns at the larger of the diameters now and when new: wear lets the rim run
    slower, and raises no turns that are marked on the wheel.

    Attributes:
        highest: the fastest that the spindle may turn, in rad/s.
        marked_in_turns: whether the wheel is marked in turns, and not with a surface speed.
        when_new: the diameter of the new wheel at which a rated surface speed is reached, in mm, where the wheel is worn.
        turns_known: whether it is known which turns are marked on the wheel, or were so when it was new.
    """

    highest: float
    marked_in_turns: bool
    when_new: float | None = None
    turns_known: bool = True


def _rating(given: Inputs, diameter: float) -> _Rating | None:
    marked = []
    in_turns = given.has("rated_rotational_speed")
    if given.has("rated_speed"):
        # A diameter when new below that of now is no diameter when new, and tells nothing of the turns marked.
        new = given.number("wheel_new_diameter") if given.has("wheel_new_diameter") else 0.0
        known = new >= diameter * (1 - 1e-9)
        worn = new > diameter * (1 + 1e-9)
        turns = rotational_speed(new if worn else diameter, given.number("rated_speed"))
        marked.append(_Rating(turns, False, new if worn else None, known or in_turns))
    if in_turns:
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
    rim = surface_speed(diameter, turns)
    allowed = surface_speed(rating.when_new or diameter, rating.highest)
    is_over = turns > rating.highest
    # A worn wheel may be over the turns of the new one while its rim is not over the rated speed.
    if rating.marked_in_turns or (is_over and rating.when_new is not None):
        now, marked, rounded = rotation(turns, quantity("rotational_speed").rounding), highest, ""
        over = rotation(max(turns - rating.highest, 0.0), Rounding.UP)
    else:
        now, marked = speed(rim, quantity("surface_speed").rounding), speed(allowed, Rounding.DOWN)
        over = speed(max(rim - allowed, 0.0), Rounding.UP)
    parts: dict[str, Amount | str] = {"now": now, "rounded": rounded, "marked": marked, "highest": highest}
    if rating.when_new is not None:
        parts |= {"new": length(rating.when_new), "rated": speed(allowed, Rounding.DOWN)}
    if is_over:
        return stop(
            _OVER + _when_over(rating),
            cure=Together((("surface_speed", None), ("rotational_speed", rating.highest))),
            over=over,
            **parts,
        )
    return passed(_WITHIN + _when_within(rating), **parts)


_OVER = "The wheel would run at {now}{rounded}, {over} over its rating of {marked}: it can burst. "

_WITHIN = (
    "The wheel runs at {now}{rounded}, within its rating of {marked}. Do not turn it faster than {highest}"
)


def _when_over(rating: _Rating) -> str:
    """What to do, and why where the wheel is worn."""
    if rating.when_new is not None:
        return (
            "That is {rated} at the {new} that it had when new, and a worn wheel is turned no faster. "
            "Turn the spindle at {highest} or less, or mount a wheel rated for more."
        )
    if not rating.turns_known:
        return (
            "Turn the spindle at {highest} or less, and never faster than the turns marked on the wheel, "
            "or mount a wheel rated for more."
        )
    return "Turn the spindle at {highest} or less, or mount a wheel rated for more."


def _when_within(rating: _Rating) -> str:
    """How the limit was found where the wheel is worn, and what stands above it where it is not known how far."""
    if rating.when_new is not None:
        return ": {rated} at the {new} that it had when new, and a worn wheel is turned no faster."
    return "." if rating.turns_known else ", nor faster than the turns marked on the wheel."


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
    wants="The diameter is the wheel's as it is now; the rating is what is marked on the wheel, as a surface speed or in turns. "
    "A worn wheel is turned no faster than when it was new: give the diameter that it had then.",
    neglects="It trusts the marking and the tachometer. A rating holds only for a sound wheel, rightly mounted and guarded; "
    "a worn wheel may turn faster only up to its original surface speed, and never over the turns marked on it.",
    kinds=EVERY_KIND,
    inputs=(
        Field("wheel_diameter"),
        Field("rotational_speed", one_of="speed"),
        Field("surface_speed", one_of="speed"),
        Field("rated_speed", optional=True),
        Field("rated_rotational_speed", optional=True),
        Field("wheel_new_diameter", optional=True),
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
