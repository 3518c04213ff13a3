"""How fast the rim of a wheel runs, and whether its rating allows it."""

from __future__ import annotations

from geometry.sentences import Rounding, rotation, speed
from geometry.wheel.speed import rotational_speed, surface_speed
from geometry.worksheet import Check, Field, Inputs, Result, Worksheet, passed, stop, watch


def _check(turns: float, rim: float, highest: float | None, rated: float | None) -> Check:
    if highest is None or rated is None:
        return watch(
            "No rating was given, so this speed is not checked. Read the greatest speed off the wheel itself before "
            "you mount it; a wheel without a readable rating is not used."
        )
    if turns > highest:
        return stop(
            "The wheel would run at {rim}, over its rating of {rated}: it can burst. Turn the spindle at {highest} or "
            "less, or mount a wheel rated for more.",
            rim=speed(rim, Rounding.UP),
            rated=speed(rated, Rounding.DOWN),
            highest=rotation(highest, Rounding.DOWN),
        )
    return passed(
        "The wheel runs at {rim}, within its rating of {rated}. Do not turn it faster than {highest}.",
        rim=speed(rim, Rounding.UP),
        rated=speed(rated, Rounding.DOWN),
        highest=rotation(highest, Rounding.DOWN),
    )


def _rating(given: Inputs, diameter: float) -> tuple[float, float] | None:
    """The rating as (rotation, surface speed); the lower one where both are marked."""
    turns = []
    if given.has("rated_speed"):
        turns.append(rotational_speed(diameter, given.number("rated_speed")))
    if given.has("rated_rotational_speed"):
        turns.append(given.number("rated_rotational_speed"))
    if not turns:
        return None
    return min(turns), surface_speed(diameter, min(turns))


def _compute(given: Inputs) -> Result:
    diameter = given.number("wheel_diameter")
    if given.has("rotational_speed"):
        turns = given.number("rotational_speed")
        rim = surface_speed(diameter, turns)
    else:
        rim = given.number("surface_speed")
        turns = rotational_speed(diameter, rim)
    outputs = {"rotational_speed": turns, "surface_speed": rim}
    rating = _rating(given, diameter)
    highest, rated = rating if rating else (None, None)
    if highest is not None:
        outputs["highest_rotational_speed"] = highest
    return Result(outputs=outputs, checks=(_check(turns, rim, highest, rated),))


WORKSHEET = Worksheet(
    name="wheel-speed",
    title="Wheel speed against its rating",
    question="How fast does the rim run, and may this wheel run so fast?",
    wants="The diameter is the wheel's as it is now; the rating is what is marked on the wheel, as a surface speed or in turns.",
    neglects="It trusts the marking and the tachometer. A rating holds only for a sound wheel, rightly mounted and guarded; "
    "a worn wheel may turn faster only up to its original surface speed, and never over the turns marked on it.",
    families=("tap", "countersink", "step-drill", "twist-drill", "reamer", "counterbore"),
    inputs=(
        Field("wheel_diameter"),
        Field("rotational_speed", one_of="speed"),
        Field("surface_speed", one_of="speed"),
        Field("rated_speed", optional=True),
        Field("rated_rotational_speed", optional=True),
    ),
    outputs=("rotational_speed", "surface_speed", "highest_rotational_speed"),
    cautions=("wheel-rating", "ring-test", "stand-aside", "guard-and-rest", "eyes", "dust"),
    compute=_compute,
)
