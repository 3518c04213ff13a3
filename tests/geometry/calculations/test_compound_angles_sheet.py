"""Compound angles, found again by turning the face's normal with rotation matrices."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.edge.views import on_helix
from geometry.evaluate import Refusal, run
from geometry.setting.compound import face_of_edge, face_of_slopes, square_to_edge

SHEET = calculation("compound-angles")
SLOPES = st.floats(math.radians(-50), math.radians(50))
TURNS = st.floats(math.radians(-85), math.radians(85))
Vector = tuple[float, float, float]


def cross(one: Vector, other: Vector) -> Vector:
    (a, b, c), (d, e, f) = one, other
    return b * f - c * e, c * d - a * f, a * e - b * d


def turned(vector: Vector, axis: str, angle: float) -> Vector:
    """A vector turned about a coordinate axis by the right-hand rule, as a rotation matrix does it."""
    x, y, z = vector
    cos, sin = math.cos(angle), math.sin(angle)
    if axis == "z":
        return cos * x - sin * y, sin * x + cos * y, z
    if axis == "x":
        return x, cos * y - sin * z, sin * y + cos * z
    return cos * x + sin * z, y, cos * z - sin * x


def unit(vector: Vector) -> Vector:
    size = math.hypot(*vector)
    return vector[0] / size, vector[1] / size, vector[2] / size


def normal(along: float, across: float) -> Vector:
    """The normal of the face, from the two lines in which it is seen along and across the jaws."""
    falls_along = (math.cos(along), 0.0, -math.sin(along))
    falls_across = (0.0, math.cos(across), -math.sin(across))
    return unit(cross(falls_along, falls_across))


@given(SLOPES, SLOPES)
def test_swivelled_and_tilted_the_face_lies_level(along: float, across: float) -> None:
    found = run(SHEET, {"along_slope_angle": along, "cross_slope_angle": across}).outputs
    swivelled = turned(normal(along, across), "z", -found["base_swivel_angle"])
    level = turned(swivelled, "y", -found["compound_tilt_angle"])
    assert level == pytest.approx((0.0, 0.0, 1.0), abs=1e-9)


@given(SLOPES, SLOPES)
def test_after_two_tilts_the_face_lies_level_in_either_order(along: float, across: float) -> None:
    # Derived: the lower axis stands still and turns face and upper axis together; then the face is turned about the upper
    # axis as it lies now.
    values: dict[str, Given] = {
        "along_slope_angle": along,
        "cross_slope_angle": across,
        "head_axes": "two-tilts",
    }
    found = run(SHEET, values).outputs
    first, second = found["first_tilt_angle"], found["second_tilt_angle"]
    carried = turned((0.0, 1.0, 0.0), "x", first)
    once = turned(normal(along, across), "x", first)
    level = about(once, carried, -second)
    assert level == pytest.approx((0.0, 0.0, 1.0), abs=1e-9)
    lower, upper = face_of_slopes(along, across).other_order
    once = turned(normal(along, across), "y", -lower)
    assert about(once, turned((1.0, 0.0, 0.0), "y", -lower), upper) == pytest.approx(
        (0.0, 0.0, 1.0), abs=1e-9
    )


def about(vector: Vector, axis: Vector, angle: float) -> Vector:
    """A vector turned about any axis of length one, by the formula of Rodrigues."""
    cos, sin = math.cos(angle), math.sin(angle)
    side, along = cross(axis, vector), sum(a * v for a, v in zip(axis, vector, strict=True))
    x, y, z = (v * cos + s * sin + a * along * (1 - cos) for v, s, a in zip(vector, side, axis, strict=True))
    return x, y, z


@given(SLOPES, SLOPES, TURNS)
def test_slope_and_inclination_at_an_edge_are_seen_in_the_upright_planes(
    along: float, across: float, turn: float
) -> None:
    # Derived: the lines in which upright planes, square to the edge and along it, cut the face.
    found = run(
        SHEET, {"along_slope_angle": along, "cross_slope_angle": across, "edge_turn_angle": turn}
    ).outputs
    edge, square = (-math.sin(turn), math.cos(turn), 0.0), (math.cos(turn), math.sin(turn), 0.0)
    face = normal(along, across)
    in_square, in_edge = cross(edge, face), cross(square, face)
    assert abs(math.tan(found["edge_slope_angle"])) == pytest.approx(
        abs(in_square[2]) / math.hypot(in_square[0], in_square[1]), rel=1e-7, abs=1e-9
    )
    assert abs(math.tan(found["edge_inclination_angle"])) == pytest.approx(
        abs(in_edge[2]) / math.hypot(in_edge[0], in_edge[1]), rel=1e-7, abs=1e-9
    )


def test_true_rake_and_inclination_are_as_a_catalogue_prints_them() -> None:
    # A tool maker's catalogue of 2020, technical reference: tan(true rake) = tan(axial) sin(k) + tan(radial) cos(k), and
    # tan(inclination) = tan(axial) cos(k) - tan(radial) sin(k); numbers by hand for 10, -6 and 45 degrees:
    # (0.176327 - 0.105104) * 0.707107 = 0.050362 and (0.176327 + 0.105104) * 0.707107 = 0.199002.
    found = run(
        SHEET,
        {
            "along_slope_angle": math.radians(-6),
            "cross_slope_angle": math.radians(10),
            "edge_turn_angle": math.radians(45),
        },
    ).outputs
    assert math.tan(found["edge_slope_angle"]) == pytest.approx(0.050362, abs=2e-6)
    assert math.tan(found["edge_inclination_angle"]) == pytest.approx(0.199002, abs=2e-6)


@given(SLOPES, SLOPES)
def test_square_to_an_inclined_edge_the_slope_is_the_angle_between_two_vectors(
    slope: float, inclination: float
) -> None:
    # Derived: in the plane square to the edge itself, between the line of the face and the line of the base.
    edge = unit((0.0, math.cos(inclination), -math.sin(inclination)))
    in_face = unit(cross(edge, unit(cross((math.cos(slope), 0.0, -math.sin(slope)), edge))))
    between = math.acos(min(1.0, abs(in_face[0])))
    assert abs(square_to_edge(slope, inclination)) == pytest.approx(between, abs=1e-7)


@given(st.floats(math.radians(1), math.radians(30)), st.floats(math.radians(-60), math.radians(60)))
def test_a_relief_square_to_a_helical_edge_is_the_one_of_its_section_square_to_the_axis(
    relief: float, helix: float
) -> None:
    # The relation was found elsewhere, for lands on a helix. The jaws lie round the tool, across them its axis.
    square = on_helix(relief, helix)
    face = face_of_edge(helix, square)
    assert math.atan(face.along) == pytest.approx(relief, rel=1e-9)


@given(SLOPES, SLOPES, TURNS)
def test_an_edge_and_back_is_the_same_face(slope: float, inclination: float, turn: float) -> None:
    face = face_of_edge(turn, slope, inclination)
    assert face.at_edge(turn) == pytest.approx((slope, inclination), rel=1e-9, abs=1e-12)


def test_one_slope_alone_is_one_tilt() -> None:
    along = run(SHEET, {"along_slope_angle": 0.2, "cross_slope_angle": 0.0}).outputs
    assert along["base_swivel_angle"] == 0.0
    assert along["compound_tilt_angle"] == pytest.approx(0.2)
    across = run(SHEET, {"along_slope_angle": 0.0, "cross_slope_angle": 0.2}).outputs
    assert across["base_swivel_angle"] == pytest.approx(math.pi / 2)
    level = run(SHEET, {"along_slope_angle": 0.0, "cross_slope_angle": 0.0})
    assert level.outputs["compound_tilt_angle"] == 0.0
    assert "level as it is" in str(level.checks[-1].sentence)


def test_a_face_too_steep_for_a_common_vise_is_watched() -> None:
    steep = {"along_slope_angle": math.radians(40), "cross_slope_angle": math.radians(40)}
    assert run(SHEET, steep).checks[0].state == "watch"


def test_a_slope_out_of_range_and_one_left_out_are_refused() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"along_slope_angle": math.radians(70)})
    assert {problem.key for problem in refused.value.problems} == {
        "along_slope_angle",
        "cross_slope_angle",
    }
