"""Readings taken off surfaces of a known form tell that form and its angle again."""

from __future__ import annotations

import math

import mpmath
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.tooth import eccentric, flat
from geometry.tooth.reading import explanations, misfit

diameters = st.floats(1.0, 100.0)
reliefs = st.floats(math.radians(1), math.radians(40))
angles = st.floats(0.02, 1.2)


def read(form: str, turned: float, relief: float, diameter: float) -> float:
    """What an indicator shows on a surface of this form, found in the plane."""
    radius = diameter / 2
    if form == "eccentric":
        return radius * math.tan(relief) * turned
    return radius - radius * math.cos(relief) / math.cos(turned - relief)


@given(diameters, reliefs, angles, st.sampled_from(("eccentric", "flat")))
def test_a_reading_leads_back_to_the_relief_it_was_taken_from(
    diameter: float, relief: float, turned: float, form: str
) -> None:
    assume(math.tan(relief) * turned < 0.95)
    found = explanations(read(form, turned, relief, diameter), turned, diameter)
    assert found[form].relief_angle == pytest.approx(relief, rel=1e-9)
    assert found[form].form == form


@given(diameters, reliefs, angles, angles, st.sampled_from(("eccentric", "flat")))
def test_a_second_reading_of_the_same_surface_does_not_misfit(
    diameter: float, relief: float, turned: float, again: float, form: str
) -> None:
    assume(math.tan(relief) * max(turned, again) < 0.95)
    found = explanations(read(form, turned, relief, diameter), turned, diameter)[form]
    amount = misfit(found, read(form, again, relief, diameter), again)
    assert amount == pytest.approx(0.0, abs=1e-10 * diameter)


@given(diameters, reliefs, st.floats(0.1, 1.2), st.floats(0.2, 0.8))
def test_between_edge_and_heel_a_flat_lies_deeper_than_an_eccentric_relief(
    diameter: float, relief: float, turned: float, share: float
) -> None:
    drop = read("eccentric", turned, relief, diameter)
    assume(drop < 0.9 * diameter / 2)
    found = explanations(drop, turned, diameter)
    apart = misfit(found["eccentric"], found["flat"].profile(share * turned), share * turned)
    assert apart is not None
    assert apart > 0


@given(diameters, reliefs, angles, angles, st.sampled_from(("eccentric", "flat")))
def test_the_lever_is_how_much_an_error_grows(
    diameter: float, relief: float, turned: float, again: float, form: str
) -> None:
    assume(math.tan(relief) * max(turned, again) < 0.95)
    drop = read(form, turned, relief, diameter)
    one = explanations(drop, turned, diameter)[form]
    with mpmath.workdps(40):

        def expected(reading: mpmath.mpf) -> mpmath.mpf:
            radius = mpmath.mpf(diameter) / 2
            if form == "eccentric":
                return reading / turned * again
            tangent = (radius / (radius - reading) - mpmath.cos(turned)) / mpmath.sin(turned)
            leans = mpmath.atan(tangent)
            return radius - radius * mpmath.cos(leans) / mpmath.cos(again - leans)

        slope = float(abs(mpmath.diff(expected, drop)))
        assert one.lever(again) == pytest.approx(slope, rel=1e-6)


def test_a_proud_place_is_explained_by_a_flat_alone() -> None:
    found = explanations(-0.0548499037, 1 / 3, 12.0)
    assert list(found) == ["flat"]
    assert found["flat"].relief_angle == pytest.approx(math.radians(8), rel=1e-6)


def test_half_a_turn_behind_the_edge_only_an_eccentric_relief_is_left() -> None:
    assert list(explanations(0.4, 3.3, 12.0)) == ["eccentric"]


def test_a_drop_of_nothing_is_no_cam_or_a_flat_that_just_touches() -> None:
    found = explanations(0.0, 0.3, 12.0)
    assert found["eccentric"].relief_angle == 0.0
    assert found["flat"].relief_angle == pytest.approx(0.15, rel=1e-12)


def test_a_flat_is_asked_only_as_far_as_it_reaches() -> None:
    found = explanations(0.1, 0.3, 12.0)
    assert misfit(found["flat"], 0.1, 1.9) is None
    assert misfit(found["eccentric"], 0.1, 1.9) is not None


@pytest.mark.parametrize(("drop", "turned"), [(-0.1, 3.3), (6.0, 0.3), (-3.0, 0.3), (math.nan, 0.3)])
def test_a_reading_that_nothing_explains_is_refused(drop: float, turned: float) -> None:
    with pytest.raises(GeometryError):
        explanations(drop, turned, 12.0)


@given(diameters, reliefs, angles)
def test_both_profiles_pass_through_the_reading(diameter: float, relief: float, turned: float) -> None:
    drop = read("flat", turned, relief, diameter)
    for one in explanations(drop, turned, diameter).values():
        assert one.profile(turned) == pytest.approx(drop, rel=1e-9, abs=1e-13 * diameter)
    assert flat.profile(relief, diameter)(0.0) == 0.0
    assert eccentric.profile(relief, diameter)(0.0) == 0.0
