"""Facets one behind the other, against the same lines drawn in the plane."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq
from shapely import LineString, Point
from shapely.affinity import rotate

from geometry.preconditions import GeometryError
from geometry.tooth import flat
from geometry.tooth.corners import corners, deepest_gap, least_gap
from geometry.tooth.facets import (
    Facet,
    clear_angle,
    drop,
    facet_between,
    facet_of_width,
    facet_to,
    outline,
    within_body,
)

diameters = st.floats(0.5, 100.0)
reliefs = st.floats(math.radians(2), math.radians(30))
shares = st.floats(0.05, 0.95)


def place(turned: float, radius: float) -> Point:
    """A point so far behind the edge and so far from the axis; the edge stands on top."""
    return Point(radius * math.sin(turned), radius * math.cos(turned))


def drawn_drop(start: Point, leans: float, turned: float, radius: float) -> float:
    """Where a line from ``start`` that leans so much under the tangent at the edge meets a ray, drawn."""
    reach = 9 * radius
    level = LineString([(start.x, start.y), (start.x + reach, start.y)])
    line = rotate(level, -leans, origin=start, use_radians=True)
    crossing = line.intersection(LineString([(0, 0), place(turned, 9 * radius).coords[0]]))
    return float(radius - crossing.distance(Point(0, 0)))


def two(diameter: float, relief: float, share: float, steeper: float, reach: float) -> tuple[Facet, Facet]:
    first = facet_of_width(0.0, 0.0, relief, share * diameter * math.sin(relief), diameter)
    second = facet_to(first.end, first.end_drop, relief + steeper, first.end + reach, diameter)
    return first, second


chains = st.builds(two, diameters, reliefs, shares, st.floats(0.05, 0.7), st.floats(0.05, 0.9))


@given(diameters, reliefs, shares, st.floats(0.05, 0.7), st.floats(0.05, 0.9), shares)
def test_the_drop_of_a_second_facet_is_where_its_line_meets_the_ray(
    diameter: float, relief: float, share: float, steeper: float, reach: float, along: float
) -> None:
    radius = diameter / 2
    first, second = two(diameter, relief, share, steeper, reach)
    width = share * diameter * math.sin(relief)
    corner = Point(width * math.cos(relief), radius - width * math.sin(relief))
    turned = second.start + along * reach
    drawn = drawn_drop(corner, relief + steeper, turned, radius)
    assert drop((first, second), turned) == pytest.approx(drawn, abs=1e-9 * diameter)
    assert second.drop(turned) == pytest.approx(drawn, abs=1e-9 * diameter)


@given(diameters, reliefs, shares)
def test_the_first_facet_is_the_one_flat(diameter: float, relief: float, share: float) -> None:
    turned = share * relief * 3
    facet = facet_to(0.0, 0.0, relief, turned, diameter)
    assert facet.end_drop == pytest.approx(flat.drop(turned, relief, diameter), rel=1e-12, abs=1e-15)
    assert flat.drop_along_facet(facet.width, relief, diameter) == pytest.approx(
        facet.end_drop, rel=1e-7, abs=1e-13 * diameter
    )
    assert clear_angle(facet, diameter) == pytest.approx(flat.clear_angle(relief), rel=1e-6)


@given(diameters, reliefs, st.floats(0.0, 0.5), st.floats(0.01, 0.4), st.floats(0.0, 0.2))
def test_width_and_end_lead_back_to_each_other(
    diameter: float, relief: float, start: float, reach: float, share: float
) -> None:
    begins = share * diameter / 2
    facet = facet_to(start, begins, start + relief, start + reach, diameter)
    again = facet_of_width(start, begins, start + relief, facet.width, diameter)
    assert again.end == pytest.approx(facet.end, rel=1e-9)
    assert again.end_drop == pytest.approx(facet.end_drop, rel=1e-6, abs=1e-12 * diameter)


@given(diameters, st.floats(0.0, 1.0), st.floats(0.0, 0.3), st.floats(0.02, 2.0), st.floats(0.0, 0.3))
def test_a_facet_between_two_corners_passes_through_both(
    diameter: float, start: float, begins: float, reach: float, ends: float
) -> None:
    radius = diameter / 2
    here, there = place(start, radius * (1 - begins)), place(start + reach, radius * (1 - ends))
    assume(Point(0, 0).distance(LineString([here, there])) > 0.05 * radius)
    leans = math.atan2(here.y - there.y, there.x - here.x) % (2 * math.pi)
    facet = facet_between(start, begins * radius, start + reach, ends * radius, diameter)
    assert facet.angle % (2 * math.pi) == pytest.approx(leans, abs=1e-9)
    assert facet.width == pytest.approx(here.distance(there), rel=1e-9)
    assert facet.end_drop == pytest.approx(ends * radius, abs=1e-10 * diameter)
    line = rotate(LineString([(-99 * diameter, 0), (99 * diameter, 0)]), -facet.angle, use_radians=True)
    assert facet.height == pytest.approx(Point(here.x, here.y).distance(line), rel=1e-6, abs=1e-9 * diameter)


@given(chains)
def test_corners_walked_from_the_edge_are_those_of_the_chain(chain: tuple[Facet, Facet]) -> None:
    diameter = 2 * chain[0].height / math.cos(chain[0].angle)
    walked = corners(chain, diameter)
    assert walked[0] == pytest.approx((0.0, diameter / 2))
    for facet, (across, up) in zip(chain, walked[1:], strict=True):
        assert math.atan2(across, up) == pytest.approx(facet.end, abs=1e-9)
        assert diameter / 2 - math.hypot(across, up) == pytest.approx(facet.end_drop, abs=1e-9 * diameter)


@given(chains)
def test_the_least_and_the_deepest_gap_are_those_of_the_drawn_outline(chain: tuple[Facet, Facet]) -> None:
    diameter = 2 * chain[0].height / math.cos(chain[0].angle)
    walked = corners(chain, diameter)
    outside = LineString(walked[1:])
    farthest = max(
        Point(0, 0).distance(Point(outside.interpolate(i / 200, normalized=True))) for i in range(201)
    )
    assert least_gap(walked[1:], diameter) == pytest.approx(diameter / 2 - farthest, abs=1e-9 * diameter)
    nearest = Point(0, 0).distance(LineString(walked))
    assert deepest_gap(walked, diameter) == pytest.approx(diameter / 2 - nearest, abs=1e-9 * diameter)


def test_a_single_corner_has_its_own_gap() -> None:
    assert least_gap([(3.0, 4.0)], 12.0) == 1.0
    assert deepest_gap([(3.0, 4.0)], 12.0) == 1.0
    assert deepest_gap([(3.0, 4.0), (3.0, 4.0)], 12.0) == 1.0


@given(chains)
def test_a_facet_carried_on_is_back_on_the_circle_where_the_root_lies(chain: tuple[Facet, Facet]) -> None:
    diameter = 2 * chain[0].height / math.cos(chain[0].angle)
    second = chain[1]
    assume(second.start_drop > 1e-4 * diameter)
    root = brentq(second.drop, max(second.start, second.angle), second.angle + math.pi / 2 - 1e-3)
    assert clear_angle(second, diameter) == pytest.approx(root, abs=1e-6)


@given(chains)
def test_the_outline_lies_on_the_facets_and_has_every_corner(chain: tuple[Facet, Facet]) -> None:
    diameter = 2 * chain[0].height / math.cos(chain[0].angle)
    points = outline(chain, diameter)
    assert points[0] == (0.0, 0.0)
    assert {(facet.end, facet.end_drop) for facet in chain} <= set(points)
    assert all(before[0] < after[0] for before, after in pairwise(points))
    for at, depth in points:
        assert depth == pytest.approx(drop(chain, at), abs=1e-12 * diameter)


@given(diameters, reliefs, st.floats(1.0, 1.5), st.floats(0.05, 3.0))
def test_no_facet_is_followed_out_of_the_old_body(
    diameter: float, relief: float, larger: float, reach: float
) -> None:
    radius, body = diameter / 2, larger * diameter / 2
    facet = within_body(0.0, 0.0, relief, reach, 2 * body, diameter)

    def place_along(width: float) -> tuple[float, float]:
        return width * math.cos(relief), radius - width * math.sin(relief)

    out_of_body = brentq(
        lambda width: math.hypot(*place_along(width)) - body, radius * math.sin(relief), 4 * diameter
    )
    past_the_end = math.atan2(*place_along(out_of_body)) > reach
    if past_the_end:
        assert math.atan2(*place_along(facet.width)) == pytest.approx(reach, rel=1e-9)
        assert facet.width <= out_of_body * (1 + 1e-9)
    else:
        assert facet.width == pytest.approx(out_of_body, rel=1e-6)
    assert facet.end <= reach
    assert facet.end_drop >= -(larger - 1) * radius - 1e-12 * diameter


@pytest.mark.parametrize(
    ("start", "begins", "leans", "end", "diameter"),
    [
        (0.0, 6.0, 0.2, 0.3, 12.0),
        (0.0, 7.0, 0.2, 0.3, 12.0),
        (0.0, 0.0, 0.2, 1.9, 12.0),
        (0.5, 0.0, 0.6, 0.4, 12.0),
        (0.0, 0.0, 1.6, 0.3, 12.0),
        (-0.1, 0.0, 0.2, 0.3, 12.0),
        (0.0, 0.0, math.nan, 0.3, 12.0),
        (0.0, 0.0, 0.2, 0.3, 0.0),
    ],
)
def test_a_facet_that_cannot_be_is_refused(
    start: float, begins: float, leans: float, end: float, diameter: float
) -> None:
    with pytest.raises(GeometryError):
        facet_to(start, begins, leans, end, diameter)


@pytest.mark.parametrize(
    ("end", "ends", "says"),
    [(math.pi, 0.1, "half way round"), (0.0, 0.1, "half way round"), (1.0, 6.0, "beyond the axis")],
)
def test_corners_that_no_facet_joins_are_refused(end: float, ends: float, says: str) -> None:
    with pytest.raises(GeometryError, match=says):
        facet_between(0.0, 0.0, end, ends, 12.0)
