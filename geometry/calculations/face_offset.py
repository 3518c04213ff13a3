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
    Together,
    note,
    passed,
    stop,
    watch,
    worst_first,
)
from geometry.figure import Figure
from geometry.plausible import LEAST_RAKE, MOST_RAKE, rake_plausible
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.tooth.face import face_offset, rake_angle

EXAMPLE_LAND = math.radians(25)
"""How far the land goes round in the figure, which is there for the face; nobody is asked for a land."""


def of_offset(offset: float, diameter: float) -> float:
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
        return note(
            "The face is radial: set the axis of the tool level with the plane in which the wheel grinds."
        )
    side = "behind" if offset > 0 else "ahead of"
    return note(
        "Set the plane in which the wheel grinds {offset} off the axis, "
        + side
        + " it as the tooth cuts, for a rake "
        "of {rake}.",
        offset=length(abs(offset)),
        rake=angle(rake),
    )


def _unusual(given: Inputs, offset: float, diameter: float) -> tuple[Check, ...]:
    """What is odd about the rake, in the words of the input that holds it."""
    rake = rake_angle(offset, diameter)
    if given.has("rake_angle"):
        return rake_plausible(rake, key="rake_angle")
    if not rake_plausible(rake):
        return ()
    low, high = face_offset(LEAST_RAKE, diameter), face_offset(MOST_RAKE, diameter)
    return (
        watch(
            "A face {offset} off the axis has a rake of {rake}, more than edges are given. Between {low} and {high} off the "
            "axis it stays within {least} and {most}; measure the offset again.",
            cure=(("face_offset", low), ("face_offset", high)),
            offset=length(offset),
            rake=angle(rake),
            low=length(low, Rounding.UP),
            high=length(high, Rounding.DOWN),
            least=angle(LEAST_RAKE),
            most=angle(MOST_RAKE),
        ),
    )


def _elsewhere(offset: float, others: tuple[float, ...]) -> Iterator[Check]:
    if not others:
        return
    small = min(others)
    limit = face_offset(MOST_RAKE if offset > 0 else LEAST_RAKE, small)
    if abs(offset) >= small / 2:
        yield stop(
            "The face passes {offset} off the axis and never meets a circle of {small}. Bring it to {limit} or less off the "
            "axis, or grind that diameter its own face.",
            cure=Together((("rake_angle", None), ("face_offset", limit))),
            offset=length(abs(offset)),
            small=length(small),
            limit=length(abs(limit), Rounding.DOWN),
        )
    elif abs(offset) > abs(limit) * (1 + 1e-9):
        yield watch(
            "On {small} the rake comes to {rake}, more than edges are given. Bring the face to {limit} or less off the axis, "
            "and it stays within {usual} there.",
            cure=Together((("rake_angle", None), ("face_offset", limit))),
            small=length(small),
            rake=angle(rake_angle(offset, small)),
            limit=length(abs(limit), Rounding.DOWN),
            usual=angle(MOST_RAKE if offset > 0 else LEAST_RAKE),
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
        rake = of_offset(offset, diameter)
    others = given.numbers("other_diameter") if given.has("other_diameter") else ()
    return Result(
        outputs={"face_offset": offset, "rake_angle": rake},
        rows=tuple(_row(place, offset, other) for place, other in enumerate(others, 1)),
        checks=worst_first(
            (*_unusual(given, offset, diameter), *_elsewhere(offset, others), _setting(offset, rake))
        ),
        figure=Figure(diameter / 2, EXAMPLE_LAND, (), rake),
    )


CALCULATION = Calculation(
    name="face-offset",
    title="Face offset for a rake",
    question="How far off the axis is the face ground for this rake, and what rake does it give on other diameters?",
    wants="The diameter is that of the circle the edges run on, where the rake is meant; "
    "other diameters are those on which the same flat face also cuts, such as the steps of a step drill.",
    neglects="It holds for a flat face along a straight flute, seen square to the axis. "
    "A hooked face is curved and has this rake only at its edge: where the book has a hook along the chord, this is the flat face with "
    "the same chord. Along a helix the rake is another.",
    kinds=("tap", "countersink", "step-drill", "reamer", "counterbore", "subland-drill", "end-mill"),
    belongs_on=("land", "thread-land", "chamfer", "cone", "shoulder", "bevel", "end"),
    inputs=(
        Field("diameter"),
        Field("rake_angle", one_of="rake", fill_from=("hook_angle",)),
        Field("face_offset", one_of="rake"),
        Field("other_diameter", optional=True, many=True),
    ),
    outputs=("face_offset", "rake_angle"),
    cautions=(*AT_THE_WHEEL, "side-grinding"),
    compute=_compute,
    role=Role(
        place=30,
        sets=("face_offset",),
        apart="for the faces, a job of its own",
        ground=("land", "thread-land", "chamfer", "cone", "shoulder", "bevel"),
    ),
    sample={"diameter": 10.0, "rake_angle": math.radians(15), "other_diameter": (8.0, 4.0)},
)
