"""One straight facet, against lines laid out in the plane, high precision and root finding."""

from __future__ import annotations

import math

import mpmath
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq, minimize_scalar
from shapely import LineString, Point

from geometry.preconditions import GeometryError
from geometry.tooth import flat

diameters = st.floats(0.05, 500.0)
reliefs = st.floats(math.radians(0.05), math.radians(45))


def laid_out(turned: float, relief: float, diameter: float) -> float:
    """The drop where the line of the facet meets the ray from the axis, drawn and not computed."""
    radius = diameter / 2
    facet = LineString([(0, radius), (9 * radius * math.cos(relief), radius - 9 * radius * math.sin(relief))])
    ray = LineString([(0, 0), (9 * radius * math.sin(turned), 9 * radius * math.cos(turned))])
    return float(radius - facet.intersection(ray).distance(Point(0, 0)))


def exactly(turned: float, relief: float, diameter: float) -> float:
    with mpmath.workdps(60):
        radius = mpmath.mpf(diameter) / 2
        return float(radius - radius * mpmath.cos(relief) / mpmath.cos(mpmath.mpf(turned) - relief))


@given(diameters, reliefs, st.floats(0.01, 1.4))
def test_the_drop_is_where_the_line_meets_the_ray(diameter: float, relief: float, turned: float) -> None:
    drawn = laid_out(turned, relief, diameter)
    assert flat.drop(turned, relief, diameter) == pytest.approx(drawn, abs=1e-9 * diameter)


@given(diameters, reliefs, st.floats(1e-9, 1.4))
def test_the_drop_keeps_its_digits(diameter: float, relief: float, turned: float) -> None:
    assert flat.drop(turned, relief, diameter) == pytest.approx(exactly(turned, relief, diameter), rel=2e-14)


@given(diameters, reliefs, st.sampled_from((-1, 1)), st.floats(1e-12, 1e-3))
def test_a_heel_that_nearly_touches_keeps_its_digits(
    diameter: float, relief: float, side: int, share: float
) -> None:
    turned = 2 * relief * (1 + side * share)
    drop = flat.drop(turned, relief, diameter)
    assert drop == pytest.approx(exactly(turned, relief, diameter), rel=1e-13, abs=1e-300)
    assert drop < 0 if turned > 2 * relief else drop >= 0


@given(diameters, reliefs, st.floats(0.0, 1.0))
def test_the_facet_is_the_same_seen_from_either_end(diameter: float, relief: float, share: float) -> None:
    near = flat.drop(share * relief, relief, diameter)
    far = flat.drop(2 * relief - share * relief, relief, diameter)
    assert near == pytest.approx(far, rel=1e-9, abs=1e-13 * diameter)


@given(diameters, reliefs, st.floats(1e-4, 2.0))
def test_along_the_facet_and_round_the_tool_tell_the_same(
    diameter: float, relief: float, share: float
) -> None:
    distance = share * diameter / 2 * math.sin(relief)
    across, up = distance * math.cos(relief), diameter / 2 - distance * math.sin(relief)
    assert flat.drop_along_facet(distance, relief, diameter) == pytest.approx(
        flat.drop(math.atan2(across, up), relief, diameter), rel=1e-9, abs=1e-13 * diameter
    )


@given(diameters, reliefs)
def test_it_is_back_on_the_circle_after_twice_the_relief(diameter: float, relief: float) -> None:
    root = brentq(lambda turned: exactly(turned, relief, diameter), relief, min(3 * relief, relief + 1.5))
    assert flat.clear_angle(relief) == pytest.approx(root, rel=1e-9)
    assert flat.drop_along_facet(diameter * math.sin(relief), relief, diameter) == pytest.approx(
        0.0, abs=1e-14 * diameter
    )


@given(diameters, reliefs)
def test_it_is_deepest_half_way(diameter: float, relief: float) -> None:
    lowest = minimize_scalar(
        lambda turned: -exactly(turned, relief, diameter), bounds=(0.0, 2 * relief), method="bounded"
    )
    assert flat.deepest_drop(relief, diameter) == pytest.approx(-float(lowest.fun), rel=1e-6)
    assert flat.deepest_drop(relief, diameter) == pytest.approx(exactly(relief, relief, diameter), rel=1e-12)


@given(diameters, reliefs, st.floats(1e-3, 1.4))
def test_drop_and_relief_lead_back_to_each_other(diameter: float, relief: float, turned: float) -> None:
    drop = flat.drop(turned, relief, diameter)
    found = flat.relief_angle_from_drop(drop, turned, diameter)
    assert found == pytest.approx(relief, rel=1e-9, abs=1e-12)


