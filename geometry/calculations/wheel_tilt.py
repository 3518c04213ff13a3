"""How far a wheel is inclined to relieve a helical land, and what the indicator shows on the way."""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Together,
    note,
    passed,
    stations,
    stop,
    watch,
)
from geometry.figure import Figure, curve
from geometry.preconditions import NotGiven, refuse
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.setting.round_wheel import round_wheel_relief, round_wheel_tilt
from geometry.setting.tilt import (
    contact_length,
    fall_along_wheel,
    land_reached,
    relief_of_tilt,
    require_helix,
    wheel_tilt,
)
from geometry.tooth import eccentric
from geometry.tooth.land import land_angle, land_width
from geometry.tooth.margin import margin_angle

NEAR = math.radians(0.25)
"""So far a relief may be off before a wheel is set again: half a division of a common tilt scale, no source."""

ROUNDING = 1e-9
"""The share of a width that is forgiven, because it comes from the arithmetic and not from the wheel."""

WIDEST_STEP = 0.0254
"""As coarsely as a width is shown, in mm, so that what is advised is one that can be given."""


@dataclass(frozen=True)
class _Land:
    """A helical land under an inclined wheel.

    Attributes:
        diameter: of the tool over its edges, in mm.
        turned: from edge to heel, in radians.
        measured_as: how its width was measured, ``arc`` or ``chord``.
        helix: in radians.
        relief: where it begins, in radians.
        margin: how far the land runs on the circle behind the edge before the relief begins, in radians.
    """

    diameter: float
    turned: float
    measured_as: str
    helix: float
    relief: float
    margin: float = 0.0

    def along_wheel(self, turned: float) -> float:
        """How far along the wheel the contact has come after ``turned`` (rad), in mm."""
        return contact_length(land_width(turned, self.diameter, "arc"), self.helix)

    def drop(self, turned: float) -> float:
        return eccentric.drop(max(turned - self.margin, 0.0), self.relief, self.diameter)


def _land(given: Inputs, helix: float, relief: float) -> _Land | None:
    if not given.has("land_width"):
        return None
    if not given.has("diameter"):
        raise NotGiven("Give the diameter as well, so that the land can be laid round it.", "diameter")
    diameter, measured_as = given.number("diameter"), given.choice("land_measured_as")
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    margin = 0.0
    if turned and given.number_or("margin_width", 0.0) > 0:
        margin = margin_angle(given.number("margin_width"), diameter, turned)
    return _Land(diameter, turned, measured_as, helix, relief, margin)


def _tilt_check(given: Inputs, tilt: float, relief: float) -> Check:
    if relief == 0:
        asked = "relief_angle" if given.has("relief_angle") else "wheel_tilt"
        return stop(
            "Without tilt there is no relief: the whole land rubs. Tilt the wheel above {zero}.",
            zero=angle(0.0),
            cure=((asked, 0.0),),
        )
    return note(
        f"Incline the wheel {{tilt}} to the axis of the tool, deeper toward the {_heel_side(given)}, where it touches the heel: "
        "that gives {relief} of relief along a straight line of contact.",
        tilt=angle(tilt),
        relief=angle(relief),
    )


def _heel_side(given: Inputs) -> str:
    """At which end of the contact the heel lies: toward the point where the flutes wind the way in which the tool cuts.

    Derived: going up a right-hand flute the edge turns anticlockwise, seen from the shank, and behind the edge of a
    right-hand tool is anticlockwise as well; so along a line parallel to the axis the heel comes before the edge.
    """
    cuts = given.choice("hand")
    winds = given.choice("helix_hand") if given.has("helix_hand") else cuts
    return "point" if winds == cuts else "shank"


