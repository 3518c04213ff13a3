"""Tools from the side, and several drawings on one part of a screen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from geometry.calculation import Result
from geometry.calculations import calculation
from geometry.evaluate import run
from library.units.system import METRIC
from tui.figure.alphabet import ALPHABETS, ASCII, BLOCKS, Alphabet
from tui.figure.panel import abreast, drawings, stacked
from tui.figure.side import side_lines
from tui.view.lines import text_of, width_of

Heel = Callable[[str], Result]


def side(result: Result, columns: int, rows: int, alphabet: Alphabet = ASCII) -> list[str]:
    assert result.side is not None
    return [text_of(one) for one in side_lines(result.side, columns, rows, alphabet)]


@pytest.mark.parametrize("alphabet", ALPHABETS.values(), ids=lambda one: one.name)
def test_a_cone_names_its_places_and_says_from_where_it_is_seen(
    countersink: Result, alphabet: Alphabet
) -> None:
    text = "\n".join(side(countersink, 44, 13, alphabet))
    for word in ("smallest", "place 2", "largest", "point at the left"):
        assert word in text


def test_a_cone_widens_from_left_to_right_and_is_its_own_mirror_image(countersink: Result) -> None:
    lines = side(countersink, 60, 21, BLOCKS)[:-1]

    def rows(column: int) -> list[int]:
        return [row for row, one in enumerate(lines) if one[column : column + 1] in set("▀▄█")]

    assert rows(20)[-1] - rows(20)[0] < rows(26)[-1] - rows(26)[0]
    axis = next(row for row, one in enumerate(lines) if one[:1] in {".", "'"})
    assert abs((rows(26)[0] + rows(26)[-1]) / 2 - axis) <= 1


def test_what_nobody_measured_is_said_under_the_drawing() -> None:
    result = run(
        calculation("step-relief"),
        {
            "diameter": (6.0, 9.0, 12.0),
            "included_angle": 1.57,
            "radial_throw": 0.5,
            "axial_throw": 0.0,
            "throw_per": "turn",
        },
    )
    lines = side(result, 44, 13)
    assert "lengths of the steps as an example" in "\n".join(lines)
    assert "step 1" in "\n".join(lines)


def test_the_drawings_of_a_heel_are_tooth_and_plot(heel: Heel) -> None:
    lines = [text_of(one) for one in stacked(drawings(heel("flat"), METRIC), 37, 28, ASCII)]
    assert len(lines) <= 28
    assert any("relief drawn" in line for line in lines)
    assert any("drop below the circle" in line for line in lines)


def test_where_there_is_room_for_one_drawing_the_tooth_is_kept(heel: Heel) -> None:
    text = "\n".join(text_of(one) for one in stacked(drawings(heel("flat"), METRIC), 37, 12, ASCII))
    assert "relief drawn" in text
    assert "drop below" not in text


@pytest.mark.parametrize(("columns", "both"), [(80, True), (58, True), (57, False), (28, False)])
def test_two_drawings_stand_abreast_from_58_columns_on(heel: Heel, columns: int, both: bool) -> None:
    lines = abreast(drawings(heel("flat"), METRIC), columns, 13, ASCII)
    text = "\n".join(map(text_of, lines))
    assert "relief drawn" in text
    assert ("drop below the circle" in text) is both
    assert all(width_of(one) <= columns for one in lines)


def test_a_cone_without_a_land_is_drawn_from_the_side_alone(countersink: Result) -> None:
    assert countersink.figure is None
    assert len(drawings(countersink, METRIC)) == 1
    assert stacked([], 40, 20, ASCII) == abreast([], 40, 20, ASCII) == []
    assert stacked(drawings(countersink, METRIC), 27, 20, ASCII) == []
    assert abreast(drawings(countersink, METRIC), 80, 6, ASCII) == []


def test_a_chamfer_is_drawn_on_one_side_of_its_axis_and_twice_as_large_for_it() -> None:
    result = run(
        calculation("tap-chamfer"),
        {
            "diameter": 12.0,
            "pitch": 1.75,
            "chamfer_threads": 4.0,
            "thread_form": "iso",
            "starts": 1.0,
            "land_measured_as": "arc",
        },
    )
    lines = side(result, 60, 14)
    text = "\n".join(lines)
    for words in ("point", "first full thread", "one side of the axis"):
        assert words in text
    assert lines[-2][0] == lines[-2][-2] == "."  # the axis, at the foot of the drawing
    assert result.side is not None
    whole = side_lines(replace(result.side, one_side=False), 60, 14, ASCII)
    assert max(map(spread, lines[:-2])) > 1.5 * max(spread(text_of(one)) for one in whole[:5])


def spread(drawn: str) -> int:
    return len(drawn.strip())
