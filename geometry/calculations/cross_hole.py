"""Where the edge of a countersink without flutes lies, how it cuts, and the cam that gives its cone a relief."""

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
    note,
    passed,
    worst_first,
)
from geometry.complaints import complaint, settled
from geometry.cone.cross_hole import CrossHole, cross_hole
from geometry.cone.relief import (
    half_angle_parts,
    radial_throw_for,
    relief_angle,
    square_throw,
    square_throw_for,
)
from geometry.cures import Way, way
from geometry.plausible import LEAST_RELIEF, MOST_RELIEF
from geometry.preconditions import refuse
from geometry.role import Role
from geometry.sentences import Rounding, angle, length
from geometry.side_view import BODY, LONGEST, Mark, SideView

PLACES = (0.1, 0.3, 0.5, 0.7, 0.9)
"""Where the edge is looked at, as shares of the way between its ends; at the ends themselves it only slides along."""

USUAL = math.radians(6)
"""The relief that is offered for a cone that has none. Common practice, no source."""

HAIR = 1e-9
"""What a limit may be passed by its last digit, as a share."""


def _hole(given: Inputs) -> CrossHole:
    return cross_hole(
        given.number("included_angle"),
        given.number("cross_hole_diameter"),
        given.number("cross_hole_tilt"),
        given.number("cross_hole_height"),
    )


def _square(given: Inputs, made: CrossHole) -> float:
    """What the cam goes square to the cone, in mm for each radian turned."""
    if given.has("radial_throw"):
        return square_throw(given.number("radial_throw"), 0.0, 2 * made.half_angle) / (2 * math.pi)
    return square_throw_for(given.number("relief_angle"), 2 * made.ends[1])


def _radial_for(relief: float, made: CrossHole) -> float:
    """The radial throw of a turn that gives a relief where the edge ends, in mm."""
    square = 2 * math.pi * square_throw_for(relief, 2 * made.ends[1])
    found = radial_throw_for(square, 0.0, 2 * made.half_angle)
    if found is None:
        raise refuse(
            "included_angle", "So flat a cone gets no relief from a radial throw. Measure its angle again."
        )
    return found


def _relief(given: Inputs, made: CrossHole, square: float) -> Check:
    found = relief_angle(square, 2 * made.ends[1])
    key = "radial_throw" if given.has("radial_throw") else "relief_angle"
    if found < LEAST_RELIEF * (1 - HAIR):
        usual = angle(USUAL) if key == "relief_angle" else length(_radial_for(USUAL, made), Rounding.UP)
        return complaint(
            "stop",
            "The cone runs round in its own path behind the edge: no relief falls from the hole alone, and it rubs.",
            [
                way(
                    "give the cam "
                    + ("a relief of {usual}" if key == "relief_angle" else "a throw of {usual}"),
                    key,
                    "usual",
                    usual,
                )
            ],
        )
    if found > MOST_RELIEF * (1 + HAIR):
        most = angle(MOST_RELIEF, Rounding.DOWN)
        if key == "radial_throw":
            most = length(_radial_for(MOST_RELIEF, made), Rounding.DOWN)
        return complaint(
            "watch",
            "A relief of {found} leaves hardly any metal behind the edge.",
            [way("lower it to {most}", key, "most", most)],
            found=angle(found),
        )
    return passed(
        "By the cam the cone falls away by {found} where the edge ends, and by more toward the tip.",
        found=angle(found),
    )


def _runs_over(given: Inputs, made: CrossHole) -> Check | None:
    """The watch for a rim that is not all on the cone."""
    largest = given.number("diameter") / 2
    if made.ends[1] <= largest * (1 + HAIR):
        return None
    reach = largest * math.sin(made.half_angle + made.tilt) / math.sin(made.half_angle)
    ways: list[Way] = []
    hole = 2 * (reach - made.height * math.sin(made.tilt))
    if hole > 0:
        ways.append(
            way(
                "make the hole no larger than {hole}",
                "cross_hole_diameter",
                "hole",
                length(hole, Rounding.DOWN),
            )
        )
    height = (reach - made.radius) / math.sin(made.tilt)
    if height * math.sin(made.tilt) > made.radius:
        ways.append(
            way(
                "let it cross no higher than {height}",
                "cross_hole_height",
                "height",
                length(height, Rounding.DOWN),
            )
        )
    return complaint(
        "watch",
        "The rim runs up to {ends}, over the largest diameter of the cone: there it does not cut.",
        ways,
        ["use the cone below it alone"],
        ends=length(2 * made.ends[1]),
    )


