"""Index moves, as a whole."""

from __future__ import annotations

import math
from itertools import accumulate

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run


def moves(**values: Given) -> Result:
    return run(calculation("index-moves"), values)


def degrees(*angles: float) -> tuple[float, ...]:
    return tuple(math.radians(angle) for angle in angles)


def total_holes(result: Result, ratio: int) -> float:
    """All moves of the table together, in turns of the spindle."""
    return math.fsum(
        (row.values["index_turns"] + row.values["index_holes"] / row.values["index_circle"]) / ratio
        for row in result.rows
        if "index_turns" in row.values
    )


@given(
    st.integers(1, 60),
    st.sampled_from([1, 24, 40, 60, 90]),
    st.lists(st.integers(2, 80).map(float), min_size=1, max_size=6),
)
def test_the_moves_of_the_table_go_once_round(flutes: int, ratio: int, plates: list[float]) -> None:
    found = moves(flutes=float(flutes), index_ratio=float(ratio), plate_holes=tuple(plates))
    if found.rows[0].label == "every move":
        first = found.rows[0].values
        turned = (first["index_turns"] + first["index_holes"] / first["index_circle"]) / ratio
        assert flutes * turned == pytest.approx(1.0)
        assert found.outputs["index_error"] == 0
    else:
        assert len(found.rows) == flutes
        assert total_holes(found, ratio) == pytest.approx(1.0)


@given(
    st.integers(1, 60),
    st.sampled_from([1, 40, 60]),
    st.lists(st.integers(2, 80).map(float), min_size=1, max_size=6),
)
def test_no_circle_of_the_shop_is_nearer_than_the_one_chosen(
    flutes: int, ratio: int, plates: list[float]
) -> None:
    def worst(*holes: float) -> float:
        found = moves(flutes=float(flutes), index_ratio=float(ratio), plate_holes=holes).outputs
        return abs(found.get("worst_index_error", found["index_error"]))

    for plate in plates:
        assert worst(*plates) <= worst(plate) + 1e-12


def test_repeating_the_first_move_adds_its_error_up() -> None:
    found = moves(flutes=7.0, plate_holes=(20.0,), diameter=20.0)
    # Derived: 40/7 turns on 20 holes is 114.286 holes; 114 repeated seven times falls 2 holes of 800 short.
    assert found.outputs["accumulated_error"] == pytest.approx(-2 * 2 * math.pi / 800)
    # The table never strays by more than half a hole, here 3/7 of one.
    assert abs(found.outputs["worst_index_error"]) == pytest.approx(3 / 7 * 2 * math.pi / 800)
    assert found.outputs["worst_index_error_length"] == pytest.approx(10 * found.outputs["worst_index_error"])
    assert found.outputs["index_error_length"] == pytest.approx(10.0 * found.outputs["index_error"])


def test_beside_each_move_stands_its_own_error() -> None:
    found = moves(flutes=7.0, plate_holes=(20.0,), index_ratio=40.0)
    # Derived: the first place is 114 2/7 holes and is met at 114, the second 228 4/7 at 229; a hole is 0.45 degrees.
    first, second = (math.degrees(row.values["index_error"]) for row in found.rows[:2])
    assert first == pytest.approx(-2 / 7 * 0.45)
    assert second == pytest.approx(3 / 7 * 0.45)
    assert math.degrees(found.outputs["index_error"]) == pytest.approx(first)
    assert math.degrees(abs(found.outputs["worst_index_error"])) == pytest.approx(3 / 7 * 0.45)


def test_a_head_that_nobody_named_is_said_to_be_assumed() -> None:
    assumed, given = moves(flutes=4.0), moves(flutes=4.0, index_ratio=40.0)
    assert assumed.outputs["index_ratio"] == 40
    assert "40 turns of the crank to one of the spindle is assumed" in str(assumed.checks[1].sentence)
    assert "index_ratio" not in given.outputs
    assert {key: value for key, value in assumed.outputs.items() if key != "index_ratio"} == given.outputs
    assert not any("spindle" in str(check.sentence) for check in given.checks)


