"""How far off the axis to grind a flat face for a rake, and what rake it gives on other diameters."""

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
    Row,
    passed,
    stop,
    watch,
)
from geometry.checking import refuse
from geometry.figure import Figure
from geometry.quantities import quantity
from geometry.sentences import Rounding, angle, length
from geometry.tooth.face import face_offset, rake_angle

KEEN = math.radians(60)
"""From here on an edge is a knife: the greatest rake that the vocabulary takes for one."""

EXAMPLE_LAND = math.radians(25)
"""How far the land goes round in the figure, which is there for the face; nobody is asked for a land."""


def _of_offset(offset: float, diameter: float) -> float:
    """The rake of an offset that was given, kept to rakes that a tooth can have."""
    row = quantity("rake_angle")
    low, high = face_offset(row.low, diameter), face_offset(row.high, diameter)
    if not low * (1 + 1e-12) <= offset <= high * (1 + 1e-12):
        raise refuse(
            "face_offset",
            "On {diameter} the face can pass from {low} to {high} off the axis; {offset} leaves no tooth.",
            {
                "diameter": length(diameter),
                "low": length(low, Rounding.UP),
                "high": length(high, Rounding.DOWN),
                "offset": length(offset),
            },
        )
    return rake_angle(offset, diameter)


def _setting(offset: float, rake: float) -> Check:
    if offset == 0:
        return passed(
            "The face is radial: set the axis of the tool level with the plane in which the wheel grinds."
        )
    side = "behind" if offset > 0 else "ahead of"
    return passed(
        "Set the plane in which the wheel grinds {offset} off the axis, "
        + side
        + " it as the tooth cuts, for a rake "
        "of {rake}.",
        offset=length(abs(offset)),
        rake=angle(rake),
    )


def _elsewhere(offset: float, others: tuple[float, ...]) -> Iterator[Check]:
    if not others:
        return
    small = min(others)
    if abs(offset) >= small / 2:
        yield stop(
            "The face passes {offset} off the axis and never meets a circle of {small}. Bring it to less than {nearest} "
            "off the axis, or grind that diameter its own face.",
            offset=length(abs(offset)),
            small=length(small),
            nearest=length(small / 2, Rounding.DOWN),
        )
    elif abs(rake_angle(offset, small)) > KEEN:
        limit = face_offset(KEEN, small)
        yield watch(
            "On {small} the rake comes to {rake}, which leaves hardly any edge. Bring the face to {limit} off the axis "
            "to keep it to {keen} there.",
            small=length(small),
            rake=angle(rake_angle(offset, small)),
            limit=length(limit, Rounding.DOWN),
            keen=angle(KEEN),
        )
    else:
        yield passed(
            "On {small}, the smallest of the others, the same face has a rake of {rake}.",
            small=length(small),
            rake=angle(rake_angle(offset, small)),
        )


def _row(place: int, offset: float, diameter: float) -> Row:
    values = {"other_diameter": diameter}
    if abs(offset) < diameter / 2:
        values["local_rake_angle"] = rake_angle(offset, diameter)
    return Row(f"other diameter {place}", values)


def _compute(given: Inputs) -> Result:
    diameter = given.number("diameter")
    if given.has("rake_angle"):
        rake = given.number("rake_angle")
        offset = face_offset(rake, diameter)
    else:
        offset = given.number("face_offset")
        rake = _of_offset(offset, diameter)
    others = given.numbers("other_diameter") if given.has("other_diameter") else ()
    return Result(
        outputs={"face_offset": offset, "rake_angle": rake},
        rows=tuple(_row(place, offset, other) for place, other in enumerate(others, 1)),
        checks=(_setting(offset, rake), *_elsewhere(offset, others)),
        figure=Figure(diameter / 2, EXAMPLE_LAND, (), rake),
    )


CALCULATION = Calculation(
    name="face-offset",
    title="Face offset for a rake",
    question="How far off the axis is the face ground for this rake, and what rake does it give on other diameters?",
    wants="The diameter is that of the circle the edges run on, where the rake is meant; "
    "other diameters are those on which the same flat face also cuts, such as the steps of a step drill.",
    neglects="It holds for a flat face along a straight flute, seen square to the axis. "
    "A hooked face is curved and has this rake only at its edge, and along a helix the rake is another.",
    families=("tap", "countersink", "step-drill", "reamer", "counterbore", "subland-drill"),
    inputs=(
        Field("diameter"),
        Field("rake_angle", one_of="rake"),
        Field("face_offset", one_of="rake"),
        Field("other_diameter", optional=True, many=True),
    ),
    outputs=("face_offset", "rake_angle"),
    cautions=(*AT_THE_WHEEL, "side-grinding"),
    compute=_compute,
)