def _round_check(given: Inputs, relief: float, real: float) -> Check:
    """What the wheel, being round, makes of it; with the tilt that gives the relief where one was asked for."""
    helix, wheel = given.number("helix_angle"), given.number("wheel_diameter")
    parts = {"wheel": length(wheel), "real": angle(real)}
    if not given.has("relief_angle"):
        return note("A round wheel of {wheel} grinds {real} with that tilt: judge the tool by that.", **parts)
    if abs(real - relief) <= NEAR:
        return passed(
            "A round wheel of {wheel} grinds {real}, within {near} of what is wanted.",
            near=angle(NEAR),
            **parts,
        )
    lean = round_wheel_tilt(relief, helix, given.number("diameter"), wheel)
    return watch(
        "A round wheel of {wheel} grinds {real} with that tilt, where {relief} is wanted. Tilt the wheel {lean}, which "
        "grinds it: give that tilt, and leave the relief out.",
        relief=angle(relief),
        lean=angle(lean),
        cure=Together((("relief_angle", None), ("wheel_tilt", lean))),
        **parts,
    )


def _land_check(land: _Land) -> Check:
    if land.margin:
        return note(
            "From edge to heel the contact wanders {along} along the wheel. The margin runs on the circle for {turned} behind "
            "the edge, by design; from its end to the heel the land falls {drop}.",
            along=length(land.along_wheel(land.turned)),
            turned=angle(land.margin),
            drop=length(land.drop(land.turned)),
        )
    return note(
        "From edge to heel the contact wanders {along} along the wheel and the land falls {drop}.",
        along=length(land.along_wheel(land.turned)),
        drop=length(land.drop(land.turned)),
    )


LEAST_LEFT = 0.05
"""The land behind the margin, in mm, below which nothing is left to grind once a width is rounded; no source."""


def _past_the_margin(says: str, wheel_width: float, wanted: float) -> Check:
    """What is said where the wheel does not even reach the end of the margin, so that no narrower land helps."""
    says = f"{says} Of a land so narrow the margin would take up all."
    if wanted > quantity("wheel_width").high - WIDEST_STEP:
        return stop(f"{says} Narrow the margin, and the land with it.", width=length(wheel_width))
    return stop(
        f"{says} Use a wheel that touches over {{wanted}} or more.",
        wanted=length(wanted, Rounding.UP),
        cure=(("wheel_width", wanted),),
        width=length(wheel_width),
    )


def _width_check(land: _Land, wheel_width: float) -> Check:
    wanted = land.along_wheel(land.turned)
    if wheel_width >= wanted * (1 - ROUNDING):
        return passed(
            "The wheel touches over {width} and reaches from edge to heel.",
            width=length(wheel_width),
        )
    reached = 2 * land_reached(wheel_width, land.helix) / land.diameter
    narrow = land_width(reached, land.diameter, land.measured_as)
    parts = {"width": length(wheel_width), "land": length(narrow, Rounding.DOWN)}
    says = "The wheel touches over {width} only and does not reach the heel: the rest of the land stays on the circle and rubs."
    if land.margin and (reached - land.margin) * land.diameter / 2 <= LEAST_LEFT:
        return _past_the_margin(says, wheel_width, wanted)
    if wanted > quantity("wheel_width").high - WIDEST_STEP:
        return stop(f"{says} Narrow the land to {{land}}.", cure=(("land_width", narrow),), **parts)
    return stop(
        f"{says} Use a wheel that touches over {{wanted}} or more, or narrow the land to {{land}}.",
        wanted=length(wanted, Rounding.UP),
        cure=(("wheel_width", wanted), ("land_width", narrow)),
        **parts,
    )


def _real_relief(given: Inputs, tilt: float) -> float | None:
    """The relief that a round wheel grinds, where wheel and tool are known."""
    if not given.has("wheel_diameter"):
        return None
    if not given.has("diameter"):
        raise NotGiven("Give the diameter of the tool as well, to see what a round wheel grinds.", "diameter")
    real = round_wheel_relief(
        tilt, given.number("helix_angle"), given.number("diameter"), given.number("wheel_diameter")
    )
    if real is None:
        raise refuse(
            "wheel_diameter",
            "So far inclined, a round wheel of {wheel} touches beside the tool and relieves nothing. Incline it less.",
            {"wheel": length(given.number("wheel_diameter"))},
        )
    return real


