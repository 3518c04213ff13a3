"""The diameter of a tool with an odd number of flutes, from what is read over a vee, and back."""

from __future__ import annotations

import math

from geometry.calculation import Calculation, Check, Field, Inputs, Result, note, passed, worst_first
from geometry.complaints import complaint, settled
from geometry.cures import way
from geometry.preconditions import NotGiven, refuse
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import angle, count, length
from geometry.tooth.vee import Vee, fitting_vee, reading_of_difference, vee_of

NEAR = math.radians(0.5)
"""So far the edges may lie from where the vee touches: the reading is then counted with that, and the tool still lies
firm on both of them; common practice, no source."""

HUNDREDTH = 0.01
"""One division of a common indicator, in mm."""


def _flutes(given: Inputs) -> float | None:
    return given.number("flutes") if given.has("flutes") else None


def _vee(given: Inputs) -> Vee:
    flutes = _flutes(given)
    if given.has("vee_angle"):
        return vee_of(given.number("vee_angle"), flutes)
    if flutes is None:
        raise NotGiven("Give vee_angle, or flutes, from which the vee that fits follows.", "vee_angle")
    return vee_of(fitting_vee(flutes), flutes)


def _diameter(given: Inputs, vee: Vee) -> float:
    if given.has("diameter"):
        return given.number("diameter")
    if given.has("vee_reading"):
        return vee.diameter(given.number("vee_reading"))
    if not given.has("master_diameter"):
        raise NotGiven(
            "Give the diameter of the master as well, on which the indicator was set.", "master_diameter"
        )
    return vee.diameter(
        reading_of_difference(given.number("vee_difference"), given.number("master_diameter"), vee.angle)
    )


def _fits(given: Inputs, vee: Vee) -> Check:
    flutes = _flutes(given)
    if flutes is None:
        return note(
            "Without the number of flutes the tool is taken as a whole cylinder, which lies in any vee: a plug, or lands that "
            "go round far enough to touch."
        )
    if vee.off <= NEAR:
        return passed(
            "With one edge on top, a tool of {flutes} even flutes lies on two edges in a vee of {vee}.",
            flutes=count(flutes),
            vee=angle(vee.angle),
        )
    fit = fitting_vee(flutes)
    return complaint(
        "stop",
        "In a vee of {vee} a tool of {flutes} flutes lies on no two edges where the sides touch the circle; it rocks, and the "
        "reading says nothing of the diameter.",
        [way("take a vee of {fit}", "vee_angle", "fit", angle(fit))] if _is_in_range(fit) else [],
        vee=angle(vee.angle),
        flutes=count(flutes),
    )


def _is_in_range(fit: float) -> bool:
    return quantity("vee_angle").low <= fit <= quantity("vee_angle").high


def _told(given: Inputs, vee: Vee, diameter: float) -> tuple[Check, ...]:
    reading = vee.reading(diameter)
    found = [
        note(
            "A circle of {diameter} stands {reading} above the apex of the vee; {division} on the indicator is {across} on the "
            "diameter.",
            diameter=length(diameter),
            reading=length(reading),
            division=length(HUNDREDTH),
            across=length(HUNDREDTH * 2 / vee.per_radius),
        )
    ]
    if given.has("master_diameter"):
        off = reading - vee_of(vee.angle).reading(given.number("master_diameter"))
        found.append(
            note(
                "Set to zero on a master of {master}, the indicator shows {off} "
                + _way(off)
                + " on the tool.",
                master=length(given.number("master_diameter")),
                off=length(abs(off)),
            )
        )
    return tuple(found)


def _way(off: float) -> str:
    return "more" if off >= 0 else "less"


def _compute(given: Inputs) -> Result:
    vee = _vee(given)
    diameter = _diameter(given, vee)
    row = quantity("diameter")
    if not row.low <= diameter <= row.high * (1 + 1e-9):
        raise refuse(
            "vee_reading" if given.has("vee_reading") else "vee_difference",
            "That reading means a diameter of {diameter}, and tools have {low} to {high}. See where the indicator was set to "
            "zero, and read it again.",
            {"diameter": length(diameter), "low": length(row.low), "high": length(row.high)},
        )
    outputs = {
        "diameter": diameter,
        "vee_reading": vee.reading(diameter),
        "vee_angle": vee.angle,
        "vee_gain": vee.per_radius / 2,
    }
    if given.has("master_diameter"):
        outputs["vee_difference"] = outputs["vee_reading"] - vee_of(vee.angle).reading(
            given.number("master_diameter")
        )
    flutes = _flutes(given)
    if flutes is not None:
        outputs["fitting_vee_angle"] = fitting_vee(flutes)
    found = Result(outputs, checks=worst_first((_fits(given, vee), *_told(given, vee, diameter))))
    return settled(found, given, lambda other, _: (_fits(other, _vee(other)),))


CALCULATION = Calculation(
    name="vee-reading",
    title="Odd flutes in a vee",
    question="What is the diameter of a tool with an odd number of flutes, from what is read over a vee, and which vee fits it?",
    wants="The reading goes from the apex of the vee to the edge on top, or give its difference to a master cylinder in the same vee. "
    "Without an angle the vee is taken that fits the number of flutes.",
    neglects="It holds for evenly spaced edges on one circle, at one place along the tool; on a tapered or a back-tapered tool read "
    "close behind the front. Turn each edge to the top in turn: what differs is run-out of the edges.",
    kinds=("tap", "reamer", "countersink", "counterbore", "step-drill", "centre-drill", "subland-drill"),
    belongs_on=("land", "thread-land", "chamfer", "cone", "bevel", "end"),
    inputs=(
        Field("flutes", optional=True),
        Field("vee_angle", optional=True),
        Field("vee_reading", one_of="size", measured=True),
        Field("vee_difference", one_of="size", measured=True),
        Field("diameter", one_of="size"),
        Field("master_diameter", optional=True),
    ),
    outputs=("diameter", "vee_reading", "vee_difference", "vee_angle", "fitting_vee_angle", "vee_gain"),
    cautions=("sharp-edges",),
    compute=_compute,
    role=Role(place=21, of_course=(), about="vee_reading", hands_on="diameter", tells=("pass", "note")),
    sample={"flutes": 5.0, "vee_difference": 0.02, "master_diameter": 12.0},
)
