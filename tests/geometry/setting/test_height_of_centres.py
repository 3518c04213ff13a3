"""The height between the centres, against circles and tangents. All expected numbers are derived."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq
from shapely import LineString, Point
from shapely.affinity import rotate

from geometry.preconditions import GeometryError
from geometry.setting.height import relief_of_height, rule_height, setting_height

RELIEFS = st.floats(0.001, 0.7)
DIAMETERS = st.floats(1, 400)


def test_a_straight_wheel_of_150_and_seven_degrees_give_the_check_values() -> None:
    assert setting_height(math.radians(7), 150.0) == pytest.approx(9.1402, abs=5e-5)
    assert rule_height(math.radians(7), 150.0) == pytest.approx(9.1350, abs=5e-5)


def test_the_check_value_is_found_again_by_searching_the_rim_of_the_wheel() -> None:
    # How far below its axis does the rim of the wheel lean seven degrees from upright?
    def lean(depth: float) -> float:
        step = 1e-6
        out = [math.sqrt(75.0**2 - (depth + move) ** 2) for move in (-step, step)]
        return math.atan2(out[0] - out[1], 2 * step) - math.radians(7)

    assert brentq(lean, 0.1, 70.0, xtol=1e-12) == pytest.approx(9.1402, abs=1e-4)


@given(RELIEFS, DIAMETERS)
def test_a_wheel_that_much_higher_leans_off_the_tool_by_the_relief(relief: float, wheel: float) -> None:
    # The edge at the height of the tool's axis, where the circle of the tool stands upright; the wheel's
    # axis higher by the height. The radius of the wheel to the edge then leans by the relief.
    height = setting_height(relief, wheel)
    level = LineString([(0, 0), (wheel, 0)])
    radius = LineString([(0, 0), (math.sqrt((wheel / 2) ** 2 - height**2), -height)])
    turned = rotate(level, -relief, origin=(0, 0), use_radians=True)
    assert turned.distance(Point(radius.coords[1])) == pytest.approx(0, abs=1e-9 * wheel)


@given(RELIEFS, DIAMETERS)
def test_a_height_leads_back_to_its_relief(relief: float, diameter: float) -> None:
    assert relief_of_height(setting_height(relief, diameter), diameter) == pytest.approx(relief, rel=1e-12)


@given(DIAMETERS)
def test_no_relief_is_no_height(diameter: float) -> None:
    assert setting_height(0.0, diameter) == rule_height(0.0, diameter) == relief_of_height(0.0, diameter) == 0


@given(st.floats(1e-9, 1e-4), DIAMETERS)
def test_small_reliefs_need_no_sine(relief: float, diameter: float) -> None:
    assert setting_height(relief, diameter) == pytest.approx(relief * diameter / 2, rel=1e-8)


@given(st.floats(0.0, math.radians(15)), DIAMETERS)
def test_the_shop_rule_keeps_within_a_hundredth_up_to_fifteen_degrees(relief: float, diameter: float) -> None:
    assert rule_height(relief, diameter) == pytest.approx(setting_height(relief, diameter), rel=0.01)


def test_beyond_fifteen_degrees_the_shop_rule_asks_for_too_much() -> None:
    assert rule_height(math.radians(30), 100.0) > setting_height(math.radians(30), 100.0) * 1.04


@pytest.mark.parametrize(
    ("call", "key"),
    [
        (lambda: setting_height(-0.1, 10.0), "relief_angle"),
        (lambda: setting_height(0.1, 0.0), "diameter"),
        (lambda: relief_of_height(5.0, 10.0), "wheel_head_height"),
        (lambda: relief_of_height(-1.0, 10.0), "wheel_head_height"),
        (lambda: relief_of_height(math.nan, 10.0), "wheel_head_height"),
        (lambda: rule_height(math.inf, 10.0), "relief_angle"),
    ],
)
def test_what_no_setting_can_be_is_refused_by_name(call: object, key: str) -> None:
    with pytest.raises(GeometryError) as refused:
        call()  # type: ignore[operator]
    assert refused.value.key == key
