"""Values that the trade never goes to, so that a slip of the unit or of the decimal point is likely.

The ranges of the vocabulary refuse what cannot be; these only doubt what hardly is, whichever calculation it stands in.
Every bound is common practice without a source, and set well beyond what a tool room sees.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from geometry.calculation import Check, Inputs
from geometry.quantities import quantity
from geometry.sentences import Amount, Rounding, Sentence, angle, count, length


@dataclass(frozen=True)
class Slip(Check):
    """A watch on a value that looks like a slip, beside what the calculation itself has to complain of."""


class Reach(NamedTuple):
    """How far a quantity goes.

    Attributes:
        most: in mm or as a count; also below zero.
        of_what: what has about so much at the most.
    """

    most: float
    of_what: str


REACHES: Mapping[str, Reach] = {
    "diameter": Reach(170.0, "the largest taps and reamers, those for pipes of 6 in,"),
    "chamfer_threads": Reach(24.0, "the longest taps, those for nuts,"),
    "radial_throw": Reach(25.0, "the cams of tool grinders"),
    "axial_throw": Reach(25.0, "the cams of tool grinders"),
    "reaming_stock": Reach(1.5, "the holes that are reamed"),
    "corner_wear": Reach(1.0, "the corners that are still sharpened"),
    "tooth_length": Reach(300.0, "the teeth that pass a wheel"),
    "taper_length": Reach(500.0, "the bodies that are ground to a back taper"),
    "length_ground_off": Reach(200.0, "the drills of a tool room"),
    "web_distance": Reach(400.0, "the drills of a tool room"),
    "rest_width": Reach(30.0, "the blades of tooth rests"),
    "index_ratio": Reach(200.0, "the dividing heads there are"),
    "plate_holes": Reach(200.0, "the plates there are"),
    "deepest_gap": Reach(3.0, "the gaps behind a facet"),
}
"""One rule for each quantity, whether it is given or found."""


SLENDEREST_CONE = math.radians(10)
"""Countersinks, and shoulders of step drills, have much more than that; a feed or a length typed in their line has not."""

CAMS = frozenset({"radial_throw", "axial_throw"})
"""Throws; one that is found is asked for, and has a rule of its own."""


class Share(NamedTuple):
    """How much of the diameter a quantity is.

    Attributes:
        least: as a share of it.
        most: as a share of it.
    """

    least: float
    most: float


SHARES: Mapping[str, Share] = {
    "web_thickness": Share(0.04, 0.6),
    "wanted_web": Share(0.04, 0.6),
    "margin_width": Share(0.0, 0.3),
    "margin_now": Share(0.0, 0.3),
    "least_diameter": Share(0.5, math.inf),
}
"""One rule for each quantity that goes with the diameter."""

MOST_OF_A_CAM = {"throw_per_tooth": 15.0, "throw_per_turn": 40.0, "radial_throw": 25.0}
"""The throw in mm that a cam may be asked for: from tooth to tooth where that is known, else as it is counted."""

FINEST, FROM = 0.2, 4.0
"""The finest pitch in mm that tools of so large a diameter are made with."""

MANY, CLOSEST = 12.0, 1.8
"""From so many flutes on they stand no closer than this round the tool, in mm."""

_AGAIN = "See the unit and the decimal point, and measure again."


def slips(given: Inputs, outputs: Mapping[str, float]) -> Iterator[Slip]:
    """The doubts about what was given and found.

    Args:
        given: all inputs.
        outputs: what the calculation found.

    Example:
        >>> [str(one.sentence)[:47] for one in slips(Inputs({"diameter": 10.0, "chamfer_threads": 40.0}), {})]
        ['Threads in the chamfer: 40 looks like a slip; t']
    """
    for key in REACHES:
        if given.has(key):
            yield from _of_one(key, max(map(abs, given.numbers(key))))
        elif key in outputs and key not in CAMS:
            yield from _of_one(key, abs(outputs[key]))
    if given.has("included_angle"):
        yield from _of_cone(min(given.numbers("included_angle")))
    yield from _throw_asked_for(outputs)
    if given.has("diameter"):
        yield from _beside(min(given.numbers("diameter")), given)


def _slip(template: str, **parts: Amount) -> Slip:
    return Slip("watch", Sentence(template, parts))


def _of_one(key: str, found: float) -> Iterator[Slip]:
    """Beyond what the trade reaches."""
    reach = REACHES[key]
    if found > reach.most:
        yield _slip(
            f"{quantity(key).title}: {{found}} looks like a slip; {reach.of_what} have {{most}} at the most. "
            + _AGAIN,
            found=_amount(key, found),
            most=Amount(reach.most, quantity(key).kind, Rounding.DOWN),
        )


def _of_cone(found: float) -> Iterator[Slip]:
    """A cone that hardly widens; one of zero is a cylinder, and is called so."""
    if 0 < found < SLENDEREST_CONE * (1 - 1e-9):
        yield _slip(
            "Included angle: {found} looks like a slip; countersinks and the shoulders of step drills have {least} or more. Was "
            "it a feed or a length? See which line it belongs in, and measure again.",
            found=angle(found),
            least=angle(SLENDEREST_CONE, Rounding.UP),
        )


def _amount(key: str, value: float) -> Amount:
    return Amount(value, quantity(key).kind)


def _throw_asked_for(outputs: Mapping[str, float]) -> Iterator[Slip]:
    """A cam that nobody has is asked for."""
    key = next((one for one in MOST_OF_A_CAM if one in outputs), "")
    if key and outputs[key] > MOST_OF_A_CAM[key]:
        yield _slip(
            "A cam with a throw of {throw} is asked for, and hardly any has {most}: the diameter or the relief looks like a "
            "slip. " + _AGAIN,
            throw=length(outputs[key]),
            most=length(MOST_OF_A_CAM[key], Rounding.DOWN),
        )


def _beside(diameter: float, given: Inputs) -> Iterator[Slip]:
    """What does not go with the diameter."""
    for key, share in SHARES.items():
        if not given.has(key) or share.least * diameter <= given.number(key) <= share.most * diameter:
            continue
        yield _slip(
            f"{quantity(key).title}: {{found}} does not go with a diameter of {{diameter}}. " + _AGAIN,
            found=length(given.number(key)),
            diameter=length(diameter),
        )
    if given.has("pitch") and given.number("pitch") < FINEST and diameter >= FROM:
        yield _slip(
            "A pitch of {pitch} on a diameter of {diameter} looks like a slip. " + _AGAIN,
            pitch=length(given.number("pitch")),
            diameter=length(diameter),
        )
    if given.has("flutes") and given.number("flutes") > MANY:
        apart = math.pi * diameter / given.number("flutes")
        if apart < CLOSEST:
            yield _slip(
                "{flutes} flutes round {diameter} stand {apart} apart, closer than any are cut. Count them again, and "
                "measure again.",
                flutes=count(given.number("flutes")),
                diameter=length(diameter),
                apart=length(apart),
            )
