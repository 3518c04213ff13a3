"""How far a wheel is inclined to relieve a helical land, and what the indicator shows on the way."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.calculation import (
    AT_THE_WHEEL,
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    passed,
    stations,
    stop,
)
from geometry.checking import NotGiven
from geometry.figure import Figure, curve
from geometry.sentences import Rounding, angle, length
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


@dataclass(frozen=True)
class _Land:
    """A helical land under an inclined wheel.

    Attributes:
        diameter: of the tool over its edges, in mm.
        turned: from edge to heel, in radians.
        measured_as: how its width was measured, ``arc`` or ``chord``.
        helix: in radians.
        relief: at the edge, in radians.
    """

    diameter: float
    turned: float
    measured_as: str
    helix: float
    relief: float

    def along_wheel(self, turned: float) -> float:
        """How far along the wheel the contact has come after ``turned`` (rad), in mm."""
        return contact_length(land_width(turned, self.diameter, "arc"), self.helix)

    def drop(self, turned: float) -> float:
        return eccentric.drop(turned, self.relief, self.diameter)


def _land(given: Inputs, helix: float, relief: float) -> _Land | None:
    if not given.has("land_width"):
        return None
    if not given.has("diameter"):
        raise NotGiven("Give the diameter as well, so that the land can be laid round it.", "diameter")
    diameter, measured_as = given.number("diameter"), given.choice("land_measured_as")
    turned = land_angle(given.number("land_width"), diameter, measured_as)
    return _Land(diameter, turned, measured_as, helix, relief)


def _tilt_check(tilt: float, relief: float) -> Check:
    if relief == 0:
        return stop(
            "Without tilt there is no relief: the whole land rubs. Tilt the wheel above {zero}.",
            zero=angle(0.0),
        )
    return passed(
        "Incline the wheel {tilt} to the axis of the tool, so that it lies deeper where it touches the heel: that gives "
        "{relief} of relief.",
        tilt=angle(tilt),
        relief=angle(relief),
    )


def _land_check(land: _Land) -> Check:
    return passed(
        "From edge to heel the contact wanders {along} along the wheel and the land falls {drop}.",
        along=length(land.along_wheel(land.turned)),
        drop=length(land.drop(land.turned)),
    )


def _width_check(land: _Land, wheel_width: float) -> Check:
    wanted = land.along_wheel(land.turned)
    if wheel_width >= wanted:
        return passed(
            "The wheel touches over {width} and reaches from edge to heel.",
            width=length(wheel_width),
        )
    reached = 2 * land_reached(wheel_width, land.helix) / land.diameter
    return stop(
        "The wheel touches over {width} only and does not reach the heel: the rest of the land stays on the circle and "
        "rubs. Use a wheel that touches over {wanted} or more, or narrow the land to {land}.",
        width=length(wheel_width),
        wanted=length(wanted, Rounding.UP),
        land=length(land_width(reached, land.diameter, land.measured_as), Rounding.DOWN),
    )


def _compute(given: Inputs) -> Result:
    helix = require_helix(given.number("helix_angle"))
    if given.has("relief_angle"):
        relief = given.number("relief_angle")
        tilt = wheel_tilt(relief, helix)
    else:
        tilt = given.number("wheel_tilt")
        relief = relief_of_tilt(tilt, helix)
    outputs = {"wheel_tilt": tilt, "relief_angle": relief}
    checks = [_tilt_check(tilt, relief)]
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
    return Result(
        outputs,
        stations(land.turned, {"drop": land.drop, "contact_length": land.along_wheel}),
        checks=tuple(checks),
        figure=Figure(land.diameter / 2, land.turned, (curve("eccentric", land.turned, land.drop),)),
    )


CALCULATION = Calculation(
    name="wheel-tilt",
    title="Tilt of the wheel on a helical land",
    question="How far is the wheel inclined to relieve a helical land, how wide must it touch, and what does the indicator show?",
    wants="The helix angle is that of the land on the outside, from the axis, and the relief that at the edge; "
    "the land is measured square to the axis on the diameter over the edges, as arc or chord.",
    neglects="It takes the wheel as touching along a straight line in the plane of the axis while the tool is led along its helix, which gives an eccentric relief. "
    "A round wheel touches a little to the side of that line and grinds a few hundredths steeper at most; a straight flute is not relieved at all.",
    families=("reamer", "twist-drill", "step-drill", "subland-drill", "counterbore", "tap"),
    inputs=(
        Field("helix_angle"),
        Field("relief_angle", one_of="tilt", fill_from=("land_relief_angle",)),
        Field("wheel_tilt", one_of="tilt"),
        Field("diameter", optional=True),
        Field("land_width", optional=True),
        Field("land_measured_as", default="arc"),
        Field("wheel_width", optional=True),
    ),
    outputs=("wheel_tilt", "relief_angle", "contact_length", "heel_drop", "tilt_fall", "land_angle"),
    cautions=(*AT_THE_WHEEL, "side-grinding"),
    compute=_compute,
    methods=("inclined-wheel",),
)
