"""Tapers between measured diameters, angles and swivels. All expected numbers are derived."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString

from geometry.preconditions import GeometryError
from geometry.setting import taper

DIAMETERS = st.floats(1, 100)
RATIOS = st.floats(0, 0.5)


@given(DIAMETERS, RATIOS, st.floats(1, 100))
def test_a_side_drawn_through_both_diameters_has_the_swivel(front: float, ratio: float, share: float) -> None:
    long = share / 100 * front
    back = front - ratio * long
    side = LineString([(0.0, front / 2), (long, back / 2)])
    (x0, y0), (x1, y1) = side.coords
    drawn = math.atan2(y0 - y1, x1 - x0)
    found = taper.swivel_of_taper(taper.taper_of_diameters(front, back, long))
    assert found == pytest.approx(drawn, rel=1e-9, abs=1e-9)


@given(DIAMETERS, st.floats(0.001, 0.5), st.floats(0.01, 1))
def test_the_diameter_behind_the_front_leads_back_to_the_taper(
    front: float, ratio: float, share: float
) -> None:
    distance = share * front
    there = taper.diameter_behind(front, ratio, distance)
    assert taper.taper_of_diameters(front, there, distance) == pytest.approx(ratio, rel=1e-9)


@given(st.floats(0, 3))
def test_the_whole_angle_is_twice_the_swivel(whole: float) -> None:
    assert 2 * taper.swivel_of_taper(taper.taper_of_angle(whole)) == pytest.approx(
        whole, rel=1e-12, abs=1e-15
    )


@given(RATIOS)
def test_a_taper_the_other_way_swivels_the_other_way(ratio: float) -> None:
    assert taper.swivel_of_taper(-ratio) == -taper.swivel_of_taper(ratio)


def test_no_taper_is_no_swivel() -> None:
    assert taper.swivel_of_taper(taper.taper_of_diameters(10.0, 10.0, 100.0)) == 0


def test_a_taper_that_has_come_to_a_point_is_told_where() -> None:
    with pytest.raises(GeometryError) as refused:
        taper.diameter_behind(10.0, 0.5, 20.0)
    assert refused.value.key == "distance_from_front"
    assert "20 mm behind the front" in str(refused.value)


@pytest.mark.parametrize(
    ("call", "key"),
    [
        (lambda: taper.taper_of_diameters(0.0, 1.0, 1.0), "diameter"),
        (lambda: taper.taper_of_diameters(1.0, 0.0, 1.0), "back_diameter"),
        (lambda: taper.taper_of_diameters(1.0, 1.0, 0.0), "taper_length"),
        (lambda: taper.swivel_of_taper(math.nan), "taper_ratio"),
        (lambda: taper.taper_of_angle(math.pi), "taper_angle"),
        (lambda: taper.diameter_behind(1.0, 0.1, -1.0), "distance_from_front"),
    ],
)
def test_what_no_taper_can_be_is_refused_by_name(call: object, key: str) -> None:
    with pytest.raises(GeometryError) as refused:
        call()  # type: ignore[operator]
    assert refused.value.key == key
