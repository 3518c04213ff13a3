"""The face of a tooth set off the axis, and the rake it gives elsewhere."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run


def face(**values: Given) -> Result:
    return run(calculation("face-offset"), values)


@given(st.floats(0.05, 500.0), st.floats(math.radians(-45), math.radians(60)))
def test_rake_to_offset_and_back(diameter: float, rake: float) -> None:
    offset = face(diameter=diameter, rake_angle=rake).outputs["face_offset"]
    back = face(diameter=diameter, face_offset=offset).outputs["rake_angle"]
    assert back == pytest.approx(rake, rel=1e-12, abs=1e-15)


@given(st.floats(1.0, 100.0), st.floats(math.radians(-40), math.radians(40)), st.floats(0.8, 1.5))
def test_a_row_gives_the_rake_that_would_need_the_same_offset_there(
    diameter: float, rake: float, part: float
) -> None:
    found = face(diameter=diameter, rake_angle=rake, other_diameter=(part * diameter,))
    there = found.rows[0].values["local_rake_angle"]
    assert part * diameter / 2 * math.sin(there) == pytest.approx(found.outputs["face_offset"], abs=1e-9)


def test_rake_grows_toward_the_axis_and_keeps_its_sign() -> None:
    for rake in (math.radians(10), math.radians(-10)):
        rows = face(diameter=20.0, rake_angle=rake, other_diameter=(16.0, 12.0, 8.0)).rows
        there = [row.values["local_rake_angle"] for row in rows]
        assert sorted(there, key=abs) == there
        assert all(math.copysign(1, one) == math.copysign(1, rake) for one in there)


def test_a_face_that_never_meets_a_step_is_stopped_and_has_no_rake_there() -> None:
    found = face(diameter=20.0, rake_angle=math.radians(20), other_diameter=(16.0, 6.0))
    assert [check.state for check in found.checks] == ["stop", "note"]
    assert "local_rake_angle" not in found.rows[1].values
    assert found.rows[1].values["other_diameter"] == 6.0


def test_a_radial_face_is_said_to_be_radial() -> None:
    found = face(diameter=20.0, rake_angle=0.0, other_diameter=(6.0,))
    assert "radial" in str(found.checks[-1].sentence)
    assert found.rows[0].values["local_rake_angle"] == 0.0


@pytest.mark.parametrize(("rake", "side"), [(10, "behind"), (-10, "ahead of")])
def test_the_side_of_the_axis_is_said(rake: float, side: str) -> None:
    assert side in str(face(diameter=20.0, rake_angle=math.radians(rake)).checks[0].sentence)


@pytest.mark.parametrize("offset", [9.0, -8.0, 10.0, 199.0])
def test_an_offset_that_leaves_no_tooth_is_refused_with_the_offsets_that_do(offset: float) -> None:
    with pytest.raises(Refusal, match=r"from -7\.071 mm to 8\.66 mm"):
        face(diameter=20.0, face_offset=offset)


def test_rake_and_offset_together_are_one_too_many() -> None:
    with pytest.raises(Refusal, match="only one"):
        face(diameter=20.0, rake_angle=0.1, face_offset=1.0)


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks]


def test_a_rake_of_40_32_degrees_is_watched() -> None:
    # -30 to +40 degrees: common practice, no source.
    assert states(face(diameter=10.0, rake_angle=math.radians(40.32))) == ["watch", "note"]
    assert states(face(diameter=10.0, rake_angle=math.radians(40))) == ["note"]
    # Derived: 5 mm times the sine of 40.32 degrees.
    assert states(face(diameter=10.0, face_offset=3.2353)) == ["watch", "note"]
