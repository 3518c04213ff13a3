"""The spiral point of a gun tap, found again from a drawing of its land by lines that cross."""

from __future__ import annotations

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Check, Given, Result, Together
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from tests.examples import OVER_ALL

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


QUARTER: dict[str, Given] = {
    "diameter": 6.35,
    "threads_per_inch": 20 / 25.4,
    "spiral_point_angle": math.radians(10),
    "chamfer_threads": 5.0,
    "threads_beyond": 1.0,
    "land_measured_as": "chord",
}
"""A 1/4-20 tap whose gash is wanted a thread past its chamfer: 6 * 1.27 = 7.62 long."""

NARROW = 0.06 * 25.4
CUT = re.compile("(?i)cut (only )?{back} off the end")


def wrong(result: Result) -> list[Check]:
    return [check for check in result.checks if check.state in ("watch", "stop")]


def cured(check: Check) -> dict[str, Given | None]:
    return dict(check.cure)


def test_no_cut_is_advised_that_takes_the_thread_past_the_chamfer_from_a_narrow_land() -> None:
    # By hand: half the land is 0.762; over 7.62 that is tan 0.1, 5.7106 deg. At 10 deg 0.762 is 4.3215 long, which is
    # 3.4028 threads, one of them past the chamfer. The gash of 7.62 tan 10 = 1.34361 wants a land of 2.68722. Derived.
    (watched,) = wrong(run(SHEET, {**QUARTER, "land_width": NARROW}))
    assert watched.state == "watch"
    assert not CUT.search(watched.sentence.template)
    assert cured(watched) == {
        "spiral_point_angle": pytest.approx(math.radians(5.7106), abs=1e-6),
        "chamfer_threads": 2.4,
    }
    assert watched.sentence.parts["needed"].value == pytest.approx(2.68722, abs=1e-5)  # type: ignore[union-attr]


def test_an_end_that_was_cut_off_such_a_tap_is_told_to_be_left_on() -> None:
    cut = {**QUARTER, "land_width": NARROW, "cut_back": 0.13 * 25.4}
    (watched,) = wrong(run(SHEET, cut))
    assert watched.cure[0] == ("cut_back", None)
    assert cured(watched)["spiral_point_angle"] == pytest.approx(math.radians(5.7106), abs=1e-6)


def test_a_little_too_narrow_a_land_asks_for_a_smaller_angle_as_far_as_the_entry_goes() -> None:
    # By hand: half of 2.286 is 1.143; over 7.62 it is tan 0.15, 8.5308 deg. Derived.
    tap = {**QUARTER, "land_width": 0.09 * 25.4, "least_spiral_point_angle": math.radians(8)}
    (watched,) = wrong(run(SHEET, tap))
    assert cured(watched)["spiral_point_angle"] == pytest.approx(math.radians(8.5308), abs=1e-6)
    (watched,) = wrong(run(SHEET, {**tap, "least_spiral_point_angle": math.radians(9)}))
    assert "spiral_point_angle" not in cured(watched)
    assert cured(watched)["chamfer_threads"] == pytest.approx(4.1)


def test_a_land_that_nothing_helps_is_called_too_narrow_for_such_a_gash() -> None:
    tap = {**QUARTER, "land_width": 0.5, "chamfer_threads": 1.0, "least_spiral_point_angle": math.radians(9)}
    # By hand: 2 * 1.27 tan 10 = 0.44787, twice that is 0.89574. Derived.
    (watched,) = wrong(run(SHEET, tap))
    assert watched.cure == ()
    assert watched.sentence.parts["needed"].value == pytest.approx(0.89574, abs=1e-5)  # type: ignore[union-attr]


def test_the_end_is_cut_off_where_a_gash_that_is_there_still_goes_past_the_chamfer_after_it() -> None:
    # By hand: 1.5 deep is 8.50692 long; half of a land of 2.8 is 1.4, 7.93979 long and 1.293 threads past a chamfer of 6.
    tap: dict[str, Given] = {
        **TAP,
        "spiral_point_depth": 1.5,
        "land_width": 2.8,
        "land_measured_as": "chord",
    }
    (watched,) = wrong(run(SHEET, tap))
    assert cured(watched) == {"cut_back": pytest.approx(8.50692 - 7.93979, abs=1e-4)}
    (watched,) = wrong(run(SHEET, {**tap, "land_width": 2.6}))
    # 1.3 deep is 7.37267 long, less than a thread past 6: the chamfer must be shorter too.
    assert {key for key, _ in watched.cure} == {"chamfer_threads", "cut_back"}


def test_a_change_that_would_leave_no_gash_is_passed_over() -> None:
    # By hand: 0.5 / cos(14) mm ground off is deeper than half of a land of 1 mm, however short the gash is.
    tap: dict[str, Given] = {
        **TAP,
        "spiral_point_angle": 0.25,
        "chamfer_threads": 1.0,
        "threads_beyond": 1.0,
        "land_measured_as": "chord",
        "land_width": 1.0,
        "stock_per_sharpening": 0.5,
    }
    (watched,) = wrong(run(SHEET, tap))
    assert watched.cure == ()


@OVER_ALL
@given(
    st.floats(math.radians(5), math.radians(20)),
    st.floats(1.0, 6.0),
    st.floats(0.5, 4.5),
    st.one_of(st.none(), st.floats(0.4, 6.0)),
    st.one_of(st.none(), st.floats(0.2, 4.0)),
    st.one_of(st.none(), st.floats(0.01, 8.0)),
    st.one_of(st.none(), st.floats(0.01, 0.6)),
)
def test_nothing_is_left_to_watch_when_a_cure_is_followed(
    slope: float,
    chamfer: float,
    beyond: float,
    land: float | None,
    depth: float | None,
    cut: float | None,
    stock: float | None,
) -> None:
    maybe = {
        "land_width": land,
        "spiral_point_depth": depth,
        "cut_back": cut,
        "stock_per_sharpening": stock,
    }
    tap: dict[str, Given] = {
        **TAP,
        "spiral_point_angle": slope,
        "chamfer_threads": chamfer,
        "threads_beyond": beyond,
        "land_measured_as": "chord",
        **{key: value for key, value in maybe.items() if value is not None},
    }
    for check in wrong(run(SHEET, tap)):
        together = [check.cure] if isinstance(check.cure, Together) else [(one,) for one in check.cure]
        for changes in together:
            followed = {key: value for key, value in {**tap, **dict(changes)}.items() if value is not None}
            assert wrong(run(SHEET, followed)) == [], (str(check.sentence), changes)
