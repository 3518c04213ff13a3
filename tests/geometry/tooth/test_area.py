"""Areas behind the edge, against polygons and against integration."""

from __future__ import annotations

import math

import mpmath
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from shapely import Polygon

from geometry.tooth import flat
from geometry.tooth.area import eccentric_removed, facets_removed, sector, segment
from geometry.tooth.facets import facet_of_width, facet_to

diameters = st.floats(0.5, 100.0)
reliefs = st.floats(math.radians(1), math.radians(40))


@given(st.floats(1e-8, 6.0))
def test_the_segment_keeps_its_digits(turned: float) -> None:
    with mpmath.workdps(60):
        exactly = float(mpmath.mpf(turned) - mpmath.sin(mpmath.mpf(turned)))
    assert segment(turned) == pytest.approx(exactly, rel=1e-12)


@given(diameters, reliefs, st.floats(0.01, 0.9))
def test_an_eccentric_relief_takes_what_the_integral_says(
    diameter: float, relief: float, turned: float
) -> None:
    radius, fall = diameter / 2, diameter / 2 * math.tan(relief)
    area, _ = quad(
        lambda at: (radius**2 - (radius - fall * at) ** 2) / 2, 0.0, turned, epsabs=0, epsrel=1e-12
    )
    assert eccentric_removed(turned, fall, diameter) == pytest.approx(area, rel=1e-10)


@given(diameters, reliefs, st.floats(0.01, 1.4))
def test_one_flat_leaves_a_triangle(diameter: float, relief: float, turned: float) -> None:
    radius = diameter / 2
    heel = radius - flat.drop(turned, relief, diameter)
    left = Polygon([(0, 0), (0, radius), (heel * math.sin(turned), heel * math.cos(turned))]).area
    removed = facets_removed((facet_to(0.0, 0.0, relief, turned, diameter),), diameter)
    assert sector(turned, diameter) - removed == pytest.approx(left, rel=1e-9)


@given(diameters, reliefs, st.floats(0.1, 1.0), st.floats(0.05, 0.5), st.floats(0.05, 0.8))
def test_two_facets_leave_the_polygon_of_their_corners(
    diameter: float, relief: float, share: float, steeper: float, reach: float
) -> None:
    radius, width = diameter / 2, share * diameter / 2 * math.sin(relief)
    first = facet_of_width(0.0, 0.0, relief, width, diameter)
    second = facet_to(first.end, first.end_drop, relief + steeper, first.end + reach, diameter)
    corner = (width * math.cos(relief), radius - width * math.sin(relief))
    heel = radius - second.end_drop
    left = Polygon(
        [(0, 0), (0, radius), corner, (heel * math.sin(second.end), heel * math.cos(second.end))]
    ).area
    removed = facets_removed((first, second), diameter)
    assert sector(second.end, diameter) - removed == pytest.approx(left, rel=1e-9)


@given(reliefs, st.floats(1e-7, 1e-3))
def test_a_narrow_land_loses_no_digits(relief: float, turned: float) -> None:
    with mpmath.workdps(60):
        at, leans = mpmath.mpf(turned), mpmath.mpf(relief)
        exactly = float(18 * at - 18 * mpmath.cos(leans) * mpmath.sin(at) / mpmath.cos(at - leans))
    removed = facets_removed((facet_to(0.0, 0.0, relief, turned, 12.0),), 12.0)
    assert removed == pytest.approx(exactly, rel=1e-11)


def test_nothing_behind_the_edge_has_no_area() -> None:
    assert eccentric_removed(0.0, 1.0, 12.0) == 0.0
    assert eccentric_removed(0.5, 0.0, 12.0) == 0.0
    assert facets_removed((), 12.0) == 0.0
    assert sector(2 * math.pi, 12.0) == pytest.approx(math.pi * 36)