def _compute(given: Inputs) -> Result:
    helix = require_helix(given.number("helix_angle"))
    if given.has("relief_angle"):
        relief = given.number("relief_angle")
        tilt = wheel_tilt(relief, helix)
    else:
        tilt = given.number("wheel_tilt")
        relief = relief_of_tilt(tilt, helix)
    outputs = {"wheel_tilt": tilt, "relief_angle": relief}
    checks = [_tilt_check(given, tilt, relief)]
    real = _real_relief(given, tilt)
    if real is not None:
        outputs["round_wheel_relief"] = real
        checks += [_round_check(given, relief, real)] if relief > 0 else []
    if given.has("wheel_width"):
        outputs["tilt_fall"] = fall_along_wheel(given.number("wheel_width"), tilt)
    land = _land(given, helix, relief)
    if land is None or land.turned == 0:
        return Result(outputs, checks=tuple(checks))
    outputs |= {
        "contact_length": land.along_wheel(land.turned),
        "heel_drop": land.drop(land.turned),
        "land_angle": land.turned,
    }
    checks.append(_land_check(land))
    if given.has("wheel_width"):
        checks.append(_width_check(land, given.number("wheel_width")))
    corners = (land.margin,) if land.margin else ()
    return Result(
        outputs,
        stations(land.turned, {"drop": land.drop, "contact_length": land.along_wheel}),
        checks=tuple(checks),
        figure=Figure(land.diameter / 2, land.turned, (curve("eccentric", land.turned, land.drop, corners),)),
    )


CALCULATION = Calculation(
    name="wheel-tilt",
    title="Tilt of the wheel on a helical land",
    question="How far is the wheel inclined to relieve a helical land, how wide must it touch, and what does the indicator show?",
    wants="The helix angle is that of the land on the outside, from the axis, and the relief that at the edge; flutes wind the way "
    "in which the tool cuts where nothing else is said; "
    "the land is measured square to the axis on the diameter over the edges, as arc or chord.",
    neglects="It takes the wheel as touching along a straight line in the plane of the axis while the tool is led along its helix, "
    "which gives an eccentric relief. A round wheel touches beside that line and grinds steeper: about a tenth of a degree "
    "at 8, half a degree at 15, and 2.8 degrees at 25 on a helix of 30; with the wheel's diameter given it is worked out. "
    "A straight flute is not relieved at all.",
    kinds=("reamer", "end-mill", "twist-drill", "step-drill", "subland-drill", "counterbore", "tap"),
    belongs_on=("land", "thread-land"),
    inputs=(
        Field("helix_angle"),
        Field("hand", default="right"),
        Field("helix_hand", optional=True),
        Field("relief_angle", one_of="tilt", fill_from=("land_relief_angle",)),
        Field("wheel_tilt", one_of="tilt"),
        Field("diameter", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
        Field("margin_width", optional=True),
        Field("wheel_width", optional=True),
        Field("wheel_diameter", optional=True),
    ),
    outputs=(
        "wheel_tilt",
        "relief_angle",
        "round_wheel_relief",
        "contact_length",
        "heel_drop",
        "tilt_fall",
        "land_angle",
    ),
    cautions=(*AT_THE_WHEEL, "side-grinding"),
    compute=_compute,
    methods=("inclined-wheel",),
    role=Role(
        place=70, of_course=(), about="helix_angle", ground=("land", "thread-land"), sets=("wheel_tilt",)
    ),
    sample={
        "helix_angle": math.radians(30),
        "relief_angle": math.radians(8),
        "diameter": 12.0,
        "land_width": 2.0,
        "wheel_width": 5.0,
    },
)
