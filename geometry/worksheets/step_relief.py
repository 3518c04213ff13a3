"""The relief that one cam gives on every step and shoulder of a step drill, and the weakest of them."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from geometry.cone import relief as cone
from geometry.cone.steps import Shoulder, shoulder_cam, shoulders
from geometry.drill.feed import feed_slope, left_of_fall, weakest_of_fall
from geometry.quantities import quantity
from geometry.sentences import Amount, Rounding, angle, count, length
from geometry.worksheet import Check, Field, Inputs, Result, Row, Worksheet, passed, stop, watch

CLOSE_ENOUGH = 1e-9
"""A relief this near to the wanted one (radians) has reached it: far finer than any machine; no source."""


@dataclass(frozen=True)
class _Tool:
    """A step drill under its cam.

    Attributes:
        steps: the diameters from the point up, in mm.
        shoulders: between them.
        turn: the angle that the tool turns while the cam makes its travel, in radians.
        per: "per turn" or "per tooth".
        radial: inward travel, in mm.
        axial: travel away from the point, in mm.
        feed: in mm for one turn; nought when it was not given.
    """

    steps: tuple[float, ...]
    shoulders: tuple[Shoulder, ...]
    turn: float
    per: str
    radial: float
    axial: float
    feed: float

    def step_relief(self, diameter: float) -> float:
        return cone.relief_angle(self.radial / self.turn, diameter)

    def shoulder_relief(self, shoulder: Shoulder, diameter: float) -> float:
        square = cone.square_cam(self.radial, self.axial, shoulder.included_angle)
        return cone.relief_angle(square / self.turn, diameter)

    def fall_per_turn(self, shoulder: Shoulder) -> float:
        return shoulder_cam(self.radial, self.axial, shoulder) * 2 * math.pi / self.turn

    def left(self, shoulder: Shoulder, diameter: float) -> float:
        return left_of_fall(self.fall_per_turn(shoulder), self.feed, diameter)

    def weakest(self) -> tuple[Shoulder, float]:
        """The shoulder, and the diameter at an end of it, with the least relief square to its cone."""
        ends = [(shoulder, end) for shoulder in self.shoulders for end in (shoulder.inner, shoulder.outer)]
        return min(ends, key=lambda place: self.shoulder_relief(*place))

    def weakest_in_feed(self) -> tuple[Shoulder, float]:
        """The shoulder, and the diameter on it, where the feed leaves least."""
        places = [
            (s, weakest_of_fall(self.fall_per_turn(s), self.feed, s.inner, s.outer)) for s in self.shoulders
        ]
        return min(places, key=lambda place: self.left(*place))

    def axial_needed(self) -> float:
        """The axial cam above which every shoulder keeps relief against the feed.

        The radial cam stays, or is brought to nought where it moves outward.
        """
        radial, feed = max(self.radial, 0.0), self.feed * self.turn / (2 * math.pi)
        return max(feed - shoulder_cam(radial, 0.0, shoulder) for shoulder in self.shoulders)

    def axial_for(self, wanted: float) -> float:
        """The axial cam that gives every shoulder a relief square to its cone, the radial cam left as it is."""
        needed = [
            cone.axial_cam_for(
                self.turn * cone.square_cam_for(wanted, s.outer), self.radial, s.included_angle
            )
            for s in self.shoulders
        ]
        return max(cam for cam in needed if cam is not None)


def _tool(given: Inputs) -> _Tool:
    steps = given.numbers("diameter")
    between = shoulders(steps, given.numbers("included_angle"))
    return _Tool(
        tuple(sorted(steps)),
        between,
        cone.radians_of_cam(given.choice("cam_per"), given.number_or("flutes", 1)),
        f"per {given.choice('cam_per')}",
        given.number("radial_cam"),
        given.number("axial_cam"),
        given.number_or("feed", 0.0),
    )


def _step_check(tool: _Tool) -> Check:
    largest = tool.steps[-1]
    if tool.radial < 0:
        return stop(
            "The radial cam moves outward: every step rises behind its edge, the smallest by {rise}. Bring the radial "
            "cam above {nought} {per}.",
            rise=angle(-tool.step_relief(tool.steps[0])),
            nought=length(0.0),
            per=tool.per,
        )
    if tool.radial == 0:
        return watch(
            "There is no radial cam, so the steps have no relief on their circles and rub over the whole land. Bring "
            "the radial cam above {nought} {per}, or clear the lands down to a narrow margin.",
            nought=length(0.0),
            per=tool.per,
        )
    if len(tool.steps) == 1:
        return passed("The step has {least} of relief on its circle.", least=angle(tool.step_relief(largest)))
    return passed(
        "Of {steps} steps the largest, {largest}, has the least relief on its circle: {least}.",
        steps=count(len(tool.steps)),
        largest=length(largest),
        least=angle(tool.step_relief(largest)),
    )


def _wanted_check(tool: _Tool, wanted: float) -> Check:
    largest = tool.steps[-1]
    found = tool.step_relief(largest)
    if found >= wanted - CLOSE_ENOUGH:
        return passed("Every step has at least the {wanted} wanted on its circle.", wanted=angle(wanted))
    return watch(
        "Step {number}, {largest}, has {found} on its circle, short of the {wanted} wanted. Bring the radial cam to "
        "{radial} {per}.",
        number=count(len(tool.steps)),
        largest=length(largest),
        found=angle(found),
        wanted=angle(wanted),
        radial=length(cone.square_cam_for(wanted, largest) * tool.turn, Rounding.UP),
        per=tool.per,
    )


def _shoulder_check(tool: _Tool, *, has_feed: bool) -> Check:
    weakest, place = tool.weakest()
    relief = tool.shoulder_relief(weakest, place)
    say = {"number": count(weakest.number), "place": length(place), "relief": angle(relief)}
    if relief <= 0:
        return stop(
            "Shoulder {number} has a relief of {relief} at {place}: it will rub. Bring the axial cam above {axial} {per}.",
            axial=length(tool.axial_needed(), Rounding.UP),
            per=tool.per,
            **say,
        )
    if has_feed:
        return _feed_check(tool)
    return passed(
        "Shoulder {number} is the weakest: {relief} square to its cone at {place}. The shoulders clear in feeds under "
        "{limit} per turn.",
        limit=_feed_limit(tool),
        **say,
    )


def _feed_check(tool: _Tool) -> Check:
    weakest, place = tool.weakest_in_feed()
    left = tool.left(weakest, place)
    say = {
        "number": count(weakest.number),
        "place": length(place),
        "feed": length(tool.feed),
        "limit": _feed_limit(tool),
    }
    if left > 0:
        return passed(
            "Shoulder {number} is the weakest: at {feed} per turn the feed leaves {left} at {place}. The shoulders clear "
            "in feeds under {limit}.",
            left=angle(left),
            **say,
        )
    return stop(
        "Shoulder {number} drags: at {feed} per turn the feed takes up all its relief at {place}. Feed less than {limit} "
        "per turn, or bring the axial cam above {axial} {per}.",
        axial=length(tool.axial_needed(), Rounding.UP),
        per=tool.per,
        **say,
    )


def _shoulder_wanted_check(tool: _Tool, wanted: float) -> Check:
    weakest, place = tool.weakest()
    if tool.shoulder_relief(weakest, place) >= wanted - CLOSE_ENOUGH:
        return passed(
            "Every shoulder has at least the {wanted} wanted square to its cone.", wanted=angle(wanted)
        )
    # On a shoulder that is nearly a cylinder no axial cam does it; the two together do it on any cone.
    both = max(cone.square_cam_for(wanted, shoulder.outer) for shoulder in tool.shoulders) * tool.turn
    axial = tool.axial_for(wanted)
    is_within_reach = axial <= quantity("axial_cam").high
    return watch(
        "Shoulder {number} has {found} square to its cone at {place}, short of the {wanted} wanted. Bring "
        + ("the axial cam to {cam} {per}." if is_within_reach else "both cams to {cam} {per}."),
        number=count(weakest.number),
        found=angle(tool.shoulder_relief(weakest, place)),
        place=length(place),
        wanted=angle(wanted),
        cam=length(axial if is_within_reach else both, Rounding.UP),
        per=tool.per,
    )


def _feed_limit(tool: _Tool) -> Amount:
    return length(min(map(tool.fall_per_turn, tool.shoulders)), Rounding.DOWN)


def _rows(tool: _Tool, *, has_feed: bool) -> Iterator[Row]:
    for number, diameter in enumerate(tool.steps, start=1):
        yield Row(f"Step {number}", {"diameter": diameter, "relief_angle": tool.step_relief(diameter)})
        for shoulder in tool.shoulders[number - 1 : number]:
            for end, place in (("inner", shoulder.inner), ("outer", shoulder.outer)):
                yield Row(
                    f"Shoulder {number}, {end} end",
                    _shoulder_values(tool, shoulder, place, has_feed=has_feed),
                )


def _shoulder_values(tool: _Tool, shoulder: Shoulder, place: float, *, has_feed: bool) -> dict[str, float]:
    values = {
        "diameter": place,
        "included_angle": shoulder.included_angle,
        "shoulder_relief_angle": tool.shoulder_relief(shoulder, place),
    }
    if has_feed:
        values |= {"feed_slope": feed_slope(tool.feed, place), "relief_left": tool.left(shoulder, place)}
    return values


def _compute(given: Inputs) -> Result:
    tool, has_feed = _tool(given), given.has("feed")
    outputs = {"relief_angle": min(map(tool.step_relief, tool.steps))}
    checks = [_step_check(tool)]
    if given.has("least_relief_angle"):
        checks.append(_wanted_check(tool, given.number("least_relief_angle")))
    if tool.shoulders:
        outputs["shoulder_relief_angle"] = tool.shoulder_relief(*tool.weakest())
        outputs["largest_feed"] = max(min(map(tool.fall_per_turn, tool.shoulders)), 0.0)
        if has_feed:
            outputs["relief_left"] = tool.left(*tool.weakest_in_feed())
        checks.append(_shoulder_check(tool, has_feed=has_feed))
        if given.has("shoulder_relief_angle"):
            checks.append(_shoulder_wanted_check(tool, given.number("shoulder_relief_angle")))
    else:
        checks.append(passed("There is one step only, and so no shoulder to look at."))
    return Result(outputs, rows=tuple(_rows(tool, has_feed=has_feed)), checks=tuple(checks))


WORKSHEET = Worksheet(
    name="step-relief",
    title="Relief of all steps under one cam",
    question="What relief does one cam give on each step and each shoulder of a step drill, and which is the weakest?",
    wants="Give the diameters of the steps in order, and the included angle of the shoulders, one for all or one for each between two steps; "
    "the cam counts above zero inward (radial) and away from the point (axial).",
    neglects="It holds for an even cam that acts alike on every step, and looks at the steps square to the axis and at the shoulders square to their cone. "
    "The point below the first step is not looked at; take it as the point of a drill.",
    families=("step-drill", "subland-drill", "counterbore", "centre-drill"),
    inputs=(
        Field("diameter", many=True),
        Field("included_angle", many=True),
        Field("cam_per", default="turn"),
        Field("flutes", when=("cam_per", "tooth")),
        Field("radial_cam"),
        Field("axial_cam", default=0.0),
        Field("feed", optional=True),
        Field("least_relief_angle", optional=True, fill_from=("relief_angle",)),
        Field("shoulder_relief_angle", optional=True),
    ),
    outputs=("relief_angle", "shoulder_relief_angle", "relief_left", "largest_feed"),
    cautions=(
        "wheel-rating",
        "ring-test",
        "eyes",
        "hands",
        "guard-and-rest",
        "burning",
        "dust",
        "sharp-edges",
    ),
    compute=_compute,
)
