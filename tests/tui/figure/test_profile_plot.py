"""The plot of the drop: five stations of the indicator, their readings in the reader's units, the circle as its zero."""

from __future__ import annotations

from collections.abc import Callable
from itertools import pairwise

import pytest

from geometry.calculation import Result
from geometry.figure import Curve, Figure
from library.units.system import INCH, METRIC, Display
from tui.figure.alphabet import ALPHABETS, ASCII, Alphabet
from tui.figure.profile import STATION, STATION_NAMES, profile_lines
from tui.view.lines import text_of

Heel = Callable[[str], Result]
every_alphabet = pytest.mark.parametrize("alphabet", ALPHABETS.values(), ids=lambda one: one.name)


def plot(
    result: Result, columns: int, rows: int, display: Display = METRIC, alphabet: Alphabet = ASCII
) -> list[str]:
    assert result.figure is not None
    return [
        text_of(one)
        for one in profile_lines(result.figure, result.stations, display, columns, rows, alphabet)
    ]


@every_alphabet
@pytest.mark.parametrize("columns", [28, 40, 60, 100])
def test_every_station_is_marked_once_and_named(heel: Heel, columns: int, alphabet: Alphabet) -> None:
    lines = plot(heel("eccentric"), columns, 12, alphabet=alphabet)
    names = next(line for line in lines if "edge" in line)
    assert names.split() == list(STATION_NAMES)
    drawn = lines[1 : lines.index(names)]
    assert sum(line.count(STATION) for line in drawn) == 5


def test_the_readings_are_those_of_the_indicator_in_the_reader_s_units(heel: Heel) -> None:
    # Derived: 12 mm, 8 degrees, an even cam over an arc of 2 mm falls 2 tan 8 = 0.28108 mm at the heel.
    assert "0.000 mm 0.070 mm 0.141 mm 0.211 mm 0.281 mm" in " ".join(
        plot(heel("eccentric"), 60, 12)[-4].split()
    )
    inches = " ".join(" ".join(plot(heel("eccentric"), 60, 12, INCH)).split())
    assert "0.0000 in 0.0028 in 0.0055 in 0.0083 in 0.0111 in" in inches


def test_where_units_have_no_room_they_stand_over_the_plot(heel: Heel) -> None:
    lines = plot(heel("eccentric"), 36, 12)
    assert lines[0].split() == ["drop", "below", "the", "circle,", "mm"]
    assert "0.000 0.070 0.141 0.211 0.281" in " ".join(" ".join(lines).split())


def test_the_narrowest_plot_keeps_edge_middle_and_heel(heel: Heel) -> None:
    lines = plot(heel("eccentric"), 28, 9, INCH)
    assert any(line.split() == ["0.0000", "0.0055", "0.0111"] for line in lines)


def test_a_heel_that_stands_proud_lies_above_the_circle_and_reads_below_zero(heel: Heel) -> None:
    lines = plot(heel("flat"), 44, 12)
    circle = next(place for place, line in enumerate(lines) if line.startswith((". .", "- -", "' '")))
    heel_row = next(place for place, line in enumerate(lines[1:], 1) if STATION in line)
    assert heel_row < circle
    assert any("PROUD" in line for line in lines)
    assert any("^" in line for line in lines)
    assert any(
        "-0.055" in line for line in lines
    )  # checked against a polygon in the tests of the calculation


def test_stations_of_a_cam_throw_evenly_from_left_to_right(heel: Heel) -> None:
    lines = plot(heel("eccentric"), 60, 20)
    names = next(place for place, line in enumerate(lines) if "edge" in line)
    found = [(line.index(STATION), row) for row, line in enumerate(lines[:names]) if STATION in line]
    assert found == sorted(found)
    falls = [after[1] - before[1] for before, after in pairwise(found)]
    assert max(falls) - min(falls) <= 1


def test_a_curve_without_readings_is_read_off_where_it_is_drawn() -> None:
    figure = Figure(10.0, 0.4, (Curve("cam", ((0.0, 0.0), (0.4, 0.8))),))
    lines = [text_of(one) for one in profile_lines(figure, (), METRIC, 60, 12, ASCII)]
    assert "0.000 mm 0.200 mm 0.400 mm 0.600 mm 0.800 mm" in " ".join(" ".join(lines).split())


def test_the_angles_turned_stand_under_a_plot_with_room(heel: Heel) -> None:
    text = " ".join(" ".join(plot(heel("eccentric"), 60, 14)).split())
    assert "0.00 deg 4.77 deg 9.55 deg 14.32 deg 19.10 deg" in text  # 2 mm on 12 mm: 2 / 6 rad = 19.10 deg
