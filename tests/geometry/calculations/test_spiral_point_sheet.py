"""The spiral point of a gun tap, found again from a drawing of its land by lines that cross."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

SHEET = calculation("spiral-point")
TAP: dict[str, Given] = {
    "diameter": 10.0,
    "pitch": 1.5,
    "spiral_point_angle": math.radians(10),
    "chamfer_threads": 4.0,
}
ANGLES = st.floats(math.radians(3), math.radians(45))


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks if check.state in ("watch", "stop")]


def drawn(angle: float, depth: float, stock: float, cut: float) -> tuple[float, float]:
    """Depth at the front and length up the flute of a gash, as a line moved by its infeed; the face is y = 0.

    The line is held by one point and the vector along it; the infeed goes square to that, up into the land.
    """
    along = (math.cos(angle), -math.sin(angle))
    point = (stock * math.sin(angle), depth + stock * math.cos(angle))
    to_front = (cut - point[0]) / along[0]
    to_face = (0.0 - point[1]) / along[1]
    return point[1] + to_front * along[1], point[0] + to_face * along[0] - cut


@given(ANGLES, st.floats(0.5, 3.0), st.floats(0.0, 0.5), st.floats(0.0, 0.4))
def test_depth_and_length_are_those_of_a_line_that_crosses_front_and_face(
    angle: float, depth: float, stock: float, cut: float
) -> None:
    values: dict[str, Given] = {
        **TAP,
        "spiral_point_angle": angle,
        "spiral_point_depth": depth,
        "stock_per_sharpening": stock + 0.001,
        "cut_back": cut,
    }
    found = run(SHEET, values).outputs
    deep, long = drawn(angle, depth, stock + 0.001, cut)
    assert found["spiral_point_depth_after"] == pytest.approx(max(deep, 0.0), rel=1e-9, abs=1e-12)
    assert found["spiral_point_length_after"] == pytest.approx(max(long, 0.0), rel=1e-9, abs=1e-9)


@given(ANGLES, st.floats(0.01, 0.3))
def test_cut_back_as_told_the_ground_gash_is_as_long_as_before(angle: float, stock: float) -> None:
    values: dict[str, Given] = {**TAP, "spiral_point_angle": angle, "stock_per_sharpening": stock}
    back = run(SHEET, values).outputs["cut_back_wanted"]
    found = run(SHEET, {**values, "cut_back": back}).outputs
    assert found["spiral_point_length_after"] == pytest.approx(found["spiral_point_length"], rel=1e-9)
    assert found["spiral_point_depth_after"] == pytest.approx(found["spiral_point_depth"], rel=1e-9)


def test_four_threads_of_chamfer_and_two_more_are_nine_millimetres_of_gash() -> None:
    # By hand: 6 * 1.5 = 9, and 9 tan 10 = 9 * 0.176327 = 1.58694. Derived.
    found = run(SHEET, TAP).outputs
    assert found["spiral_point_length"] == pytest.approx(9.0, rel=1e-12)
    assert found["spiral_point_depth"] == pytest.approx(1.58694, abs=1e-5)
    assert found["threads_beyond"] == pytest.approx(2.0, rel=1e-12)


def test_a_measured_depth_tells_how_far_the_gash_goes() -> None:
    # By hand: 1.5 / tan 10 = 8.5069; less the chamfer of 6, over the pitch, 1.6713 threads. Derived.
    found = run(SHEET, {**TAP, "spiral_point_depth": 1.5})
    assert found.outputs["threads_beyond"] == pytest.approx(1.6713, abs=1e-4)
    assert states(found) == []


@pytest.mark.parametrize("beyond", [1.0, 2.0])
def test_one_and_two_threads_past_the_chamfer_are_as_printed(beyond: float) -> None:
    # T.O. 1-1A-9, 3-197: one full thread past the chamfer; a tool supplier's tech talk: about two.
    assert states(run(SHEET, {**TAP, "threads_beyond": beyond})) == []


def test_a_gash_that_ends_in_the_chamfer_and_one_that_goes_far_past_it_are_watched() -> None:
    assert states(run(SHEET, {**TAP, "threads_beyond": 0.5})) == ["watch"]
    assert states(run(SHEET, {**TAP, "threads_beyond": 4.0})) == ["watch"]
    assert states(run(SHEET, {**TAP, "cut_back": 9.5})) == ["stop"]


def test_a_land_that_is_ground_away_at_the_front_is_told() -> None:
    # By hand: the chord of an arc of 4 on a circle of 10 is 10 sin(0.4) = 3.89418; less 1.58694. Derived.
    wide = run(SHEET, {**TAP, "land_width": 4.0})
    assert wide.outputs["front_land"] == pytest.approx(3.89418 - 1.58694, abs=1e-4)
    assert states(wide) == []
    assert states(run(SHEET, {**TAP, "land_width": 2.5})) == ["watch"]
    assert states(run(SHEET, {**TAP, "land_width": 1.5})) == ["stop"]


def test_threads_per_inch_do_as_well_as_a_pitch() -> None:
    by_pitch = run(SHEET, {**TAP, "pitch": 1.27}).outputs
    by_count = run(
        SHEET, {**{k: v for k, v in TAP.items() if k != "pitch"}, "threads_per_inch": 20 / 25.4}
    ).outputs
    assert by_count == pytest.approx(by_pitch, rel=1e-12)


def test_an_angle_out_of_range_is_refused() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**TAP, "spiral_point_angle": math.radians(75)})
    assert [problem.key for problem in refused.value.problems] == ["spiral_point_angle"]
