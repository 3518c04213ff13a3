"""Which unequal spaces between the edges fall on the holes of the plates at hand."""

from __future__ import annotations

import math
from collections.abc import Iterator

from geometry.calculation import (
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
from geometry.cures import Way, way
from geometry.preconditions import refuse
from geometry.quantities import quantity
from geometry.role import MOVES, Role
from geometry.sentences import Rounding, angle, count, ratio
from geometry.setting.indexing import CIRCLES
from geometry.setting.unequal import Spacing, least_circle, nearest_spacing, usual_step

USUAL_RATIO = 40
"""Turns of the crank for one of the spindle where none is given: the commonest head. Common practice, no source."""

MOST_HOLES = 1000
"""The finest circle that the vocabulary knows."""

MOST_SHARE = 1.25
"""An edge behind a space so much wider than an even one takes too much; common practice, no source."""

SHOWN = math.radians(0.01)
"""As finely as an angle is shown, so that a step is called off only where a reader sees it."""


def _spaces(given: Inputs) -> tuple[int, bool]:
    """How many spaces differ, and whether each edge stands opposite another."""
    flutes = int(given.number("flutes"))
    opposite = given.choice("spacing_pairs") == "opposite" and flutes % 2 == 0
    spaces = flutes // 2 if opposite else flutes
    if spaces < 2:
        says = "One flute has no spaces that could differ. Give two flutes or more."
        if flutes == 2:
            says = "Two edges that stand opposite have no spaces that could differ. Let them stand free, or space them evenly."
        raise refuse("flutes", says)
    return spaces, opposite


def _step(given: Inputs) -> float:
    return given.number("spacing_step") if given.has("spacing_step") else usual_step(_spaces(given)[0])


def _found(given: Inputs) -> tuple[Spacing, tuple[int, ...]]:
    spaces, opposite = _spaces(given)
    head = int(given.number_or("index_ratio", USUAL_RATIO))
    circles = (
        [int(one) for one in given.numbers("plate_holes")] if given.has("plate_holes") else list(CIRCLES)
    )
    found = nearest_spacing(circles, head, int(given.number("flutes")), _step(given), opposite)
    if found is None:
        needed = least_circle(head, int(given.number("flutes")), opposite, MOST_HOLES)
        says = "No circle here lets {spaces} spaces differ by whole holes" + (
            " in half a turn." if opposite else "."
        )
        if needed is None:
            raise refuse("flutes", says + " No plate does for so many edges.", {"spaces": count(spaces)})
        raise refuse(
            "plate_holes",
            says + " The least that will do has {needed} holes.",
            {"spaces": count(spaces), "needed": count(needed)},
        )
    return found


def _even(spacing: Spacing) -> float:
    return 2 * math.pi / len(spacing.holes)


def _exact(spacing: Spacing, others: tuple[int, ...]) -> Check:
    told = "Every space falls on a hole of the circle of {circle}, from {least} to {greatest}: the moves are exact."
    parts = {
        "circle": count(spacing.circle),
        "least": angle(min(spacing.angles)),
        "greatest": angle(max(spacing.angles)),
    }
    if not others:
        return passed(told, **parts)
    return passed(told + " The circle of {other} does as well.", other=count(others[0]), **parts)


def _wide(given: Inputs, spacing: Spacing) -> Iterator[Check]:
    """What the edge behind the widest space takes, as a verdict where that is too much."""
    share = max(spacing.angles) / _even(spacing)
    if share <= MOST_SHARE * (1 + 1e-9):
        yield note(
            "The edge behind the widest space cuts {share} times as much as it would with even ones.",
            share=ratio(share),
        )
        return
    spaces, _ = _spaces(given)
    most = 2 * (MOST_SHARE - 1) * _even(spacing) / (spaces - 1)
    ways: list[Way] = []
    if most > quantity("spacing_step").low:
        narrow = angle(most, Rounding.DOWN)
        ways.append(way("choose a step of {most} or less", "spacing_step", "most", narrow))
    yield complaint(
        "watch",
        "The edge behind the widest space cuts {share} times as much as it would with even ones: it dulls first.",
        ways,
        ["use a plate with more holes"],
        share=ratio(share),
    )


def _steps(spacing: Spacing, wanted: float) -> Iterator[Check]:
    """That the plates have no such step, where a reader would see it."""
    low, high = min(spacing.steps), max(spacing.steps)
    if max(abs(low - wanted), abs(high - wanted)) <= SHOWN:
        return
    yield note(
        "The spaces rise by {low} to {high}: no circle here comes nearer to steps of {wanted}.",
        low=angle(low),
        high=angle(high),
        wanted=angle(wanted),
    )


def _measured(spacing: Spacing, opposite: bool) -> Check:
    if opposite:
        return note(
            "Each edge stands opposite another, so that a micrometer finds the diameter. Mark the first edge, and go round in "
            "this order twice."
        )
    return note(
        "No edge stands opposite another: measure the tool in a ring or a vee, not with a micrometer. The middle of the edges "
        "lies {off} of the radius off the axis. Mark the first edge, and keep to this order.",
        off=ratio(spacing.off_balance),
    )


def _assumed(given: Inputs) -> Iterator[Check]:
    """What was taken for granted because it was not given."""
    if not given.has("index_ratio") or not given.has("plate_holes"):
        head = int(given.number_or("index_ratio", USUAL_RATIO))
        plates = "" if given.has("plate_holes") else ", and the circles of a common plate"
        yield note(
            "For a head of {ratio} turns of the crank to one of the spindle"
            + plates
            + ": see that yours is alike.",
            ratio=count(head),
        )


def _checks(given: Inputs) -> tuple[Check, ...]:
    spacing, others = _found(given)
    _, opposite = _spaces(given)
    return worst_first(
        (
            _exact(spacing, others),
            *_wide(given, spacing),
            *_steps(spacing, _step(given)),
            _measured(spacing, opposite),
            *_assumed(given),
        )
    )


def _rows(spacing: Spacing, opposite: bool) -> tuple[Row, ...]:
    """One line for each space; for two where the other half of the turn is alike."""
    flutes = len(spacing.holes)
    spaces = flutes // 2 if opposite else flutes
    rows = []
    for at in range(spaces):
        turns, beyond = divmod(spacing.holes[at], spacing.circle)
        label = f"edge {at + 1} to {(at + 1) % flutes + 1}"
        if opposite:
            label += f" and {at + spaces + 1} to {(at + spaces + 1) % flutes + 1}"
        rows.append(
            Row(
                label,
                {
                    "index_circle": spacing.circle,
                    "index_turns": turns,
                    "index_holes": beyond,
                    "index_angle": spacing.angles[at],
                },
            )
        )
    return tuple(rows)


def _compute(given: Inputs) -> Result:
    spacing, _ = _found(given)
    least, greatest = min(spacing.angles), max(spacing.angles)
    outputs = {
        "index_circle": float(spacing.circle),
        "least_spacing": least,
        "greatest_spacing": greatest,
        "spacing_spread": (greatest - least) / _even(spacing),
        "off_balance": spacing.off_balance,
    }
    if not given.has("index_ratio"):
        outputs["index_ratio"] = float(USUAL_RATIO)
    result = Result(outputs, rows=_rows(spacing, _spaces(given)[1]), checks=_checks(given))
    return settled(result, given, lambda other, _: _checks(other))


CALCULATION = Calculation(
    name="unequal-spacing",
    title="Unequal spacing on the plates at hand",
    question="Which unequal spaces keep the tool from chattering and fall on holes of these plates?",
    wants="Give the number of flutes, and the step from space to space that is wanted, else a usual one is taken (common practice, "
    "no source); the ratio of your head and the circles of your plates, else a common head and plate are assumed.",
    neglects="It plans spaces for edges that are made or ground anew; a tool that has its spaces keeps them, and is indexed by its "
    "own teeth. It says nothing of which step stops which chatter. Every space is at least one hole.",
    kinds=("reamer", "countersink", "counterbore", "end-mill"),
    belongs_on=("land", "bevel", "cone", "end"),
    beside=True,
    inputs=(
        Field("flutes"),
        Field("spacing_step", optional=True),
        Field("spacing_pairs", default="opposite"),
        Field("index_ratio", optional=True),
        Field("plate_holes", optional=True, many=True),
    ),
    outputs=(
        "index_circle",
        "least_spacing",
        "greatest_spacing",
        "spacing_spread",
        "off_balance",
        "index_ratio",
    ),
    cautions=("hands", "lifting", "sharp-edges"),
    compute=_compute,
    role=Role(place=18, of_course=(), about="spacing_step", rows=MOVES, tells=("note",)),
    sample={
        "flutes": 8.0,
        "spacing_step": math.radians(2),
        "index_ratio": 40.0,
        "plate_holes": (38.0, 39.0, 41.0, 54.0),
    },
)
