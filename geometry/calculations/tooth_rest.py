"""Where the rest stands under a helical tooth, how wide it is, and what a rest beside the wheel does to the relief."""

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
    watch,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cures import Way, way
from geometry.plausible import relief_plausible
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.setting.height import FROM_THE_AXIS
from geometry.setting.tooth_rest import helix_lead, helix_of_lead, rest_height, rise, widest_level_rest

NEAR = math.radians(0.25)
"""So far a relief may be off before a rest is set again: what a shop can tell on a tool; common practice, no source."""

NARROWEST = 0.2
"""A rest narrower than this, in mm, is a knife and no rest; no source."""


@dataclass(frozen=True)
class _Rest:
    """A helical tooth on its rest.

    Attributes:
        diameter: of the tool, in mm.
        helix: in radians.
        relief: wanted under the wheel, in radians.
        width: of the rest, in mm; nothing where it is not known.
        touches: how far beside the line of the wheel the tooth touches, in mm, above zero where the edge stands lower.
    """

    diameter: float
    helix: float
    relief: float
    width: float | None
    touches: float

    def turn(self, along: float) -> float:
        """How far the tool turns while the tooth goes ``along`` (mm), in radians."""
        return rise(along, self.helix) / (self.diameter / 2)

    @property
    def height(self) -> float:
        """Below the axis where the tooth touches, in mm."""
        return rest_height(self.relief, self.turn(self.touches), self.diameter)


def _rest(given: Inputs) -> _Rest:
    diameter = given.number("diameter")
    helix = (
        given.number("helix_angle")
        if given.has("helix_angle")
        else helix_of_lead(given.number("helix_lead"), diameter)
    )
    width = given.number("rest_width") if given.has("rest_width") else None
    # On a level top the tooth lies on the corner over which it stands lowest.
    aside = width / 2 if width is not None and given.choice("rest_top") == "level" and helix > 0 else 0.0
    return _Rest(diameter, helix, given.number("relief_angle"), width, given.number("rest_offset") + aside)


def _set(rest: _Rest) -> Check:
    """The setting, and what it allows for."""
    turn, height = rest.turn(rest.touches), rest.height
    says = "Set the rest {height} " + ("below" if height >= 0 else "above") + " the axis of the tool"
    if turn == 0:
        return note(
            says
            + ", the tooth touching it opposite the wheel. Fix it beside the wheel, so that it stays there while the tool "
            "slides.",
            height=length(abs(height)),
        )
    return note(
        says
        + " where the tooth touches it, {touches} on the side where the edge stands {side}: the edge there is turned "
        "{turn} against the one under the wheel.",
        height=length(abs(height)),
        touches=length(abs(rest.touches)),
        side="lower" if rest.touches > 0 else "higher",
        turn=angle(abs(turn)),
    )


def _beside(rest: _Rest) -> Check:
    """Whether a rest that is set as if it stood opposite the wheel would do."""
    turn = rest.turn(rest.touches)
    if abs(turn) <= NEAR:
        return passed(
            "The tooth touches its rest so near the line of the wheel that the relief stays within {near}.",
            near=angle(NEAR),
        )
    left = rest.relief - turn
    if left > 0:
        return note(
            "Set as if it touched opposite the wheel, the rest would leave {left} of relief where {wanted} is wanted.",
            left=angle(left),
            wanted=angle(rest.relief),
        )
    return note(
        "Set as if it touched opposite the wheel, the rest would leave no relief at all: the height here allows for that."
    )


def _no_relief() -> Check:
    zero = way("choose a relief above {zero}", "relief_angle", "zero", angle(0.0))
    return complaint("stop", "Without relief the whole land rubs.", [zero])


def _runs_off(given: Inputs, rest: _Rest, wheel: float) -> Check:
    """Whether the tooth lies on its rest for as long as the wheel touches it."""
    assert rest.width is not None, "only a rest of known width is asked for"
    aside = abs(given.number("rest_offset"))
    wanted, narrow = wheel + 2 * aside, rest.width - 2 * aside
    if rest.width >= wanted * (1 - 1e-9):
        return passed(
            "The rest, {rest} wide, reaches beyond the wheel on both sides: each tooth lies on it until the wheel has left it.",
            rest=length(rest.width),
        )
    ways = [way("use a rest of {wanted} or more", "rest_width", "wanted", length(wanted, Rounding.UP))]
    if narrow > quantity("wheel_width").low:
        ways.append(
            way("dress the wheel to touch over {narrow} or less", "wheel_width", "narrow",
                length(narrow, Rounding.DOWN))
        )  # fmt: skip
    if aside > 0:
        ways.append(_opposite())
    return complaint(
        "watch",
        "At the end of its stroke the tooth leaves the rest before it leaves the wheel: it turns and is cut too deep there.",
        ways,
    )


