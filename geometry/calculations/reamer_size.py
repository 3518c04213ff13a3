"""The limits of a reamer for the tolerance of its hole, and what a measured one has left to grind or to wear."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    note,
    passed,
    stop,
    watch,
    worst_first,
)
from geometry.fit.hole import CLASSES, MICRON, Limits, hole_limits
from geometry.fit.reamer import READ, reamer_limits
from geometry.preconditions import refuse
from geometry.quantities.limits import LIMITS, TAPER
from geometry.role import Role
from geometry.sentences import Rounding, length

ANOTHER_TOOL = 0.1
"""From which share of the size on a measured diameter is that of another tool. Common practice, no source."""


def _hole(given: Inputs) -> Limits:
    if given.choice("hole_tolerance") == TAPER:
        raise refuse(
            "hole_tolerance",
            "A taper reamer has no class of hole and no limits by one: prove it in its taper gauge or in a trial hole. Where "
            "the hole is parallel all the same, choose its class.",
        )
    if given.choice("hole_tolerance") == LIMITS:
        return Limits(given.number("hole_lower_limit"), given.number("hole_upper_limit"))
    return hole_limits(given.number("nominal_diameter"), given.choice("hole_tolerance"))


def _aim(reamer: Limits) -> float:
    """What the circle of a reamer over its limits is ground to, in mm: the middle of them, taken up to a whole micrometre."""
    # A middle that is whole but for its last bits stays where it is.
    return math.ceil(reamer.middle / MICRON - 1e-6) * MICRON


def _measured(measured: float, hole: Limits, reamer: Limits, of_class: str) -> Check:
    """What a diameter that was measured means for this hole, whose class is named: nobody may have given it."""
    if abs(measured - hole.middle) > ANOTHER_TOOL * hole.middle:
        return stop(
            "The reamer that was measured is not one for this hole. Measure it again, and see the size."
        )
    if measured > hole.high + READ:
        return stop(
            "The reamer measures {measured}, more than the largest hole{of_class}, {high}. Grind its circle to {middle}, the "
            "middle of its limits, then its relief anew.",
            measured=length(measured, fine=True),
            of_class=of_class,
            high=length(hole.high, fine=True),
            middle=length(_aim(reamer), fine=True),
            cure=(("measured_diameter", _aim(reamer)),),
        )
    if measured > reamer.high + READ:
        return watch(
            "The reamer measures {measured}, over its upper limit: what it cuts over its own size may spoil the hole. "
            "Grind its circle to {middle}, the middle of its limits, then its relief anew.",
            measured=length(measured, fine=True),
            middle=length(_aim(reamer), fine=True),
            cure=(("measured_diameter", _aim(reamer)),),
        )
    if measured < hole.low - READ:
        return stop(
            "The reamer measures {measured}, less than the smallest hole{of_class}, {low}. Set it aside for a smaller one.",
            measured=length(measured, fine=True),
            of_class=of_class,
            low=length(hole.low, fine=True),
        )
    if measured < reamer.low - READ:
        return passed(
            "The reamer is worn under the limits of a new one, and may still lose {left} of its diameter.",
            left=length(max(measured - hole.low, 0.0), fine=True),
        )
    return passed(
        "The reamer lies within its limits; {left} of its diameter are left for wear.",
        left=length(measured - hole.low, fine=True),
    )


NAME_IT = "Name it in the line 'Tolerance of the hole': until then nothing judges the size."
"""What to do where the class of the hole is only presumed."""


def _by_presumed(measured: float, hole: Limits, reamer: Limits, of_class: str) -> Check:
    """What a measured diameter would mean for a class that nobody named: it judges nothing, so that it stops nothing either."""
    if abs(measured - hole.middle) > ANOTHER_TOOL * hole.middle:
        return watch(
            "The reamer measures {measured}, which is not near the nominal size. Measure it again, and see the size.",
            measured=length(measured, fine=True),
        )
    if hole.low - READ <= measured <= reamer.high + READ:
        return note(
            f"Nobody named the hole. For{{of_class}}, which is presumed, the reamer would serve with {{measured}}. {NAME_IT}",
            of_class=of_class,
            measured=length(measured, fine=True),
        )
    return note(
        f"Nobody named the hole. For{{of_class}}, which is presumed, a reamer serves from {{low}} to {{high}}, and this one "
        f"measures {{measured}}. {NAME_IT}",
        of_class=of_class,
        low=length(hole.low, fine=True),
        high=length(reamer.high, Rounding.DOWN, fine=True),
        measured=length(measured, fine=True),
    )


def _checks(given: Inputs, hole: Limits, reamer: Limits) -> Iterator[Check]:
    of_class = "" if given.choice("hole_tolerance") == LIMITS else f" {given.choice('hole_tolerance')}"
    is_presumed = given.is_presumed("hole_tolerance")
    if given.has("measured_diameter"):
        judged = _by_presumed if is_presumed else _measured
        yield judged(given.number("measured_diameter"), hole, reamer, of_class)
    yield note(
        "The hole{of_class} may be {low} to {high}. The reamer keeps 15 percent of that tolerance below the largest hole, and is made "
        "within the next 35 percent; what lies below is for wear.",
        of_class=f"{of_class} (presumed)" if is_presumed else of_class,
        low=length(hole.low, fine=True),
        high=length(hole.high, fine=True),
    )
    if given.has("reaming_stock"):
        yield note(
            "With that stock the hole is made {before} wide before reaming.",
            before=length(max(reamer.middle - given.number("reaming_stock"), 0.0), fine=True),
        )


def _compute(given: Inputs) -> Result:
    hole = _hole(given)
    reamer = reamer_limits(hole)
    outputs = {"reamer_lower_limit": reamer.low, "reamer_upper_limit": reamer.high}
    if not given.has("hole_lower_limit"):
        outputs |= {"hole_lower_limit": hole.low, "hole_upper_limit": hole.high}
    if given.has("measured_diameter") and not given.is_presumed("hole_tolerance"):
        measured = given.number("measured_diameter")
        is_over = measured > reamer.high + READ
        outputs |= {
            **({"circle_ground_to": _aim(reamer)} if is_over else {}),
            "left_to_grind": max(measured - reamer.high, 0.0),
            "left_to_wear": max(measured - hole.low, 0.0),
        }
    return Result(outputs=outputs, checks=worst_first(_checks(given, hole, reamer)))


CALCULATION = Calculation(
    name="reamer-size",
    title="Reamer size for a hole tolerance",
    question="How large may the reamer be for this tolerance of the hole, and what is left to grind or to wear?",
    wants="The nominal size is that of the hole on the drawing; the measured diameter, that of the "
    "reamer right behind its lead, may be left out.",
    neglects="It follows a rule of makers after ISO 522. How far a reamer cuts over its own size hangs on its lead, the holder, "
    "the coolant and the work: ream a trial hole.",
    kinds=("reamer",),
    belongs_on=("bevel",),
    beside=True,
    inputs=(
        Field("hole_tolerance", default="H7"),
        Field("nominal_diameter", when=("hole_tolerance", *CLASSES), fill_from=("diameter",)),
        Field("hole_lower_limit", when=("hole_tolerance", LIMITS)),
        Field("hole_upper_limit", when=("hole_tolerance", LIMITS)),
        Field("measured_diameter", optional=True, measured=True),
        Field("reaming_stock", optional=True),
    ),
    outputs=(
        "reamer_lower_limit",
        "reamer_upper_limit",
        "circle_ground_to",
        "left_to_grind",
        "left_to_wear",
        "hole_lower_limit",
        "hole_upper_limit",
    ),
    cautions=(*AT_THE_WHEEL, "light-cut-on-a-land", "sharp-edges"),
    compute=_compute,
    role=Role(
        place=24,
        sets=("circle_ground_to",),
        only=("hole_tolerance", *CLASSES, LIMITS),
        tells=("pass", "note"),
    ),
    sample={
        "hole_tolerance": "H7",
        "nominal_diameter": 12.0,
        "measured_diameter": 12.02,
        "reaming_stock": 0.2,
    },
)
