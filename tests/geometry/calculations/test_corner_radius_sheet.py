"""The corner-radius calculation: a form with a radial cam alone rubs at its end."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import run

SHEET = calculation("corner-radius")


def tool(**more: Given) -> Result:
    values: dict[str, Given] = {"diameter": 20.0, "corner_radius": 3.0, "relief_angle": math.radians(8)}
    return run(SHEET, {**values, **more})


def test_a_throw_at_the_axis_leaves_the_end_without_relief_and_the_told_end_relief_mends_it() -> None:
    stopped = tool().checks[0]
    assert stopped.state == "stop"
    ((key, value),) = stopped.cure
    # Derived: at the end the relief square to the profile is that along the axis, and 3 degrees are wanted.
    assert key == "end_relief_angle"
    assert value == pytest.approx(math.radians(3))
    assert tool(end_relief_angle=math.radians(3.001)).checks[0].state == "pass"


def test_a_profile_that_ends_before_the_end_has_two_ways() -> None:
    watched = tool(profile_angle=math.radians(75)).checks[0]
    assert watched.state == "watch"
    assert {key for key, _ in watched.cure} == {"relief_angle", "end_relief_angle"}
    # Derived: tan(land) x 10 x cos 75 / (10 - 3 (1 - cos 75)) is the tangent of 3 degrees.
    wanted = math.atan(
        math.tan(math.radians(3))
        * (10 - 3 * (1 - math.cos(math.radians(75))))
        / (10 * math.cos(math.radians(75)))
    )
    assert dict(watched.cure)["relief_angle"] == pytest.approx(wanted)


def test_the_throws_of_a_turn_give_both_reliefs() -> None:
    found = tool(end_relief_angle=math.radians(6)).outputs
    assert found["radial_throw"] == pytest.approx(2 * math.pi * 10 * math.tan(math.radians(8)))
    assert found["axial_throw"] == pytest.approx(2 * math.pi * 7 * math.tan(math.radians(6)))
    assert found["normal_relief_angle"] == pytest.approx(math.radians(6))
