"""The unequal-spacing calculation: what it assumes, what it warns of, and what it refuses."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

SHEET, MOVES = calculation("unequal-spacing"), calculation("index-moves")


def test_the_moves_are_those_of_the_index_for_the_same_angles() -> None:
    found = run(SHEET, {"flutes": 6.0, "plate_holes": (39.0, 54.0), "index_ratio": 40.0})
    angles = [row.values["index_angle"] for row in found.rows] * 2
    moves = run(
        MOVES, {"flutes": 6.0, "spacing_angles": tuple(angles), "plate_holes": (54.0,), "index_ratio": 40.0}
    )
    keys = ("index_turns", "index_holes", "index_angle")
    mine = [row.values[key] for row in found.rows for key in keys]
    assert mine == pytest.approx([row.values[key] for row in moves.rows[:3] for key in keys])


def test_an_odd_number_of_edges_stands_free_whatever_is_chosen() -> None:
    values: dict[str, Given] = {"flutes": 7.0}
    assert (
        run(SHEET, {**values, "spacing_pairs": "opposite"}).rows
        == run(SHEET, {**values, "spacing_pairs": "free"}).rows
    )
    assert len(run(SHEET, values).rows) == 7
    assert len(run(SHEET, {"flutes": 8.0}).rows) == 4


def test_a_step_so_wide_that_one_edge_takes_too_much_is_a_watch() -> None:
    # By hand: four spaces round 45 degrees whose widest is 1.25 x 45 rise by 7.5 degrees.
    found = [
        run(SHEET, {"flutes": 8.0, "spacing_step": math.radians(step)}).checks[0].state for step in (7.4, 7.7)
    ]
    assert found == ["pass", "watch"]


def test_a_head_and_plates_that_were_not_named_are_told() -> None:
    assumed = run(SHEET, {"flutes": 8.0})
    assert assumed.outputs["index_ratio"] == 40
    named = run(SHEET, {"flutes": 8.0, "index_ratio": 40.0, "plate_holes": (54.0,)})
    assert "index_ratio" not in named.outputs
    assert len(named.checks) == len(assumed.checks) - 1


@pytest.mark.parametrize(
    ("values", "key"),
    [
        ({"flutes": 1.0}, "flutes"),
        ({"flutes": 2.0}, "flutes"),
        ({"flutes": 8.0, "index_ratio": 1.0, "plate_holes": (15.0, 18.0)}, "plate_holes"),
    ],
)
def test_what_cannot_be_spaced_unevenly_is_refused(values: dict[str, Given], key: str) -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, values)
    assert refused.value.problems[0].key == key


def test_the_least_circle_that_is_named_will_do() -> None:
    # By hand: 1 + 2 + 3 + 4 holes in half a turn are 20 in a turn.
    values: dict[str, Given] = {"flutes": 8.0, "index_ratio": 1.0}
    assert run(SHEET, {**values, "plate_holes": (20.0,)}).rows
    with pytest.raises(Refusal):
        run(SHEET, {**values, "plate_holes": (19.0,)})
