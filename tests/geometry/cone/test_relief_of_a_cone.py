"""Relief of a cone under a cam, against the surface itself: built point by point and its normal taken.

All expected numbers are derived; no published figure for such a relief was found.
"""

from __future__ import annotations

import math

import mpmath
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Point

from geometry.cone import relief as cone
from geometry.preconditions import GeometryError

INCLUDED = st.floats(0.01, math.pi - 0.01)
CAMS = st.floats(-5, 5).filter(lambda cam: cam == 0 or abs(cam) > 1e-6)
DIAMETERS = st.floats(0.1, 400)


def measured_relief(radial: float, axial: float, included: float, diameter: float) -> float:
    """The angle between the land and the cone its edge sweeps, from the normals of both surfaces.

    ``surface(s, turn)`` is the land: a generator that lies ``s`` up the cone, moved by the cam and turned.
    """
    with mpmath.workdps(40):
        half, radius = mpmath.mpf(included) / 2, mpmath.mpf(diameter) / 2

        def surface(s: mpmath.mpf, turn: mpmath.mpf, cam: int) -> list[mpmath.mpf]:
            out = radius + s * mpmath.sin(half) - cam * radial * turn
            return [out * mpmath.cos(turn), out * mpmath.sin(turn), s * mpmath.cos(half) + cam * axial * turn]

        def normal(cam: int) -> mpmath.matrix:
            along = [mpmath.diff(lambda s, i=i: surface(s, mpmath.mpf(0), cam)[i], 0) for i in range(3)]
            behind = [mpmath.diff(lambda t, i=i: surface(mpmath.mpf(0), t, cam)[i], 0) for i in range(3)]
            return cross(along, behind)

        land, swept = normal(1), normal(0)
        sine = mpmath.norm(cross(list(land), list(swept))) / (mpmath.norm(land) * mpmath.norm(swept))
        into_tool = radial * mpmath.cos(half) + axial * mpmath.sin(half)
        return float(mpmath.asin(sine)) * (1 if into_tool >= 0 else -1)


def cross(a: list[mpmath.mpf], b: list[mpmath.mpf]) -> mpmath.matrix:
    return mpmath.matrix([a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]])


def relief(radial: float, axial: float, included: float, diameter: float) -> float:
    return cone.relief_angle(cone.square_throw(radial, axial, included), diameter)


def test_a_cone_of_82_degrees_under_both_cams_has_the_relief_that_its_surface_shows() -> None:
    computed = relief(0.3, 0.4, math.radians(82), 20.0)
    assert math.degrees(computed) == pytest.approx(2.7986, abs=5e-5)
    assert computed == pytest.approx(measured_relief(0.3, 0.4, math.radians(82), 20.0), rel=1e-12)


@given(CAMS, CAMS, INCLUDED, DIAMETERS)
def test_the_relief_is_the_angle_between_the_land_and_the_cone_that_its_edge_sweeps(
    radial: float, axial: float, included: float, diameter: float
) -> None:
    expected = measured_relief(radial, axial, included, diameter)
    assert relief(radial, axial, included, diameter) == pytest.approx(expected, rel=1e-9, abs=1e-14)


@given(st.floats(0, 3), st.floats(0, 3), st.floats(0.2, 2.8), st.floats(2, 50))
def test_a_section_along_the_axis_shows_the_land_sinking_square_to_itself(
    radial: float, axial: float, included: float, diameter: float
) -> None:
    # The generator of the cone and the line of the land a radian later, as a draughtsman would lay them down.
    half, radius = included / 2, diameter / 2
    up = (math.sin(half), math.cos(half))
    later = (radius - radial, axial)
    land = LineString(
        [(later[0] - 500 * up[0], later[1] - 500 * up[1]), (later[0] + 500 * up[0], later[1] + 500 * up[1])]
    )
    assert land.distance(Point(radius, 0.0)) == pytest.approx(
        cone.square_throw(radial, axial, included), abs=1e-9
    )


@given(CAMS, CAMS, INCLUDED)
def test_a_cone_and_its_complement_with_the_cams_exchanged_sink_alike(
    radial: float, axial: float, included: float
) -> None:
    exchanged = cone.square_throw(axial, radial, math.pi - included)
    assert cone.square_throw(radial, axial, included) == pytest.approx(exchanged, rel=1e-12, abs=1e-14)


