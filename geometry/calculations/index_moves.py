"""How to turn the crank of a dividing head from edge to edge."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from geometry.calculation import (
    Calculation,
    Check,
    Field,
    Inputs,
    Result,
    Row,
    note,
    passed,
    stop,
    watch,
    worst_first,
)
from geometry.kinds import EVERY_KIND
from geometry.preconditions import GeometryError, require_positive
from geometry.role import MOVES, Role
from geometry.sentences import angle, count, length
from geometry.setting.indexing import (
    CIRCLES,
    Move,
    even_moves,
    exact_circles,
    listed_moves,
    needed_circle,
    places_of,
    same_count,
    worst_even_error,
    worst_listed_error,
)

USUAL_RATIO = 40
"""Turns of the crank for one of the spindle where none is given: the commonest head. Common practice, no source."""

MOST_HOLES = 1000
"""The finest circle that the vocabulary knows."""


@dataclass(frozen=True)
class Plan:
    """The circle chosen, the moves on it, and the other circles that are just as exact."""

    circle: int
    moves: tuple[Move, ...]
    also_exact: tuple[int, ...]

    @property
    def worst(self) -> Move:
        """The move that leaves the tool furthest from its place."""
        return max(self.moves, key=lambda move: abs(move.error))

    @property
    def stands_still(self) -> bool:
        """Whether two edges fall on one hole."""
        return any(move.turns == 0 and move.holes == 0 for move in self.moves)


def _even(divisions: int, ratio: int, circles: Sequence[int]) -> Plan:
    exact = exact_circles(divisions, ratio, circles)
    if exact:
        return Plan(exact[0], even_moves(divisions, ratio, exact[0]), exact[1:])
    best = min(circles, key=lambda circle: (worst_even_error(divisions, ratio, circle), -circle))
    return Plan(best, even_moves(divisions, ratio, best), ())


def _listed(places: Sequence[float], ratio: int, circles: Sequence[int]) -> Plan:
    errors = {circle: worst_listed_error(places, ratio, circle) for circle in circles}
    best = min(circles, key=lambda circle: (errors[circle], -circle))
    others = tuple(circle for circle in circles if errors[circle] == 0 and circle != best)
    return Plan(best, listed_moves(places, ratio, best), others[::-1])


def _exact_checks(plan: Plan, even: bool) -> tuple[Check, ...]:
    if not even and len(plan.moves) == 1:
        return (passed("The angle falls on a hole of the circle of {circle}: the move is exact.",
                       circle=count(plan.circle)),)  # fmt: skip
    if not even:
        return (passed("Every angle of the list falls on a hole of the circle of {circle}: the moves are exact.",
                       circle=count(plan.circle)),)  # fmt: skip
    first = plan.moves[0]
    if first.holes == 0:
        return (passed("Every move is {turns} whole turns of the crank, back to the same hole: exact, on any circle.",
                       turns=count(first.turns)),)  # fmt: skip
    return (
        passed(
            "Every move is {turns} whole turns and {holes} holes on the circle of {circle}: exact. Do not count the "
            "hole that the pin starts from.",
            turns=count(first.turns),
            holes=count(first.holes),
            circle=count(plan.circle),
        ),
    )


def _left_over(plan: Plan, cure: str, diameter: float | None, **parts: int) -> Check:
    off = abs(plan.worst.error)
    says = "On the circle of {circle}, the nearest there is, the worst edge comes {off} out of place"
    amounts = {name: count(part) for name, part in parts.items()}
    exact = (("plate_holes", (float(parts["needed"]),)),) if "needed" in parts else ()
    if diameter is None:
        return watch(says + ". " + cure, cure=exact, circle=count(plan.circle), off=angle(off), **amounts)
    return watch(
        says + ", which is {along} along its circle. " + cure,
        cure=exact,
        circle=count(plan.circle),
        off=angle(off),
        along=length(off * diameter / 2),
        **amounts,
    )


def _even_checks(plan: Plan, divisions: int, ratio: int, diameter: float | None) -> tuple[Check, ...]:
    needed = needed_circle(divisions, ratio)
    if plan.stands_still:
        return (
            stop(
                "Two edges fall on one hole: these circles are too coarse. Use a circle of {needed} holes, or of any "
                "multiple of {needed}.",
                cure=(("plate_holes", (float(needed),)),),
                needed=count(needed),
            ),
        )
    if plan.worst.error == 0:
        return _exact_checks(plan, even=True)
    cure = (
        "Follow the table, whose moves differ, so that it does not add up; it is exact on a circle of {needed} holes "
        "or any multiple of {needed}."
    )
    return (_left_over(plan, cure, diameter, needed=needed),)


def _too_coarse(places: Sequence[float], ratio: int) -> Check:
    """The stop for a list that no circle here can follow, with the circle that could."""
    steps = zip((0.0, *places), places, strict=False)
    needed = 2 * math.pi / ratio / min(after - before for before, after in steps)
    if needed > MOST_HOLES:
        return stop(
            "So small an angle is less than one hole of any circle. Set it on a scale or with a sine bar."
        )
    what = (
        "Two edges fall on one hole" if len(places) > 1 else "The pin falls back into the hole it came from"
    )
    return stop(
        what + ": these circles are too coarse. Use a circle of {needed} holes or more.",
        cure=(("plate_holes", (float(math.ceil(needed)),)),),
        needed=count(math.ceil(needed)),
    )


def _listed_checks(
    plan: Plan, places: Sequence[float], ratio: int, diameter: float | None
) -> tuple[Check, ...]:
    if plan.stands_still:
        return (_too_coarse(places, ratio),)
    if plan.worst.error == 0:
        return _exact_checks(plan, even=False)
    cure = "If the drawing allows, take the angles of the table instead: those are exact."
    return (_left_over(plan, cure, diameter),)


def _row(label: str, circle: int, move: Move) -> Row:
    return Row(
        label,
        {
            "index_circle": circle,
            "index_turns": move.turns,
            "index_holes": move.holes,
            "index_angle": move.angle,
            "index_error": move.error,
        },
    )


def _rows(plan: Plan, even: bool, divisions: int, ratio: int) -> tuple[Row, ...]:
    if even and plan.worst.error == 0:
        others = (_row("or", circle, even_moves(divisions, ratio, circle)[0]) for circle in plan.also_exact)
        return (_row("every move", plan.circle, plan.moves[0]), *others)
    last = len(plan.moves)
    moves = tuple(
        _row(f"edge {place} to {place % last + 1}" if last > 1 else "the move", plan.circle, move)
        for place, move in enumerate(plan.moves, 1)
    )
    return (*moves, *(Row("also exact", {"index_circle": circle}) for circle in plan.also_exact))


def _places(given: Inputs) -> tuple[float, ...]:
    """The places of a list; none when the edges are even."""
    if given.has("index_angle"):
        if given.has("spacing_angles"):
            raise GeometryError(
                "Give unequal spacing together with flutes, not with one angle.", "index_angle"
            )
        return (require_positive("index_angle", given.number("index_angle")),)
    if not given.has("spacing_angles"):
        return ()
    spacing = given.numbers("spacing_angles")
    same_count(spacing, int(given.number("flutes")))
    return places_of(spacing)


def _agree(given: Inputs) -> None:
    """Look whether a list of angles has one for each flute, whatever else is wrong."""
    if given.has("spacing_angles") and (given.has("flutes") or given.has("index_angle")):
        _places(given)


def _assumed(given: Inputs) -> tuple[Check, ...]:
    """What was taken for granted because it was not given."""
    found = []
    if not given.has("index_ratio"):
        found.append(
            note(
                "No head was named, so one of {ratio} turns of the crank to one of the spindle is assumed. Count the turns of "
                "yours before you trust the moves.",
                ratio=count(USUAL_RATIO),
            )
        )
    if not given.has("plate_holes"):
        found.append(
            note(
                "No plates were named, so the circles of a common one are assumed, {few} to {many} holes.",
                few=count(min(CIRCLES)),
                many=count(max(CIRCLES)),
            )
        )
    return tuple(found)


def _errors(plan: Plan, diameter: float | None) -> dict[str, float]:
    """The error of the first move, and that of the worst one where the moves differ."""
    first, worst = plan.moves[0].error, plan.worst.error
    found = {"index_error": first}
    if diameter is not None:
        found["index_error_length"] = first * diameter / 2
    if len(plan.moves) > 1 and worst != 0:
        found["worst_index_error"] = worst
        if diameter is not None:
            found["worst_index_error_length"] = worst * diameter / 2
    return found


def _compute(given: Inputs) -> Result:
    ratio = int(given.number_or("index_ratio", USUAL_RATIO))
    circles = (
        sorted({int(one) for one in given.numbers("plate_holes")}) if given.has("plate_holes") else CIRCLES
    )
    diameter = given.number("diameter") if given.has("diameter") else None
    places = _places(given)
    divisions = 1 if given.has("index_angle") else int(given.number("flutes"))
    if places:
        plan = _listed(places, ratio, circles)
        checks = _listed_checks(plan, places, ratio, diameter)
    else:
        plan = _even(divisions, ratio, circles)
        checks = _even_checks(plan, divisions, ratio, diameter)
    first = plan.moves[0]
    outputs = {
        "index_circle": float(plan.circle),
        "index_turns": float(first.turns),
        "index_holes": float(first.holes),
        **_errors(plan, diameter),
    }
    if not places:
        outputs["accumulated_error"] = divisions * first.error
    if not given.has("index_ratio"):
        outputs["index_ratio"] = float(ratio)
    return Result(
        outputs,
        rows=_rows(plan, not places, divisions, ratio),
        checks=worst_first((*checks, *_assumed(given))),
    )


CALCULATION = Calculation(
    name="index-moves",
    title="Index moves",
    question="How many turns and holes is each move of the crank, and what do they leave over?",
    wants="Give the number of flutes, and where they are not even the angles from edge to edge once round (they may miss "
    "a whole turn by 0.05 degrees), or give one angle; the ratio of your head, else 40 to 1 is assumed; and the circles of your own plates, else those of "
    "a common plate with 24 to 66 holes.",
    neglects="It takes the head as true and its play as taken up: always come to the hole from the same side. "
    "The diameter is only wanted to show an error as a length; without it the answer is the same.",
    kinds=EVERY_KIND,
    inputs=(
        Field("flutes", one_of="division"),
        Field("index_angle", one_of="division"),
        Field("spacing_angles", optional=True, many=True),
        Field("index_ratio", optional=True),
        Field("plate_holes", optional=True, many=True),
        Field("diameter", optional=True),
    ),
    outputs=(
        "index_turns",
        "index_holes",
        "index_circle",
        "index_error",
        "index_error_length",
        "worst_index_error",
        "worst_index_error_length",
        "accumulated_error",
        "index_ratio",
    ),
    cautions=("hands", "lifting", "sharp-edges"),
    compute=_compute,
    agree=_agree,
    role=Role(place=20, every_job=True, rows=MOVES, tells=("note",)),
    sample={
        "flutes": 7.0,
        "plate_holes": (18.0, 20.0, 21.0, 49.0),
        "index_ratio": 40.0,
        "diameter": 20.0,
    },
)
