"""The relief that one cam gives on every step and shoulder of a step drill, and the weakest of them."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

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
)
from geometry.complaints import complaint, settled
from geometry.cone import relief as cone
from geometry.cone.cammed_steps import CammedSteps, bring, bring_both, under_cam
from geometry.cone.shoulder_range import End, out_of_range, range_check
from geometry.cone.steps import RelievedShoulder, in_order, shoulders
from geometry.cures import way
from geometry.drill.feed import feed_slope
from geometry.edge.cam import NEAR_ENOUGH, Wanted
from geometry.edge.surface_input import HALF
from geometry.role import Cam, Role
from geometry.sentences import Rounding, angle, count, length
from geometry.side_view import step_view

CLOSE_ENOUGH = 1e-9
"""A relief this near to the wanted one (radians) has reached it: far finer than any machine; no source."""


def _agree(given: Inputs) -> None:
    """Look whether the steps go one way, and whether each shoulder has its angle, whatever else is still to be given."""
    if given.has("diameter"):
        in_order(given.numbers("diameter"))
        if given.has("included_angle"):
            shoulders(given.numbers("diameter"), given.numbers("included_angle"))


def _step_check(tool: CammedSteps) -> Check:
    largest = tool.steps[-1]
    if tool.radial < 0:
        return complaint(
            "stop",
            "The radial throw moves outward: every step rises behind its edge, the smallest by {rise}.",
            [bring("radial", "above", 0.0, tool.per)],
            rise=angle(-tool.step_relief(tool.steps[0])),
        )
    if tool.radial == 0:
        return complaint(
            "watch",
            "There is no radial throw, so the steps have no relief on their circles and rub over the whole land.",
            [bring("radial", "above", 0.0, tool.per)],
            ["clear the lands down to a narrow margin"],
        )
    if len(tool.steps) == 1:
        return note("The step has {least} of relief on its circle.", least=angle(tool.step_relief(largest)))
    return note(
        "Of {steps} steps the largest, {largest}, has the least relief on its circle: {least}.",
        steps=count(len(tool.steps)),
        largest=length(largest),
        least=angle(tool.step_relief(largest)),
    )


def _wanted_check(tool: CammedSteps, wanted: float) -> Check:
    largest = tool.steps[-1]
    found = tool.step_relief(largest)
    if found > wanted + NEAR_ENOUGH:
        # More than wanted is no good news by itself: what it means the readings on the land say.
        return note("Every step has more than the {wanted} wanted on its circle.", wanted=angle(wanted))
    if found >= wanted - CLOSE_ENOUGH:
        return passed("Every step has at least the {wanted} wanted on its circle.", wanted=angle(wanted))
    return complaint(
        "watch",
        "Step {number}, {largest}, has {found} on its circle, under the {wanted} wanted.",
        [bring("radial", "to at least", cone.square_throw_for(wanted, largest) * tool.turn, tool.per)],
        number=count(len(tool.steps)),
        largest=length(largest),
        found=angle(found),
        wanted=angle(wanted),
    )


def _shoulder_check(tool: CammedSteps, *, has_feed: bool) -> Check:
    weakest, place = tool.weakest
    relief = weakest.relief(place)
    say = {"number": count(weakest.shoulder.number), "place": length(place), "relief": angle(relief)}
    if relief <= 0:
        return complaint(
            "stop",
            "Shoulder {number} has a relief of {relief} at {place}: it will rub.",
            tool.ways_to_clear(),
            **say,
        )
    if has_feed:
        return _feed_check(tool)
    return passed(
        "Shoulder {number} is the weakest: {relief} square to its cone at {place}. The shoulders clear in feeds under "
        "{limit} per turn.",
        limit=length(tool.feed_limit, Rounding.DOWN),
        **say,
    )


def _feed_check(tool: CammedSteps) -> Check:
    weakest, place = tool.weakest_in_feed
    left = weakest.left(tool.feed, place)
    say = {
        "number": count(weakest.shoulder.number),
        "place": length(place),
        "feed": length(tool.feed),
        "limit": length(tool.feed_limit, Rounding.DOWN),
    }
    if left > 0:
        return passed(
            "Shoulder {number} is the weakest: at {feed} per turn the feed leaves {left} of its {relief} along the axis "
            "at {place}. The shoulders clear in feeds under {limit} per turn.",
            left=angle(left),
            relief=angle(weakest.left(0.0, place)),
            **say,
        )
    slower = way("feed less than {limit} per turn", "feed", "limit", say.pop("limit"))
    return complaint(
        "stop",
        "Shoulder {number} drags: at {feed} per turn the feed takes up all its relief at {place}.",
        [slower, *tool.ways_to_clear()],
        **say,
    )


def _shoulder_wanted_check(tool: CammedSteps, wanted: float) -> Check:
    weakest, place = tool.weakest
    if weakest.relief(place) >= wanted - CLOSE_ENOUGH:
        return passed(
            "Every shoulder has at least the {wanted} wanted square to its cone.", wanted=angle(wanted)
        )
    # On a shoulder that is nearly a cylinder no axial throw does it; the two together do it on any cone.
    both = max(cone.square_throw_for(wanted, cut.shoulder.outer) for cut in tool.shoulders) * tool.turn
    return complaint(
        "watch",
        "Shoulder {number} has {relief} square to its cone at {place}, short of the {least} wanted.",
        [
            tool.bring_axial("to at least", tool.axial_for(wanted))
            or bring_both("to at least", both, tool.per)
        ],
        number=count(weakest.shoulder.number),
        relief=angle(weakest.relief(place)),
        place=length(place),
        least=angle(wanted),
    )


def _rows(tool: CammedSteps, *, has_feed: bool) -> Iterator[Row]:
    for number, diameter in enumerate(tool.steps, start=1):
        yield Row(f"Step {number}", {"diameter": diameter, "relief_angle": tool.step_relief(diameter)})
        for cut in tool.shoulders[number - 1 : number]:
            for end, place in (("inner", cut.shoulder.inner), ("outer", cut.shoulder.outer)):
                values = _shoulder_values(cut, place, tool.feed if has_feed else None)
                yield Row(f"Shoulder {number}, {end} end", values)


def _shoulder_values(cut: RelievedShoulder, place: float, feed: float | None) -> dict[str, float]:
    values = {
        "diameter": place,
        "included_angle": cut.shoulder.included_angle,
        "shoulder_relief_angle": cut.relief(place),
    }
    if feed is not None:
        values |= {"feed_slope": feed_slope(feed, place), "relief_left": cut.left(feed, place)}
    return values


def _of_steps(_: Inputs, tool: CammedSteps) -> Check:
    return _step_check(tool)


def _of_steps_wanted(given: Inputs, tool: CammedSteps) -> Check | None:
    wanted = "least_relief_angle"
    return _wanted_check(tool, given.number(wanted)) if given.has(wanted) else None


def _of_shoulders(given: Inputs, tool: CammedSteps) -> Check:
    if not tool.shoulders:
        return note("There is one step only, and so no shoulder to look at.")
    found, short = _shoulder_check(tool, has_feed=given.has("feed")), _of_shoulders_wanted(given, tool)
    # Which shoulder is the weakest is no good news where the same shoulder falls short of what is wanted.
    is_praise = found.state == "pass" and short is not None and short.state != "pass"
    return replace(found, state="note") if is_praise else found


def _of_shoulders_wanted(given: Inputs, tool: CammedSteps) -> Check | None:
    if not tool.shoulders or not given.has("shoulder_relief_angle"):
        return None
    wanted, limits = given.number("shoulder_relief_angle"), Wanted(0.0, *_limits(given))
    least = tool.weakest[0].relief(tool.weakest[1])
    ends_known = limits.low is not None and limits.high is not None and limits.keeps(wanted)
    if least >= wanted - CLOSE_ENOUGH or not ends_known or not limits.keeps(least):
        return _shoulder_wanted_check(tool, wanted)
    # Within what will do the usual relief may be missed; an end that is over it is told of by itself.
    return None if _out(given, tool) else _within_check(tool, wanted, limits)


def _within_check(tool: CammedSteps, wanted: float, limits: Wanted) -> Check:
    """The least relief of the shoulders, which is not the wanted one and will do."""
    weakest, place = tool.weakest
    return passed(
        "Shoulder {number} has {relief} square to its cone at {place} where {least} was wanted: within the {low} to {high} "
        "that will do.",
        number=count(weakest.shoulder.number),
        relief=angle(weakest.relief(place)),
        place=length(place),
        least=angle(wanted),
        low=angle(limits.low or 0.0),
        high=angle(limits.high or 0.0),
    )


def _limits(given: Inputs) -> tuple[float | None, float | None]:
    """The least and the most relief of a shoulder that will do, each where it is known."""
    low, high = (
        given.number(key) if given.has(key) else None for key in ("relief_lower_limit", "relief_upper_limit")
    )
    return low, high


def _out(given: Inputs, tool: CammedSteps) -> tuple[End, ...]:
    """The ends of shoulders whose relief is out of those limits; of one that has none at all more is told elsewhere."""
    if not tool.shoulders or tool.weakest[0].relief(tool.weakest[1]) <= 0:
        return ()
    return out_of_range(tool.shoulders, *_limits(given))


def _of_shoulders_range(given: Inputs, tool: CammedSteps) -> Check | None:
    found, (low, high) = _out(given, tool), _limits(given)
    if not found:
        return None
    axial = tool.axial_within(low, high)
    ways = [bring("axial", "to", axial, tool.per)] if axial is not None else []
    throws = tool.own_throws(low, high, given.number("axial_throw"))
    return range_check(found, tool.shoulders, low, high, ways, throws)


_LOOKS = (_of_steps, _of_steps_wanted, _of_shoulders, _of_shoulders_wanted, _of_shoulders_range)
"""What is looked at; each look finds one thing, so a complaint can only stand again in the look that found it."""


def _compute(given: Inputs) -> Result:
    tool = under_cam(given)
    seen = [(look, check) for look in _LOOKS if (check := look(given, tool)) is not None]

    def trial(other: Inputs, of: Check) -> list[Check]:
        changed = under_cam(other)
        if of.state == "watch" and any(one.over for one in _out(other, changed)):
            return [of]  # What gives another shoulder too much is no way out for one that has too little.
        again = (look(other, changed) for look, check in seen if check is of)
        return [check for check in again if check is not None]

    found = settled(_raw(given, tool, tuple(check for _, check in seen)), given, trial)
    return replace(found, checks=tuple(_once(given, tool, found.checks)))


def _once(given: Inputs, tool: CammedSteps, found: Sequence[Check]) -> Iterator[Check]:
    """The checks, with what the limits of the shoulders and the relief wanted there both say told once.

    A way to the wanted relief was tried against the limits, and helps with both; without one the limits say all.
    """
    is_short = any(not one.over for one in _out(given, tool))
    short = next((one for one in found if one.state == "watch" and "least" in one.sentence.parts), None)
    for check in found:
        is_range = check.state == "watch" and not check.sentence.parts.keys().isdisjoint({"low", "high"})
        if short is None or not (is_range if short.cure else is_short and check is short):
            yield check


def _raw(given: Inputs, tool: CammedSteps, checks: tuple[Check, ...]) -> Result:
    has_feed = given.has("feed")
    outputs = {"relief_angle": min(map(tool.step_relief, tool.steps))}
    named = {"relief_angle": f"Relief of step {_least_step(tool)}, square to the axis"}
    if tool.shoulders:
        weakest, place = tool.weakest
        outputs["shoulder_relief_angle"] = weakest.relief(place)
        named["shoulder_relief_angle"] = f"Relief of {_place(weakest, place)}, square to its cone"
        outputs["largest_feed"] = max(tool.feed_limit, 0.0)
        if len(tool.shoulders) > 1:
            named["largest_feed"] = "Largest feed: all shoulders"
        if has_feed:
            weakest, place = tool.weakest_in_feed
            outputs["relief_left"] = weakest.left(tool.feed, place)
            named["relief_left"] = f"Left by the feed on {_place(weakest, place)}, along the axis"
        outputs |= _swivel(tool)
    side = step_view(tool.steps, [cut.shoulder.included_angle for cut in tool.shoulders])
    rows = tuple(_rows(tool, has_feed=has_feed))
    return Result(outputs, rows=rows, checks=checks, side=side, named=named, heads=_HEADS)


def _swivel(tool: CammedSteps) -> dict[str, float]:
    """What the head is swivelled to for the shoulders, before any throw is set; nothing where they are not alike."""
    angles = {cut.shoulder.included_angle for cut in tool.shoulders}
    return {HALF: angles.pop() / 2} if len(angles) == 1 else {}


_HEADS = {
    "relief_angle": "step relief, square to the axis",
    "shoulder_relief_angle": "shoulder relief, square to its cone",
    "relief_left": "left by the feed, along the axis",
}
"""The columns of the table: each relief is told in its own view."""


def _least_step(tool: CammedSteps) -> int:
    """The number of the step with the least relief on its circle."""
    return min(range(len(tool.steps)), key=lambda at: tool.step_relief(tool.steps[at])) + 1


def _place(cut: RelievedShoulder, diameter: float) -> str:
    """A place on a shoulder in words; between its ends the diameter stands in the sentence on it."""
    ends = {cut.shoulder.inner: ", inner end", cut.shoulder.outer: ", outer end"}
    return f"shoulder {cut.shoulder.number}{ends.get(diameter, '')}"


CALCULATION = Calculation(
    name="step-relief",
    title="Relief of all steps under one cam",
    question="What relief does one cam give on each step and each shoulder of a step drill, and which is the weakest?",
    wants="Give the diameters of the steps in order, and the included angle of the shoulders, one for all or one for each between two steps; "
    "the throw counts above zero inward (radial) and away from the point (axial).",
    neglects="It holds for an even cam that acts alike on every step, and looks at the steps square to the axis and at the shoulders square to their cone; "
    "against the feed it counts along the axis, where the same relief looks larger. The point below the first step is not looked at; take it as the point of a drill.",
    kinds=("step-drill", "subland-drill", "counterbore", "centre-drill"),
    belongs_on=("shoulder",),
    inputs=(
        Field("diameter", many=True),
        Field("included_angle", many=True),
        Field("throw_per", default="turn"),
        Field("flutes", when=("throw_per", "tooth")),
        Field("radial_throw"),
        Field("axial_throw", default=0.0),
        Field("feed", optional=True),
        Field("least_relief_angle", optional=True, fill_from=("land_relief_angle",)),
        Field("shoulder_relief_angle", optional=True, wanted=True),
        Field("relief_lower_limit", optional=True, end_of=("shoulder_relief_angle", "low")),
        Field("relief_upper_limit", optional=True, end_of=("shoulder_relief_angle", "high")),
    ),
    outputs=("relief_angle", "shoulder_relief_angle", "relief_left", "largest_feed", HALF),
    cautions=(*AT_THE_WHEEL, "grinding-cracks", "sharp-edges"),
    compute=_compute,
    agree=_agree,
    methods=("cam",),
    role=Role(
        place=90,
        sets=(HALF, "radial_throw", "axial_throw"),
        cam=Cam(
            "radial_throw",
            "least_relief_angle",
            gives=(("land", "relief_angle"), ("shoulder", "shoulder_relief_angle")),
            else_wanted="shoulder_relief_angle",
        ),
        hands_on="included_angle",
        only_several="diameter",
        tells=("pass", "note"),
        tabled=True,
    ),
    sample={
        "diameter": (6.0, 8.0, 10.0, 12.0),
        "included_angle": (math.radians(90), math.radians(90), math.radians(118)),
        "radial_throw": 3.0,
        "axial_throw": 1.0,
        "feed": 0.15,
        "least_relief_angle": math.radians(6),
        "shoulder_relief_angle": math.radians(6),
        "relief_lower_limit": math.radians(5),
        "relief_upper_limit": math.radians(10),
    },
)
