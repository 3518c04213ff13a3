"""What a new tool has: rake, land, relief in its view, and its form, from two indicator readings and where the face lies."""

from __future__ import annotations

from dataclasses import replace

from geometry.calculation import Calculation, Check, Field, Inputs, Result, note, worst_first
from geometry.calculations.face_offset import of_offset
from geometry.calculations.relief_from_reading import CALCULATION as READING
from geometry.edge.surface_input import surface_fields
from geometry.kinds import EVERY_KIND
from geometry.plausible import rake_plausible
from geometry.role import Role
from geometry.sentences import angle
from geometry.surfaces import SURFACES


def _face(given: Inputs) -> tuple[dict[str, float], tuple[Check, ...]]:
    """The rake at the edge, where it was measured how far the face passes from the axis."""
    if not given.has("face_offset"):
        return {}, (
            note("The rake is told as soon as it is measured how far the face passes from the axis."),
        )
    rake = of_offset(given.number("face_offset"), given.number("diameter"))
    said = note("The face leans by {rake} at the edge; a concave face has more behind it.", rake=angle(rake))
    return {"rake_angle": rake}, (*rake_plausible(rake), said)


def _compute(given: Inputs) -> Result:
    found = READING.compute(given)
    rake, told = _face(given)
    figure = (
        replace(found.figure, rake_angle=rake["rake_angle"])
        if found.figure is not None and rake
        else found.figure
    )
    numbers = {**found.outputs, **rake}
    return replace(
        found,
        outputs={key: numbers[key] for key in CALCULATION.outputs if key in numbers},
        checks=worst_first([*found.checks, *told]),
        figure=figure,
    )


CALCULATION = Calculation(
    name="measured-tool",
    title="A new tool measured",
    question="What rake, land, relief and form does a new tool have, so that the book can have them instead of a guess?",
    wants="A new tool, not one that was sharpened; the indicator is set to zero at the edge, plus inside the circle, and read at the "
    "heel and about half way. The face is measured with the tool between centres, by height over the axis with the face level.",
    neglects="It takes the edge as sharp, the tool as running true and the face as flat near the edge, and knows two forms of relief: "
    "an even cam and one flat facet.",
    kinds=EVERY_KIND,
    inputs=(
        *surface_fields(*SURFACES, default="land"),
        Field("indicator_points", optional=True),
        Field("diameter"),
        Field("land_width", measured=True),
        Field("land_measured_as", default="arc"),
        Field("drop"),
        Field("second_land_width", measured=True),
        Field("second_drop"),
        Field("face_offset", optional=True),
        Field("flutes", optional=True),
    ),
    outputs=(READING.outputs[0], "rake_angle", *READING.outputs[1:]),
    cautions=READING.cautions,
    compute=_compute,
    role=Role(),
    sample={
        "diameter": 12.0,
        "land_width": 2.0,
        "land_measured_as": "chord",
        "drop": 0.281,
        "second_land_width": 1.0,
        "second_drop": 0.142,
        "face_offset": 0.731,
        "flutes": 4.0,
    },
)