@given(CAMS)
def test_a_radial_throw_gives_a_face_nothing_at_all(radial: float) -> None:
    assert cone.square_throw(radial, 0.0, math.pi) == 0
    assert cone.radial_throw_for(1.0, 0.0, math.pi) is None
    assert relief(radial, 0.25, math.pi, 10.0) == math.atan2(0.25, 5.0)


@given(CAMS)
def test_an_axial_throw_gives_a_cylinder_nothing_at_all(axial: float) -> None:
    assert cone.square_throw(0.0, axial, 0.0) == 0
    assert cone.axial_throw_for(1.0, 0.0, 0.0) is None
    assert relief(0.25, axial, 0.0, 10.0) == math.atan2(0.25, 5.0)


@given(st.floats(0.01, 3), st.floats(0.01, 3), INCLUDED, DIAMETERS, DIAMETERS)
def test_relief_grows_toward_the_point(
    radial: float, axial: float, included: float, one: float, other: float
) -> None:
    assume(abs(one - other) > 1e-6)
    small, large = sorted((one, other))
    assert relief(radial, axial, included, small) > relief(radial, axial, included, large) > 0


@given(st.floats(0.01, 3), INCLUDED)
def test_on_an_ever_larger_cone_the_same_cam_gives_ever_less_relief(radial: float, included: float) -> None:
    assert relief(radial, 0.0, included, 1e12) == pytest.approx(0, abs=1e-11)


@given(st.floats(0, 1.5), DIAMETERS)
def test_the_cam_for_a_relief_gives_that_relief(wanted: float, diameter: float) -> None:
    assert cone.relief_angle(cone.square_throw_for(wanted, diameter), diameter) == pytest.approx(
        wanted, rel=1e-12
    )


@given(st.floats(0.01, 5), CAMS, INCLUDED)
def test_either_cam_makes_up_what_the_other_leaves(square: float, given_cam: float, included: float) -> None:
    radial = cone.radial_throw_for(square, given_cam, included)
    axial = cone.axial_throw_for(square, given_cam, included)
    assert radial is not None
    assert axial is not None
    assert cone.square_throw(radial, given_cam, included) == pytest.approx(square, rel=1e-9, abs=1e-12)
    assert cone.square_throw(given_cam, axial, included) == pytest.approx(square, rel=1e-9, abs=1e-12)


@given(st.floats(0.01, 3), st.floats(0.01, 3), INCLUDED, DIAMETERS)
def test_seen_along_the_axis_the_land_falls_by_both_cams_together(
    radial: float, axial: float, included: float, diameter: float
) -> None:
    # At one diameter the land is met further up the cone by radial / tan(half), and the axial throw adds to it.
    fall = axial + radial / math.tan(included / 2)
    found = cone.axial_relief(cone.square_throw(radial, axial, included), included, diameter)
    assert math.tan(found) == pytest.approx(fall / (diameter / 2), rel=1e-9)


def test_two_cams_that_undo_each_other_leave_no_last_digit_behind() -> None:
    for degrees in range(5, 180, 7):
        included = math.radians(degrees)
        axial = -1.7 / math.tan(included / 2)
        assert cone.square_throw(1.7, axial, included) == 0


def test_a_cam_counted_per_tooth_makes_its_travel_in_one_pitch() -> None:
    assert cone.radians_of_throw("turn", 7) == 2 * math.pi
    assert cone.radians_of_throw("tooth", 6) == pytest.approx(math.pi / 3, rel=1e-15)


@pytest.mark.parametrize(
    ("call", "key"),
    [
        (lambda: cone.square_throw(math.nan, 0.0, 1.0), "radial_throw"),
        (lambda: cone.square_throw(0.0, math.inf, 1.0), "axial_throw"),
        (lambda: cone.half_angle_parts(-0.1), "included_angle"),
        (lambda: cone.half_angle_parts(3.2), "included_angle"),
        (lambda: cone.relief_angle(1.0, 0.0), "diameter"),
        (lambda: cone.square_throw_for(math.pi / 2, 10.0), "relief_angle"),
        (lambda: cone.radians_of_throw("minute"), "throw_per"),
        (lambda: cone.radians_of_throw("tooth", 0), "flutes"),
    ],
)
def test_what_no_cone_can_have_is_refused_by_name(call: object, key: str) -> None:
    with pytest.raises(GeometryError) as refused:
        call()  # type: ignore[operator]
    assert refused.value.key == key
