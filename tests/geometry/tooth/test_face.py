"""The face of a tooth, built again as a line in the plane."""

from __future__ import annotations

import math

import mpmath
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Point

from geometry.preconditions import GeometryError
from geometry.tooth.face import face_offset, rake_angle

rakes = st.floats(math.radians(-89), math.radians(89))
diameters = st.floats(0.05, 500.0)


def face_line(rake: float, diameter: float) -> LineString:
    """The face seen along the axis: from the edge inward, leaning back from the radius by the rake."""
    edge, long = diameter / 2, 2 * diameter
    return LineString([(edge, 0.0), (edge - long * math.cos(rake), -long * math.sin(rake))])


@given(rakes, diameters)
def test_the_offset_is_how_far_the_line_of_the_face_passes_from_the_axis(
    rake: float, diameter: float
) -> None:
    drawn = face_line(rake, diameter).distance(Point(0.0, 0.0))
    assert abs(face_offset(rake, diameter)) == pytest.approx(drawn, rel=1e-9, abs=1e-9 * diameter)


@given(rakes, diameters)
def test_there_and_back_gives_the_same_rake(rake: float, diameter: float) -> None:
    assert rake_angle(face_offset(rake, diameter), diameter) == pytest.approx(rake, rel=1e-9, abs=1e-12)


@given(rakes, diameters)
def test_a_negative_rake_is_the_mirror_image_of_a_positive_one(rake: float, diameter: float) -> None:
    assert face_offset(-rake, diameter) == -face_offset(rake, diameter)


@given(st.floats(math.radians(1), math.radians(30)), st.floats(1.0, 100.0), st.floats(0.7, 0.999))
def test_the_same_plane_meets_a_smaller_circle_at_the_rake_that_its_line_makes_there(
    rake: float, diameter: float, smaller: float
) -> None:
    offset, radius = face_offset(rake, diameter), smaller * diameter / 2
    assume(offset < 0.99 * radius)
    # Independent: slide along the face from the outer edge until the circle is reached, and compare directions.
    along = diameter / 2 * math.cos(rake) - math.sqrt(radius**2 - offset**2)
    x, y = diameter / 2 - along * math.cos(rake), -along * math.sin(rake)
    assert math.hypot(x, y) == pytest.approx(radius, rel=1e-12)
    between = rake - math.atan2(y, x)
    assert rake_angle(offset, 2 * radius) == pytest.approx(between, rel=1e-9)


def test_rake_keeps_its_digits_close_to_a_right_angle() -> None:
    mpmath.mp.dps = 40
    offset, diameter = 4.999999999999, 10.0
    exact = mpmath.asin(mpmath.mpf(offset) * 2 / mpmath.mpf(diameter))
    assert rake_angle(offset, diameter) == pytest.approx(float(exact), rel=1e-15)


def test_a_radial_face_has_no_offset() -> None:
    assert face_offset(0.0, 12.0) == 0.0
    assert rake_angle(0.0, 12.0) == 0.0


@pytest.mark.parametrize("offset", [5.0, -5.0, 7.0])
def test_a_face_that_never_meets_the_circle_is_refused(offset: float) -> None:
    with pytest.raises(GeometryError, match="never meets"):
        rake_angle(offset, 10.0)


@pytest.mark.parametrize(
    ("rake", "diameter"), [(math.pi / 2, 10.0), (-2.0, 10.0), (math.nan, 10.0), (0.1, 0.0)]
)
def test_values_that_make_no_tooth_are_refused(rake: float, diameter: float) -> None:
    with pytest.raises(GeometryError):
        face_offset(rake, diameter)
