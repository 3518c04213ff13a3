"""What a sharpening takes away, found again on a drawn profile."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point

from geometry.preconditions import GeometryError
from geometry.tooth.land import land_angle
from geometry.upkeep.on_end import End
from geometry.upkeep.on_face import Face
from geometry.upkeep.sharpening import (
    MOST,
    ground_back,
    most,
    radius_lost,
    size_lost_on_end,
    taper_from_book,
)

reliefs = st.floats(math.radians(1), math.radians(20))


def radius_on(profile: LineString, angle: float, radius: float) -> float:
    """Where a face through the axis, turned back by ``angle``, meets a drawn profile."""
    ray = LineString([(0.0, 0.0), (2 * radius * math.cos(angle), -2 * radius * math.sin(angle))])
    met = ray.intersection(profile)
    assert isinstance(met, Point)
    return math.hypot(met.x, met.y)


def spiral(radius: float, relief: float, upto: float) -> LineString:
    """A cam that falls evenly behind the edge at (radius, 0), the tooth cutting toward +y."""
    fall = radius * math.tan(relief)
    angles = [upto * i / 4000 for i in range(4001)]
    return LineString(
        [((radius - fall * a) * math.cos(a), -(radius - fall * a) * math.sin(a)) for a in angles]
    )


def facet(radius: float, relief: float, long: float) -> LineString:
    """A straight facet from the edge at (radius, 0), leaning inward from the tangent by the relief."""
    return LineString([(radius, 0.0), (radius - long * math.sin(relief), -long * math.cos(relief))])


@given(reliefs, st.floats(2.0, 50.0), st.floats(0.01, 0.5))
def test_a_cam_ground_back_has_the_diameter_that_the_drawn_spiral_has_there(
    relief: float, diameter: float, angle: float
) -> None:
    drawn = radius_on(spiral(diameter / 2, relief, 0.6), angle, diameter / 2)
    edge = ground_back(angle, diameter, relief, 0.6, "eccentric")
    assert edge.diameter / 2 == pytest.approx(drawn, rel=1e-6)
    assert edge.land_angle == pytest.approx(0.6 - angle)


@given(reliefs, st.floats(2.0, 50.0), st.floats(0.01, 0.3))
def test_a_flat_ground_back_has_the_diameter_and_the_relief_of_the_drawn_facet(
    relief: float, diameter: float, angle: float
) -> None:
    radius = diameter / 2
    drawn = radius_on(facet(radius, relief, radius), angle, radius)
    edge = ground_back(angle, diameter, relief, 0.35, "flat")
    assert edge.diameter / 2 == pytest.approx(drawn, rel=1e-9)
    # The facet keeps its direction; the tangent of the circle has turned with the edge.
    tangent = (-math.sin(angle), -math.cos(angle))
    direction = (-math.sin(relief), -math.cos(relief))
    sine = tangent[0] * direction[1] - tangent[1] * direction[0]
    assert edge.relief_angle == pytest.approx(-math.asin(sine), abs=1e-12)


@given(reliefs, st.floats(2.0, 50.0), st.floats(0.001, 0.4))
def test_a_cam_loses_the_stock_times_the_tangent_of_its_relief(
    relief: float, diameter: float, stock: float
) -> None:
    edge = ground_back(2 * stock / diameter, diameter, relief, 1.0, "eccentric")
    assert diameter - edge.diameter == pytest.approx(2 * radius_lost(stock, relief), rel=1e-9)


@given(reliefs, st.floats(2.0, 50.0), st.floats(0.01, 0.3))
def test_relief_of_a_cam_grows_as_its_slope_against_the_smaller_circle(
    relief: float, diameter: float, angle: float
) -> None:
    edge = ground_back(angle, diameter, relief, 0.3, "eccentric")
    behind = ground_back(angle + 1e-6, diameter, relief, 0.4, "eccentric")
    slope = (edge.diameter - behind.diameter) / (edge.diameter * 1e-6)
    assert math.tan(edge.relief_angle) == pytest.approx(slope, rel=1e-6)


def test_two_steps_back_are_one_step_of_twice_the_angle_for_a_flat() -> None:
    once = ground_back(0.05, 12.0, 0.2, 0.3, "flat")
    twice = ground_back(0.05, once.diameter, once.relief_angle, once.land_angle, "flat")
    at_once = ground_back(0.1, 12.0, 0.2, 0.3, "flat")
    assert twice.diameter == pytest.approx(at_once.diameter, rel=1e-14)
    assert twice.relief_angle == pytest.approx(at_once.relief_angle, rel=1e-14)


def test_no_relief_loses_no_size_and_no_stock_loses_nothing() -> None:
    assert ground_back(0.2, 12.0, 0.0, 0.3, "eccentric").diameter == 12.0
    assert ground_back(0.0, 12.0, 0.1, 0.3, "flat").diameter == 12.0
    assert radius_lost(0.0, 0.3) == 0.0


def test_more_than_the_land_cannot_be_ground_away() -> None:
    with pytest.raises(GeometryError, match="no land"):
        ground_back(0.4, 12.0, 0.1, 0.3, "eccentric")
    with pytest.raises(GeometryError, match="eccentric or flat"):
        ground_back(0.1, 12.0, 0.1, 0.3, "hollow")


@given(st.floats(0.0, 50.0), st.floats(0.0, 0.1))
def test_the_end_loses_what_the_cone_of_the_taper_loses(stock: float, taper: float) -> None:
    body = LineString([(0.0, 10.0), (100.0, 10.0 - 100.0 * taper / 2)])
    there = body.interpolate(stock * math.sqrt(1 + (taper / 2) ** 2))
    assert size_lost_on_end(stock, taper) == pytest.approx(2 * (10.0 - there.y), rel=1e-9, abs=1e-9)


def test_back_taper_of_a_book_is_over_a_hundred_millimetres() -> None:
    assert size_lost_on_end(25.0, taper_from_book(0.08)) == pytest.approx(0.02)


@given(st.integers(0, 5000))
def test_the_most_that_is_allowed_is_found(limit: int) -> None:
    assert most(lambda count: count <= limit) == limit


def test_the_most_is_zero_where_nothing_is_allowed_and_stops_where_all_is() -> None:
    assert most(lambda count: False) == 0
    assert most(lambda count: True) == MOST


teeth = st.builds(
    Face,
    diameter=st.floats(1.0, 50.0),
    relief_angle=reliefs,
    form=st.sampled_from(["eccentric", "flat"]),
    stock=st.floats(0.02, 0.5),
    turned=st.floats(0.05, 0.6),
    measured_as=st.sampled_from(["arc", "chord"]),
    least_land=st.floats(0.0, 2.0),
    least_diameter=st.floats(0.0, 50.0),
)


@given(teeth)
def test_once_a_limit_is_passed_every_later_sharpening_passes_one_too(tooth: Face) -> None:
    passed = [bool(tooth.limits_passed(times)) for times in range(40)]
    assert passed == sorted(passed)


@given(teeth)
def test_the_count_is_that_of_sharpening_one_by_one_until_a_limit_is_passed(tooth: Face) -> None:
    one_by_one = 0
    while not tooth.limits_passed(one_by_one + 1):
        one_by_one += 1
    assert most(lambda times: not tooth.limits_passed(times)) == one_by_one


def test_limits_are_named_by_what_they_limit() -> None:
    land = land_angle(2.0, 12.0, "arc")
    cam = Face(12.0, math.radians(4), "eccentric", 0.2, land, "arc", 1.0, 11.9)
    # Derived: 0.2 tan 4 deg off the radius each time is 0.02797 on the diameter; 11.9 is passed by the fourth,
    # a land of 1 mm by the fifth or sixth.
    assert cam.limits_passed(3) == ()
    assert cam.limits_passed(4) == ("size",)
    assert cam.limits_passed(6) == ("land", "size")
    flat = Face(12.0, math.radians(8), "flat", 0.2, land_angle(1.2, 12.0, "arc"), "arc", 0.0, 0.0)
    # Derived: 2 (8 deg - 3 x 0.2 / 6 rad) is less than what is left of a land of 0.2 rad.
    assert flat.limits_passed(2) == ()
    assert flat.limits_passed(3) == ("heel",)


def test_a_limit_that_is_just_reached_is_not_passed() -> None:
    tool = End(diameter=12.0, stock=0.1, taper=0.2, usable_length=0.5, least_diameter=11.9)
    assert tool.limits_passed(5) == ()
    assert tool.limits_passed(6) == ("length", "size")


def test_a_taper_that_eats_the_tool_is_a_limit_of_size() -> None:
    assert End(1.0, 1.0, 0.5, 10.0, 0.0).limits_passed(2) == ("size",)
