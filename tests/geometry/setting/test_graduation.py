"""A wanted setting on a graduation with divisions, and what the rounding costs in angle. All expected numbers derived."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.setting.graduation import cost_in_angle, on_graduation
from geometry.setting.height import relief_of_height, setting_height

DIVISIONS = st.sampled_from([0.01, 0.02, 0.0254, 0.05, 0.1, math.radians(1 / 12), math.radians(1)])


def test_the_nearest_division_is_taken_and_its_error_is_told() -> None:
    found = on_graduation(0.173, 0.01)
    assert found.divisions == 17
    assert found.set_value == pytest.approx(0.17)
    # Less than wanted counts below zero.
    assert found.error == pytest.approx(-0.003)


def test_below_zero_the_graduation_is_turned_the_other_way() -> None:
    assert on_graduation(-0.173, 0.01).divisions == -17
    assert on_graduation(-0.177, 0.01).divisions == -18


def test_half_a_division_goes_up_so_that_two_halves_do_not_make_nothing() -> None:
    # 0.25 is a sum of powers of two, so these halves are exact.
    assert on_graduation(0.125, 0.25).divisions == 1
    assert on_graduation(-0.125, 0.25).divisions == 0


@given(st.floats(-500, 500), DIVISIONS)
def test_the_error_is_never_more_than_half_a_division(wanted: float, division: float) -> None:
    found = on_graduation(wanted, division)
    assert abs(found.error) <= division / 2 * (1 + 1e-9)
    assert found.set_value - wanted == pytest.approx(found.error, abs=1e-12)
    # No other whole number of divisions is nearer.
    for other in (found.divisions - 1, found.divisions + 1):
        assert abs(other * division - wanted) >= abs(found.error) - 1e-9


@given(st.integers(-5000, 5000), DIVISIONS)
def test_a_whole_number_of_divisions_is_met_without_error(divisions: int, division: float) -> None:
    found = on_graduation(divisions * division, division)
    assert found.divisions == divisions
    assert found.error == 0


@pytest.mark.parametrize("division", [0.0, -0.01, math.inf, math.nan])
def test_a_graduation_without_divisions_is_refused(division: float) -> None:
    with pytest.raises(GeometryError):
        on_graduation(1.0, division)


@pytest.mark.parametrize("wanted", [math.inf, math.nan])
def test_a_setting_that_is_no_number_is_refused(wanted: float) -> None:
    with pytest.raises(GeometryError):
        on_graduation(wanted, 0.01)


@given(st.floats(1, 30), st.floats(20, 300), DIVISIONS.filter(lambda one: one >= 0.01))
def test_the_cost_is_the_angle_of_the_rounded_height_less_the_wanted_one(
    degrees: float, diameter: float, division: float
) -> None:
    wanted = math.radians(degrees)
    rounded = on_graduation(setting_height(wanted, diameter), division).set_value
    assume(0 <= rounded < diameter / 2)
    found = cost_in_angle(lambda a: diameter / 2 * math.sin(a), wanted, rounded)
    assert found is not None
    # The second way: the arc sine of the rounded height.
    assert wanted + found == pytest.approx(relief_of_height(rounded, diameter), abs=1e-10)


def test_a_setting_that_is_met_exactly_costs_nothing() -> None:
    assert cost_in_angle(lambda a: 40 * a, 0.1, 4.0) == pytest.approx(0.0, abs=1e-12)


def test_a_setting_that_does_not_depend_on_the_angle_has_no_cost() -> None:
    assert cost_in_angle(lambda _: 2.5, 0.1, 2.4) is None
    assert cost_in_angle(lambda _: 2.5, 0.1, 2.5) == 0.0


def test_a_value_that_no_angle_gives_is_told_as_nothing_instead_of_a_wild_number() -> None:
    # 1 + x squared is never zero, so the search can only wander.
    assert cost_in_angle(lambda a: 1 + a * a, 0.3, 0.0) is None
