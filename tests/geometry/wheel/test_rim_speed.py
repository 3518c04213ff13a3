"""The speed of the rim. Expected numbers are derived; published ones stand with the published checks."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.wheel.speed import rotational_speed, surface_speed

WHEELS = st.floats(1, 1000)
TURNS = st.floats(0, 20_000)


@given(WHEELS, st.floats(0.1, 20_000))
def test_the_rim_goes_once_round_in_the_time_of_one_turn(wheel: float, turns: float) -> None:
    way_round, time = math.pi * wheel, 2 * math.pi / turns
    assert surface_speed(wheel, turns) == pytest.approx(way_round / time, rel=1e-12)


@given(WHEELS, TURNS)
def test_a_surface_speed_leads_back_to_its_turns(wheel: float, turns: float) -> None:
    assert rotational_speed(wheel, surface_speed(wheel, turns)) == pytest.approx(turns, rel=1e-12)


@given(WHEELS, TURNS)
def test_a_wheel_worn_to_half_runs_twice_the_turns_for_the_same_speed(wheel: float, turns: float) -> None:
    assert rotational_speed(wheel / 2, surface_speed(wheel, turns)) == pytest.approx(2 * turns, rel=1e-12)


def test_a_wheel_at_rest_has_no_speed() -> None:
    assert surface_speed(150.0, 0.0) == rotational_speed(150.0, 0.0) == 0


@pytest.mark.parametrize("wheel", [0.0, -1.0, math.nan, math.inf])
def test_a_wheel_without_a_diameter_is_refused(wheel: float) -> None:
    for relation in (surface_speed, rotational_speed):
        with pytest.raises(GeometryError) as refused:
            relation(wheel, 1.0)
        assert refused.value.key == "wheel_diameter"


def test_a_speed_below_zero_is_refused() -> None:
    with pytest.raises(GeometryError):
        surface_speed(150.0, -1.0)
    with pytest.raises(GeometryError):
        rotational_speed(150.0, -1.0)
