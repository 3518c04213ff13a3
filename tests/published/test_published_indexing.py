"""Index moves against worked examples in print."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.setting.indexing import CIRCLES


def move_on(circle: int, **values: Given) -> tuple[float, float, float]:
    """Turns, holes and error in radians on one circle, with a head of 40 to 1."""
    found = run(calculation("index-moves"), {**values, "plate_holes": (float(circle),)}).outputs
    return found["index_turns"], found["index_holes"], found["index_error"]


@pytest.mark.parametrize(
    ("divisions", "circle", "turns", "holes"),
    [
        # US Army Ordnance course OD1644-8, plain indexing: 6 divisions, and 42 divisions.
        (6, 18, 6, 12),
        (6, 39, 6, 26),
        (42, 42, 0, 40),
        (42, 21, 0, 20),
        # Simple indexing on a dividing head, worked examples: 24 divisions; 15 divisions on two circles.
        (24, 15, 1, 10),
        (15, 27, 2, 18),
        (15, 36, 2, 24),
        # Two independent answers for 7 divisions.
        (7, 21, 5, 15),
        (7, 49, 5, 35),
        # Derived: 40 / 9, 40 / 11 and 40 / 13.
        (9, 18, 4, 8),
        (11, 33, 3, 21),
        (13, 39, 3, 3),
    ],
)
def test_divisions(divisions: int, circle: int, turns: int, holes: int) -> None:
    assert move_on(circle, flutes=float(divisions)) == (turns, holes, 0.0)


@pytest.mark.parametrize(
    ("degrees", "circle", "turns", "holes"),
    [
        # Machinery's Handbook 1916, angular indexing: 1 degree, and a third of a degree.
        (1, 18, 0, 2),
        (1, 27, 0, 3),
        (1 / 3, 27, 0, 1),
        # Simple indexing on a dividing head, worked example: 15 degrees on two circles.
        (15, 27, 1, 18),
        (15, 36, 1, 24),
        # OD1644-8: one turn of the crank is 9 degrees; 54 minutes are 2 holes on 20.
        (9, 20, 1, 0),
        (54 / 60, 20, 0, 2),
    ],
)
def test_angles(degrees: float, circle: int, turns: int, holes: int) -> None:
    found = move_on(circle, index_angle=math.radians(degrees))
    assert found[:2] == (turns, holes)
    assert found[2] == pytest.approx(0.0, abs=1e-9)


def test_twenty_four_minutes_is_one_hole_in_23_and_not_quite_exact() -> None:
    # OD1644-8: 540 / 24 gives a circle of 22.5 holes, so 23 is used; the error is 24 - 540/23 = 0.52 minutes.
    turns, holes, error = move_on(23, index_angle=math.radians(24 / 60))
    assert (turns, holes) == (0, 1)
    assert math.degrees(error) * 60 == pytest.approx(-0.52, abs=0.005)


def test_the_plate_taken_when_none_is_given_is_the_one_in_print() -> None:
    # OD1644-8, figure 11, index plate and sector: first and second side.
    first = (24, 25, 28, 30, 34, 37, 38, 39, 41, 42, 43)
    second = (46, 47, 49, 51, 53, 54, 57, 58, 59, 62, 66)
    assert (*first, *second) == CIRCLES
