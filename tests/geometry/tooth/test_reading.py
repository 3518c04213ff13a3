"""Readings taken off surfaces of a known style tell that style and its angle again."""

from __future__ import annotations

import math

import mpmath
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.checking import GeometryError
from geometry.tooth import flat, progressive
from geometry.tooth.reading import explanations, misfit

diameters = st.floats(1.0, 100.0)
reliefs = st.floats(math.radians(1), math.radians(40))
angles = st.floats(0.02, 1.2)


def read(style: str, turned: float, relief: float, diameter: float) -> float:
    """What a dial shows on a surface of this style, found in the plane."""
    radius = diameter / 2
    if style == "progressive":
        return radius * math.tan(relief) * turned
    return radius - radius * math.cos(relief) / math.cos(turned - relief)


@given(diameters, reliefs, angles, st.sampled_from(("progressive", "flat")))
def test_a_reading_leads_back_to_the_relief_it_was_taken_from(
    diameter: float, relief: float, turned: float, style: str
) -> None:
    assume(math.tan(relief) * turned < 0.95)
    found = explanations(read(style, turned, relief, diameter), turned, diameter)
    assert found[style].relief_angle == pytest.approx(relief, rel=1e-9)
    assert found[style].style == style


@given(diameters, reliefs, angles, angles, st.sampled_from(("progressive", "flat")))
def test_a_second_reading_of_the_same_surface_does_not_misfit(
    diameter: float, relief: float, turned: float, again: float, style: str
) -> None:
    assume(math.tan(relief) * max(turned, again) < 0.95)
    found = explanations(read(style, turned, relief, diameter), turned, diameter)[style]
    amount = misfit(found, read(style, again, relief, diameter), again)
    assert amount == pytest.approx(0.0, abs=1e-10 * diameter)


@given(diameters, reliefs, st.floats(0.1, 1.2), st.floats(0.2, 0.8))
def test_between_edge_and_heel_a_flat_lies_deeper_than_a_progressive_relief(
    diameter: float, relief: float, turned: float, share: float
) -> None:
    drop = read("progressive", turned, relief, diameter)
    assume(drop < 0.9 * diameter / 2)
    found = explanations(drop, turned, diameter)
    apart = misfit(found["progressive"], found["flat"].profile(share * turned), share * turned)
    assert apart is not None
    assert apart > 0


@given(diameters, reliefs, angles, angles, st.sampled_from(("progressive", "flat")))
def test_the_lever_is_how_much_an_error_grows(
    diameter: float, relief: float, turned: float, again: float, style: str
) -> None:
    assume(math.tan(relief) * max(turned, again) < 0.95)
    drop = read(style, turned, relief, diameter)
    one = explanations(drop, turned, diameter)[style]
    with mpmath.workdps(40):

        def foretold(reading: mpmath.mpf) -> mpmath.mpf:
            radius = mpmath.mpf(diameter) / 2
            if style == "progressive":
                return reading / turned * again
            tangent = (radius / (radius - reading) - mpmath.cos(turned)) / mpmath.sin(turned)
            leans = mpmath.atan(tangent)
            return radius - radius * mpmath.cos(leans) / mpmath.cos(again - leans)

        slope = float(abs(mpmath.diff(foretold, drop)))
        assert one.lever(again) == pytest.approx(slope, rel=1e-6)


def test_a_proud_place_is_explained_by_a_flat_alone() -> None:
    found = explanations(-0.0548499037, 1 / 3, 12.0)
    assert list(found) == ["flat"]
    assert found["flat"].relief_angle == pytest.approx(math.radians(8), rel=1e-6)


def test_half_a_turn_behind_the_edge_only_a_progressive_relief_is_left() -> None:
    assert list(explanations(0.4, 3.3, 12.0)) == ["progressive"]


def test_a_drop_of_nothing_is_no_cam_or_a_flat_that_just_touches() -> None:
    found = explanations(0.0, 0.3, 12.0)
    assert found["progressive"].relief_angle == 0.0
    assert found["flat"].relief_angle == pytest.approx(0.15, rel=1e-12)


def test_a_flat_is_asked_only_as_far_as_it_reaches() -> None:
    found = explanations(0.1, 0.3, 12.0)
    assert misfit(found["flat"], 0.1, 1.9) is None
    assert misfit(found["progressive"], 0.1, 1.9) is not None


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
    assert progressive.profile(relief, diameter)(0.0) == 0.0
