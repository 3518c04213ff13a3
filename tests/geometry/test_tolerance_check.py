"""What the plus or minus of a measurement can turn an answer into."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.tolerance_check import tolerance_check

DROP = calculation("relief-drop")
SPEED = calculation("wheel-speed")
# A flat of 8 degrees on 12 mm is back on the circle after an arc of D a = 1.67552 mm.
FLAT: dict[str, Given] = {
    "diameter": 12.0,
    "relief_angle": math.radians(8),
    "land_width": 1.6,
    "relief_form": "flat",
}


def test_a_heel_that_clears_by_less_than_the_caliper_is_off_is_doubted() -> None:
    assert tolerance_check(DROP, FLAT, {"land_width": 0.07}) is None
    found = tolerance_check(DROP, FLAT, {"land_width": 0.08})
    assert found is not None
    assert found.state == "watch"
    assert str(found.sentence).startswith(
        "Within your +/- this may be so: The flat, carried on to the heel, stands "
    )


def test_two_measurements_that_are_harmless_alone_are_tried_together() -> None:
    apart = {"land_width": 0.05, "relief_angle": math.radians(0.25)}
    for key, width in apart.items():
        assert tolerance_check(DROP, FLAT, {key: width}) is None
    assert tolerance_check(DROP, FLAT, apart) is not None


def test_an_answer_that_is_stopped_already_needs_no_doubt() -> None:
    assert tolerance_check(DROP, FLAT | {"land_width": 2.0}, {"land_width": 0.5}) is None


def test_a_wheel_near_its_rating_is_doubted_for_the_diameter_measured() -> None:
    # 150 mm at 3800 a minute is 29.85 m/s; with 152 mm it is 30.24 m/s.
    values: dict[str, Given] = {
        "wheel_diameter": 150.0,
        "rotational_speed": 3800 * 2 * math.pi / 60,
        "rated_speed": 30_000.0,
    }
    assert tolerance_check(SPEED, values, {"wheel_diameter": 0.5}) is None
    found = tolerance_check(SPEED, values, {"wheel_diameter": 2.0})
    assert found is not None
    assert "over its rating" in str(found.sentence)


def test_a_corner_where_no_tool_exists_is_passed_over() -> None:
    assert tolerance_check(DROP, FLAT | {"land_width": 0.5}, {"land_width": 0.6}) is None


@given(st.floats(0.5, 1.67), st.floats(0.0, 1.0))
def test_a_doubt_is_there_just_when_the_widest_land_within_the_plus_or_minus_rubs(
    land: float, width: float
) -> None:
    values = FLAT | {"land_width": land}
    widest = run(DROP, values | {"land_width": land + width}).outputs["heel_drop"]
    found = tolerance_check(DROP, values, {"land_width": width})
    assert (found is not None) is (widest < 0)


def test_six_measurements_are_moved_all_alike(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("geometry.tolerance_check.MOST_INPUTS", 1)
    assert tolerance_check(DROP, FLAT, {"land_width": 0.2, "diameter": 0.001}) is not None