def _checks(given: Inputs, made: CrossHole) -> Iterator[Check]:
    yield _relief(given, made, _square(given, made))
    over = _runs_over(given, made)
    if over is not None:
        yield over
    low, high = made.ends
    yield note(
        "The edge is the half of the rim that comes last as the tool turns. It cuts holes from {low} to {high} across; at both "
        "ends it only slides along.",
        low=length(2 * low),
        high=length(2 * high),
    )
    yield note(
        "Ground along the hole, the edge moves back round the cone, which keeps its relief; the hole grows, so measure it anew."
    )


def _rows(made: CrossHole, square: float) -> Iterator[Row]:
    low, high = made.ends
    for number, share in enumerate(PLACES, 1):
        place = made.place(low + (high - low) * share)
        relief = relief_angle(square, 2 * place.radius)
        yield Row(
            f"Place {number}",
            {
                "diameter": 2 * place.radius,
                "edge_rake_angle": place.rake,
                "edge_inclination": place.inclination,
                "relief_angle": relief,
                "normal_relief_angle": place.square_relief(relief),
            },
        )


def _side(given: Inputs, made: CrossHole) -> SideView | None:
    along, across = half_angle_parts(2 * made.half_angle)
    radius = max(given.number("diameter") / 2, made.ends[1])
    if radius * along > LONGEST * radius * across:
        return None
    behind = radius * along / across
    marks = (
        Mark(name, end * along / across, end)
        for name, end in zip(("edge begins", "edge ends"), made.ends, strict=True)
    )
    return SideView(((0.0, 0.0), (behind, radius), (behind + BODY * radius, radius)), tuple(marks))


def _all_checks(given: Inputs) -> tuple[Check, ...]:
    return worst_first(_checks(given, _hole(given)))


def _compute(given: Inputs) -> Result:
    made = _hole(given)
    low, high = made.ends
    square = _square(given, made)
    rows = tuple(_rows(made, square))
    outputs = {"edge_from_diameter": 2 * low, "edge_to_diameter": 2 * high}
    if given.has("radial_throw"):
        outputs["relief_angle"] = relief_angle(square, 2 * high)
    else:
        outputs["needed_radial_throw"] = _radial_for(given.number("relief_angle"), made)
    middle = rows[len(rows) // 2].values
    outputs |= {key: middle[key] for key in ("edge_rake_angle", "edge_inclination")}
    found = Result(outputs, rows=rows, checks=_all_checks(given), side=_side(given, made))
    return settled(found, given, lambda other, _: _all_checks(other))


CALCULATION = Calculation(
    name="cross-hole",
    title="Edge of a cross-hole countersink",
    question="Where on the cone does the rim of a cross hole cut, with which rake, and what relief does the cone need behind it?",
    wants="The diameter is the largest of the cone; the hole is measured by a plug in it, its height from the tip that the cone "
    "would have. The relief is square to the cone where the edge ends, and the throw is radial, of a whole turn.",
    neglects="It takes the hole as round and straight through the axis of the tool, and the cam as even. Rake and inclination of "
    "the answer are those in the middle of the edge. No published number was found for such tools: all of it is derived.",
    kinds=("countersink",),
    belongs_on=("cone",),
    beside=True,
    inputs=(
        Field("included_angle"),
        Field("diameter"),
        Field("cross_hole_diameter"),
        Field("cross_hole_tilt", default=math.radians(45)),
        Field("cross_hole_height"),
        Field("relief_angle", one_of="relief", fill_from=("cone_relief_angle",)),
        Field("radial_throw", one_of="relief"),
    ),
    outputs=(
        "edge_from_diameter",
        "edge_to_diameter",
        "relief_angle",
        "needed_radial_throw",
        "edge_rake_angle",
        "edge_inclination",
    ),
    cautions=(*AT_THE_WHEEL, "sharp-edges"),
    compute=_compute,
    role=Role(place=86, of_course=(), about="cross_hole_diameter", tells=("pass", "note"), tabled=True),
    sample={
        "included_angle": math.radians(90),
        "diameter": 20.0,
        "cross_hole_diameter": 6.0,
        "cross_hole_tilt": math.radians(45),
        "cross_hole_height": 10.0,
        "relief_angle": math.radians(6),
    },
)