def _opposite() -> Way:
    """The rest brought opposite the wheel."""
    return way(
        "stand the rest {zero} beside the wheel, opposite its middle", "rest_offset", "zero", length(0.0)
    )


def _level(given: Inputs, rest: _Rest) -> Iterator[Check]:
    """What a level top does as the end of a tooth rides over it."""
    if rest.width is None or given.choice("rest_top") != "level":
        return
    turn = rest.turn(rest.width)
    if turn <= NEAR * (1 + 1e-9):
        return
    widest = widest_level_rest(NEAR, rest.helix, rest.diameter)
    says = (
        "On a level top the tooth lies on one corner, and its end rides across the rest and turns the tool {turn}. "
        "Slope the top along the tooth or round it"
    )
    cure: tuple[tuple[str, str | float], ...] = (("rest_top", "sloped"), ("rest_top", "rounded"))
    if widest is None or widest < NARROWEST:
        yield watch(says + ".", turn=angle(turn), cure=cure)
        return
    yield watch(
        says + ", or use a rest of {widest} or less.",
        turn=angle(turn),
        widest=length(widest, Rounding.DOWN),
        cure=(*cure, ("rest_width", widest)),
    )


def _slope(given: Inputs, rest: _Rest) -> Iterator[Check]:
    if rest.width is not None and rest.helix > 0 and given.choice("rest_top") == "sloped":
        yield note(
            "Slope the top of the rest {helix}, which is {rise} over its width of {width}, so that the tooth lies on all of it.",
            helix=angle(rest.helix),
            rise=length(rise(rest.width, rest.helix)),
            width=length(rest.width),
        )


def _checks(given: Inputs) -> tuple[Check, ...]:
    rest = _rest(given)
    rest_height(
        rest.relief, rest.turn(rest.touches), rest.diameter
    )  # refuses a rest too far beside the wheel
    found = [*relief_plausible(rest.relief, "land", key="relief_angle"), _set(rest), *_slope(given, rest)]
    found += [_beside(rest)] if rest.relief > 0 else [_no_relief()]
    if rest.width is not None and given.has("wheel_width"):
        found.append(_runs_off(given, rest, given.number("wheel_width")))
    return worst_first((*found, *_level(given, rest)))


def _compute(given: Inputs) -> Result:
    rest = _rest(given)
    outputs = {"tooth_rest_height": rest.height, "rest_turn": rest.turn(rest.touches)}
    lead = helix_lead(rest.helix, rest.diameter)
    if given.has("helix_lead"):
        outputs["helix_angle"] = rest.helix
    elif lead is not None:
        outputs["helix_lead"] = lead
    if rest.width is not None:
        outputs["rest_rise"] = rise(rest.width, rest.helix)
    if given.has("tooth_length"):
        outputs["tooth_rise"] = rise(given.number("tooth_length"), rest.helix)
        outputs["tooth_turn"] = rest.turn(given.number("tooth_length"))
    return settled(Result(outputs, checks=_checks(given)), given, lambda other, _: _checks(other))


CALCULATION = Calculation(
    name="tooth-rest",
    title="Tooth rest under a helical tooth",
    question="How high does the rest stand under a helical tooth, how wide may it be, and how far does the edge rise along it?",
    wants="The helix angle is that of the edge on the diameter of the tool, from the axis, or give its lead; the relief is that "
    "of the land square to the axis, ground flat by a cup or dish wheel with the edge below the axis and the land above it.",
    neglects="It takes the rest as fixed beside the wheel and the tool as led along it by hand, the tooth always down on it; it "
    "says nothing of the bend of a thin blade. Under an inclined wheel the rest stands level with the axis instead.",
    kinds=("end-mill", "reamer", "counterbore", "twist-drill", "step-drill", "subland-drill"),
    surfaces=("land",),
    beside=True,
    inputs=(
        Field("diameter"),
        Field("helix_angle", one_of="helix"),
        Field("helix_lead", one_of="helix"),
        Field("relief_angle"),
        Field("rest_width", optional=True),
        Field("rest_top", default="sloped"),
        Field("rest_offset", default=0.0),
        Field("wheel_width", optional=True),
        Field("tooth_length", optional=True),
    ),
    outputs=(
        "tooth_rest_height",
        "rest_turn",
        "rest_rise",
        "helix_lead",
        "helix_angle",
        "tooth_rise",
        "tooth_turn",
    ),
    cautions=(*AT_THE_WHEEL, "pinch", "side-grinding"),
    compute=_compute,
    methods=("tooth-rest-height",),
    role=Role(
        place=58,
        of_course=(),
        about="helix_angle",
        sets=("tooth_rest_height",),
        counted=FROM_THE_AXIS,
        tells=("note",),
    ),
    sample={
        "diameter": 25.0,
        "helix_angle": math.radians(30),
        "relief_angle": math.radians(6),
        "rest_width": 6.0,
        "rest_offset": 0.5,
        "wheel_width": 4.0,
        "tooth_length": 60.0,
    },
)
