"""What cannot belong to a tool is complained of, what tools have is not."""

from __future__ import annotations

import math

import pytest

from geometry import plausible
from geometry.calculation import Check


def states(found: tuple[Check, ...]) -> list[str]:
    return [check.state for check in found]


@pytest.mark.parametrize(
    ("degrees", "expected"),
    [(0.0, []), (0.008, ["watch"]), (0.49, ["watch"]), (0.5, []), (8, []), (45, []), (45.1, ["watch"])],
)
def test_a_relief_is_from_half_a_degree_to_45(degrees: float, expected: list[str]) -> None:
    assert states(plausible.relief_plausible(math.radians(degrees), "land")) == expected


def test_the_surface_of_a_doubtful_relief_is_named() -> None:
    assert "thread land" in str(plausible.relief_plausible(0.001, "thread-land")[0].sentence)
    assert states(plausible.relief_plausible(0.001, "no such surface")) == ["watch"]


@pytest.mark.parametrize(
    ("degrees", "expected"),
    [(-31, ["watch"]), (-30, []), (0, []), (40, []), (40.32, ["watch"])],
)
def test_a_rake_is_from_minus_30_to_40(degrees: float, expected: list[str]) -> None:
    assert states(plausible.rake_plausible(math.radians(degrees))) == expected


# BS 84 and ISO 261: the coarsest threads there are for their size, in mm.
@pytest.mark.parametrize(
    ("diameter", "pitch"), [(25.4 / 16, 25.4 / 60), (1.0, 0.25), (1.854, 25.4 / 64), (64, 6)]
)
def test_the_coarsest_standard_threads_are_believed(diameter: float, pitch: float) -> None:
    assert plausible.pitch_plausible(pitch, diameter) == ()


def test_a_pitch_of_13_mm_on_a_half_inch_asks_for_threads_per_inch() -> None:
    (found,) = plausible.pitch_plausible(13.0, 12.7)
    assert found.state == "stop"
    # Derived: an inch over thirteen, 25.4 / 13 = 1.954; and 0.3 x 12.7 = 3.81.
    assert "1.954 mm" in str(found.sentence)
    assert "3.81 mm or less" in str(found.sentence)


def test_threads_per_inch_are_not_offered_where_they_would_not_fit_either() -> None:
    (found,) = plausible.pitch_plausible(2.0, 5.0)
    assert "inch" not in str(found.sentence)


@pytest.mark.parametrize(
    ("measured", "expected"),
    [(0.023 * 25.4, ["stop"]), (12.7 * 25.4, ["stop"]), (11.0, ["watch"]), (11.5, []), (12.8, [])],
)
def test_a_reading_far_from_half_an_inch_is_doubted(measured: float, expected: list[str]) -> None:
    assert states(plausible.diameter_plausible(measured, 12.7)) == expected


@pytest.mark.parametrize(
    ("degrees", "flutes", "expected"),
    [(80, 4, []), (90, 4, ["stop"]), (170, None, []), (190, None, ["watch"]), (300, 1, [])],
)
def test_a_land_has_room_between_two_edges(degrees: float, flutes: float | None, expected: list[str]) -> None:
    assert states(plausible.land_plausible(math.radians(degrees), flutes)) == expected


# 120 to 135 and 47 to 55 degrees are printed; see the tests of published drill points.
@pytest.mark.parametrize(
    ("degrees", "expected"),
    [
        (10, ["stop"]),
        (170, ["stop"]),
        (40, ["watch"]),
        (90, ["watch"]),
        (45, []),
        (55, []),
        (120, []),
        (135, []),
    ],
)
def test_a_chisel_edge_lies_as_usual_whichever_way_it_is_counted(degrees: float, expected: list[str]) -> None:
    assert states(plausible.chisel_plausible(math.radians(degrees))) == expected


def test_more_relief_near_the_centre_lays_the_chisel_edge_sharper() -> None:
    # Derived: flanks z = -x cot(59) - y t on either side meet in a line at atan(cot(59) / t) to the lip.
    def lies(relief: float) -> float:
        return math.atan(1 / math.tan(math.radians(59)) / math.tan(math.radians(relief)))

    (much,) = plausible.chisel_plausible(lies(35))
    (little,) = plausible.chisel_plausible(lies(12))
    assert "less" in str(much.sentence)
    assert "more" in str(little.sentence)
    assert math.degrees(lies(46.2)) == pytest.approx(30, abs=0.1)
