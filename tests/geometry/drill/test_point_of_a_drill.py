"""Drill points, against points laid down on paper and lips laid out in space. Expected numbers are derived."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point
from shapely.affinity import rotate

from geometry.drill import point
from geometry.preconditions import GeometryError

POINTS = st.floats(0.4, math.pi - 0.01)
DIAMETERS = st.floats(0.5, 80)
CHISELS = st.floats(0.5, math.pi - 0.5)


@given(POINTS, DIAMETERS)
def test_the_sides_of_the_point_meet_at_its_length(whole: float, diameter: float) -> None:
    # Both sides drawn from the corners inward at half the angle to the axis; they cross on the axis.
    reach = 10 * diameter / math.sin(whole / 2)
    right = LineString(
        [(diameter / 2, 0), (diameter / 2 - reach * math.sin(whole / 2), reach * math.cos(whole / 2))]
    )
    left = LineString([(-x, y) for x, y in right.coords])
    tip = right.intersection(left)
    assert isinstance(tip, Point)
    assert tip.x == pytest.approx(0, abs=1e-7 * diameter)
    assert point.point_length(whole, diameter) == pytest.approx(tip.y, rel=1e-6, abs=1e-9)


def test_a_flat_end_has_no_point() -> None:
    assert point.point_length(math.pi, 10.0) == 0
    assert point.chisel_height(4.0, math.pi) == 0


def test_a_point_of_a_right_angle_is_as_long_as_the_radius() -> None:
    assert point.point_length(math.pi / 2, 10.0) == pytest.approx(5.0, rel=1e-15)


@given(CHISELS)
def test_both_ways_of_stating_the_chisel_edge_name_one_edge(chisel: float) -> None:
    assert point.sharp_chisel_angle(chisel) == pytest.approx(
        point.sharp_chisel_angle(math.pi - chisel), rel=1e-12
    )
    assert point.sharp_chisel_angle(chisel) <= math.pi / 2


@given(CHISELS, DIAMETERS, st.floats(0.01, 0.4))
def test_the_chisel_edge_reaches_from_lip_to_lip(chisel: float, diameter: float, share: float) -> None:
    # Seen along the axis: a line through the middle, cut off by two lips that lie a web apart.
    web = share * diameter
    edge = rotate(
        LineString([(-9 * diameter, 0), (9 * diameter, 0)]), chisel, origin=(0, 0), use_radians=True
    )
    lips = [LineString([(-9 * diameter, y), (9 * diameter, y)]) for y in (web / 2, -web / 2)]
    ends = [edge.intersection(lip) for lip in lips]
    drawn = ends[0].distance(ends[1])
    assert point.chisel_edge_length(web, chisel, diameter) == pytest.approx(drawn, rel=1e-9)
    # The lips begin on the circle through both ends of the chisel edge.
    assert drawn / 2 == pytest.approx(ends[0].distance(Point(0, 0)), rel=1e-9)


@given(CHISELS, DIAMETERS, st.floats(0.01, 0.4))
def test_a_lip_reaches_from_the_chisel_edge_to_the_circle(
    chisel: float, diameter: float, share: float
) -> None:
    web, sharp = share * diameter, min(chisel, math.pi - chisel)
    inner = Point(web / 2 / math.tan(sharp), web / 2)
    assert inner.distance(Point(0, 0)) == pytest.approx(web / 2 / math.sin(sharp), rel=1e-9)
    line = LineString([inner, (inner.x + 2 * diameter, web / 2)])
    # A circle of many sides lies inside the round one by less than a part in ten thousand.
    corner = line.intersection(Point(0, 0).buffer(diameter / 2, quad_segs=400).exterior)
    assert point.lip_reach(web, chisel, diameter) == pytest.approx(
        inner.distance(corner), rel=1e-4, abs=1e-4 * diameter
    )


def test_without_a_web_the_lips_go_to_the_middle() -> None:
    assert point.chisel_edge_length(0.0, 1.0, 10.0) == 0
    assert point.lip_reach(0.0, 1.0, 10.0) == 5.0


@given(POINTS, st.floats(0, 1.2))
def test_square_to_the_lip_the_relief_looks_smaller_by_the_slant_of_the_lip(
    whole: float, lip_relief: float
) -> None:
    # The lip and the tangent to the flank in the cylinder, laid out in space at the outer corner: the flank
    # holds both, and its angle to the cone that the lip sweeps is the relief square to the lip.
    lip = np.array([-math.sin(whole / 2), 0.0, math.cos(whole / 2)])
    behind = np.array([0.0, math.cos(lip_relief), -math.sin(lip_relief)])
    flank, swept = np.cross(lip, behind), np.cross(lip, [0.0, 1.0, 0.0])
    sine = np.linalg.norm(np.cross(flank, swept)) / np.linalg.norm(flank) / np.linalg.norm(swept)
    assert point.relief_square_to_lip(lip_relief, whole) == pytest.approx(math.asin(sine), abs=1e-9)


@given(POINTS, st.floats(0, 1.4))
def test_relief_square_to_the_lip_leads_back_to_the_lip_relief(whole: float, lip_relief: float) -> None:
    square = point.relief_square_to_lip(lip_relief, whole)
    assert square <= lip_relief
    assert point.lip_relief_of(square, whole) == pytest.approx(lip_relief, rel=1e-12, abs=1e-15)


@given(st.floats(0, 1.2))
def test_on_a_flat_end_both_reliefs_are_one(lip_relief: float) -> None:
    assert point.relief_square_to_lip(lip_relief, math.pi) == pytest.approx(lip_relief, rel=1e-15)


@given(POINTS, st.floats(5, 50), st.floats(0.001, 0.4), st.floats(0.5, 1))
def test_a_tip_off_the_axis_makes_lips_of_just_that_difference_in_height(
    whole: float, diameter: float, share: float, place: float
) -> None:
    # Two lips of one angle that leave a tip off the axis, both measured at one distance from the axis.
    offset, radius = share * diameter / 2, place * diameter / 2
    slope = math.cos(whole / 2) / math.sin(whole / 2)
    heights = [-slope * abs(side * radius - offset) for side in (1, -1)]
    found = point.point_offset(abs(heights[0] - heights[1]), whole)
    assert found == pytest.approx(offset, rel=1e-9)


def test_a_flat_end_with_unlike_lips_has_no_tip_to_blame() -> None:
    assert point.point_offset(0.1, math.pi) is None


def test_the_shop_rule_is_the_tip_off_the_axis_at_one_point_angle_only() -> None:
    # tan(half) = 2 where a tip off the axis makes the hole twice the lip height too large.
    whole = 2 * math.atan(2)
    offset = point.point_offset(0.1, whole)
    assert offset is not None
    assert 2 * offset == pytest.approx(point.hole_oversize_by_rule(0.1), rel=1e-12)
    blunter = point.point_offset(0.1, math.radians(140))
    assert blunter is not None
    assert 2 * blunter > point.hole_oversize_by_rule(0.1)


@pytest.mark.parametrize(
    ("call", "key"),
    [
        (lambda: point.slope_of_point(0.0), "point_angle"),
        (lambda: point.slope_of_point(3.2), "point_angle"),
        (lambda: point.point_length(2.0, 0.0), "diameter"),
        (lambda: point.sharp_chisel_angle(0.0), "chisel_edge_angle"),
        (lambda: point.sharp_chisel_angle(math.pi), "chisel_edge_angle"),
        (lambda: point.chisel_edge_length(9.0, 0.9, 10.0), "web_thickness"),
        (lambda: point.chisel_edge_length(-1.0, 0.9, 10.0), "web_thickness"),
        (lambda: point.relief_square_to_lip(1.6, 2.0), "lip_relief_angle"),
        (lambda: point.lip_relief_of(-0.1, 2.0), "relief_angle"),
        (lambda: point.point_offset(-0.1, 2.0), "lip_height_difference"),
        (lambda: point.hole_oversize_by_rule(math.inf), "lip_height_difference"),
    ],
)
def test_what_no_point_can_have_is_refused_by_name(call: object, key: str) -> None:
    with pytest.raises(GeometryError) as refused:
        call()  # type: ignore[operator]
    assert refused.value.key == key


def test_a_web_too_thick_for_its_chisel_edge_is_told_how_thick_it_may_be() -> None:
    with pytest.raises(GeometryError) as refused:
        point.chisel_edge_length(9.0, math.radians(55), 10.0)
    thinner = refused.value.sentence.parts["thinner"]
    assert not isinstance(thinner, str)
    assert thinner.value == pytest.approx(10 * math.sin(math.radians(55)), rel=1e-12)
    assert point.chisel_edge_length(thinner.value * 0.999, math.radians(55), 10.0) < 10