def test_unequal_spacing_is_counted_from_the_first_edge() -> None:
    spacing = degrees(58.1, 62.3, 57.2, 63.4, 59.5, 59.5)
    found = moves(flutes=6.0, spacing_angles=spacing)
    reached = list(accumulate(row.values["index_angle"] for row in found.rows))
    for there, place, row in zip(reached, accumulate(spacing), found.rows, strict=True):
        assert there - place == pytest.approx(row.values["index_error"], abs=1e-8)
    assert [row.label for row in found.rows][-1] == "edge 6 to 1"


def test_unequal_spacing_that_the_plates_can_follow_is_exact() -> None:
    found = moves(flutes=4.0, spacing_angles=degrees(84, 96, 87, 93))
    assert found.outputs["index_error"] == 0
    assert [check.state for check in found.checks] == ["pass", "note", "note"]
    # 9 degrees to a turn of the crank: 84 is 9 1/3 turns and 87 is 9 2/3, so every circle divisible by 3 will do.
    exact = [row.values["index_circle"] for row in found.rows if row.label == "also exact"]
    assert {found.outputs["index_circle"], *exact} == {24, 30, 39, 42, 51, 54, 57, 66}


def test_one_angle_is_one_move() -> None:
    found = moves(index_angle=math.radians(15), plate_holes=(18.0, 20.0, 24.0, 27.0))
    assert (found.outputs["index_turns"], found.outputs["index_holes"], found.outputs["index_circle"]) == (
        1,
        18,
        27,
    )
    assert found.rows[0].label == "the move"
    assert "accumulated_error" not in found.outputs
    assert (
        str(found.checks[0].sentence) == "The angle falls on a hole of the circle of 27: the move is exact."
    )


def test_whole_turns_need_no_circle() -> None:
    found = moves(flutes=4.0)
    assert (found.outputs["index_turns"], found.outputs["index_holes"]) == (10, 0)
    assert "on any circle" in str(found.checks[0].sentence)


def test_a_circle_given_twice_counts_once() -> None:
    once, twice = (moves(flutes=6.0, plate_holes=plates) for plates in ((18.0, 39.0), (18.0, 39.0, 18.0)))
    assert once.rows == twice.rows


def test_too_coarse_a_circle_is_stopped() -> None:
    assert moves(flutes=60.0, index_ratio=1.0, plate_holes=(7.0,)).checks[0].state == "stop"
    assert moves(index_angle=math.radians(0.01), plate_holes=(20.0,)).checks[0].state == "stop"
    fine = moves(index_angle=math.radians(0.7), index_ratio=1.0, plate_holes=(20.0,)).checks[0]
    # Derived: 360 / 0.7 is 514.3 holes, and only 515 have a hole for less than the angle.
    assert "515 holes" in str(fine.sentence)
    tiny = moves(index_angle=math.radians(0.001), plate_holes=(20.0,)).checks[0]
    assert "scale" in str(tiny.sentence)


@pytest.mark.parametrize(
    ("values", "says"),
    [
        ({"flutes": 3.0, "spacing_angles": degrees(120, 240)}, "each of the 3 edges"),
        ({"flutes": 3.0, "spacing_angles": degrees(120, 120, 119)}, "1 deg short"),
        ({"index_angle": 1.0, "spacing_angles": degrees(180, 180)}, "together with flutes"),
        ({"index_angle": 0.0}, "more than zero"),
        ({}, "flutes or index_angle"),
        ({"flutes": 3.0, "plate_holes": (20.5,)}, "whole number"),
    ],
)
def test_what_cannot_be_indexed_is_refused(values: dict[str, Given], says: str) -> None:
    with pytest.raises(Refusal, match=says):
        moves(**values)


def test_a_list_of_angles_of_the_wrong_length_is_told_beside_a_plate_that_makes_no_sense() -> None:
    with pytest.raises(Refusal) as refused:
        run(calculation("index-moves"), {"flutes": 4.0, "spacing_angles": (1.0, 2.0), "plate_holes": -1.0})
    assert [one.key for one in refused.value.problems] == ["plate_holes", "spacing_angles"]