@given(diameters, st.floats(1e-3, 3.1), st.floats(-0.4, 0.9))
def test_the_relief_found_is_that_of_a_line_through_edge_and_heel(
    diameter: float, turned: float, share: float
) -> None:
    drop = share * diameter / 2
    radius = diameter / 2 - drop
    across, up = radius * math.sin(turned), radius * math.cos(turned)
    slope = math.atan2(diameter / 2 - up, across)
    assume(1e-6 < slope < math.pi / 2)
    assert flat.relief_angle_from_drop(drop, turned, diameter) == pytest.approx(slope, rel=1e-9)


@given(reliefs, st.floats(0.01, 5.0))
def test_on_a_very_large_tool_it_is_the_tangent_line(relief: float, land: float) -> None:
    diameter = 1e9
    assert flat.drop(2 * land / diameter, relief, diameter) == pytest.approx(
        land * math.tan(relief), rel=1e-6, abs=1e-7
    )


def test_without_relief_the_tangent_line_stands_proud_everywhere() -> None:
    assert flat.drop(0.0, 0.0, 12.0) == 0.0
    assert flat.drop(0.3, 0.0, 12.0) == pytest.approx(6 - 6 / math.cos(0.3), rel=1e-12)
    assert flat.deepest_drop(0.0, 12.0) == 0.0


def test_the_case_of_twelve_millimetres() -> None:
    # Derived: R - sqrt(x^2 + y^2) at the point of the line on the ray of a third of a radian.
    assert flat.drop(1 / 3, math.radians(8), 12.0) == pytest.approx(-0.05485, abs=5e-6)
    assert laid_out(1 / 3, math.radians(8), 12.0) == pytest.approx(-0.05485, abs=5e-6)
    assert 6 * flat.clear_angle(math.radians(8)) == pytest.approx(1.6755, abs=5e-5)


def test_the_case_of_half_an_inch() -> None:
    turned = 0.080 / 0.25
    in_inches = flat.drop(turned, math.radians(7), 0.5)
    assert in_inches == pytest.approx(-0.00307, abs=5e-6)
    assert laid_out(turned, math.radians(7), 0.5) == pytest.approx(-0.00307, abs=5e-6)
    assert flat.drop(turned, math.radians(7), 12.7) == pytest.approx(25.4 * in_inches, rel=1e-12)


@given(diameters, reliefs, st.floats(1e-9, 1.4))
def test_the_profile_is_the_drop(diameter: float, relief: float, turned: float) -> None:
    drawn = flat.profile(relief, diameter)(turned)
    assert drawn == pytest.approx(exactly(turned, relief, diameter), rel=1e-12, abs=1e-300)


def test_far_along_the_facet_the_other_side_of_the_tool_is_reached() -> None:
    # Derived: at s = R sin(a) + sqrt(...) beyond the circle the distance from the axis only grows.
    assert flat.drop_along_facet(100.0, math.radians(8), 12.0) == pytest.approx(
        6 - math.hypot(100 * math.cos(math.radians(8)), 6 - 100 * math.sin(math.radians(8))), rel=1e-12
    )


@pytest.mark.parametrize(
    ("turned", "relief", "diameter"),
    [
        (2.0, 0.1, 12.0),
        (-0.1, 0.1, 12.0),
        (0.1, -0.1, 12.0),
        (0.1, 1.6, 12.0),
        (0.1, 0.1, 0.0),
        (0.1, 0.1, -12.0),
        (math.nan, 0.1, 12.0),
        (0.1, math.inf, 12.0),
    ],
)
def test_what_no_facet_can_be_is_refused(turned: float, relief: float, diameter: float) -> None:
    with pytest.raises(GeometryError):
        flat.drop(turned, relief, diameter)


@pytest.mark.parametrize(
    ("drop", "turned", "says"),
    [
        (0.1, 0.0, "between the edge and half a turn"),
        (0.1, math.pi, "between the edge and half a turn"),
        (6.0, 0.3, "more than the radius"),
        (-0.5, 0.3, "rise behind the edge"),
    ],
)
def test_a_reading_that_no_facet_explains_is_refused(drop: float, turned: float, says: str) -> None:
    with pytest.raises(GeometryError, match=says):
        flat.relief_angle_from_drop(drop, turned, 12.0)
