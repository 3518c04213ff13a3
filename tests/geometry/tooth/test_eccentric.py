"""The even cam, against a spiral drawn point by point and its numerical tangent."""

from __future__ import annotations

import math

import mpmath
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.optimize import brentq

from geometry.preconditions import GeometryError
from geometry.tooth import eccentric

diameters = st.floats(0.05, 500.0)
reliefs = st.floats(math.radians(0.05), math.radians(45))
angles = st.floats(1e-6, 0.9)


def slope_of_the_spiral(turned: float, fall: float, radius: float) -> float:
    """The angle between the spiral and the circle through the same place, from its numerical tangent."""
    with mpmath.workdps(40):

        def across(at: mpmath.mpf) -> mpmath.mpf:
            return (radius - fall * at) * mpmath.sin(at)

        def up(at: mpmath.mpf) -> mpmath.mpf:
            return (radius - fall * at) * mpmath.cos(at)

        along = (mpmath.diff(across, turned), mpmath.diff(up, turned))
        inward = along[0] * -mpmath.sin(turned) + along[1] * -mpmath.cos(turned)
        round_about = along[0] * mpmath.cos(turned) - along[1] * mpmath.sin(turned)
        return float(mpmath.atan2(inward, round_about))


@given(diameters, reliefs)
def test_the_surface_leaves_the_edge_at_the_relief_angle(diameter: float, relief: float) -> None:
    fall = eccentric.throw_per_radian(relief, diameter)
    assert slope_of_the_spiral(0.0, fall, diameter / 2) == pytest.approx(relief, rel=1e-9)


@given(diameters, reliefs, angles)
def test_the_local_relief_is_the_slope_of_the_spiral_there(
    diameter: float, relief: float, turned: float
) -> None:
    assume(turned * math.tan(relief) < 0.95)
    fall = diameter / 2 * math.tan(relief)
    drawn = slope_of_the_spiral(turned, fall, diameter / 2)
    assert eccentric.local_relief(turned, relief, diameter) == pytest.approx(drawn, rel=1e-9)
    assert eccentric.local_relief(turned, relief, diameter) >= relief * (1 - 1e-12)


@given(diameters, reliefs, angles)
def test_the_drop_over_an_arc_is_the_arc_times_the_tangent(
    diameter: float, relief: float, turned: float
) -> None:
    assume(turned * math.tan(relief) < 0.99)
    arc = turned * diameter / 2
    assert eccentric.drop(turned, relief, diameter) == pytest.approx(arc * math.tan(relief), rel=1e-13)
    assert eccentric.profile(relief, diameter)(turned) == pytest.approx(arc * math.tan(relief), rel=1e-13)


@given(diameters, reliefs, angles)
def test_drop_and_relief_lead_back_to_each_other(diameter: float, relief: float, turned: float) -> None:
    assume(turned * math.tan(relief) < 0.99)
    drop = eccentric.drop(turned, relief, diameter)
    assert eccentric.relief_angle_from_drop(drop, turned, diameter) == pytest.approx(relief, rel=1e-12)


@given(diameters, angles, st.floats(1e-4, 0.9))
def test_the_relief_of_a_reading_is_the_root_of_its_drop(
    diameter: float, turned: float, share: float
) -> None:
    drop = share * diameter / 2
    steepness = brentq(
        lambda tangent: diameter / 2 * tangent * turned - drop, 0.0, 2 / turned, xtol=1e-15, rtol=1e-14
    )
    found = eccentric.relief_angle_from_drop(drop, turned, diameter)
    assert math.tan(found) == pytest.approx(steepness, rel=1e-9)


@pytest.mark.parametrize("lobes", [1, 2, 3, 4, 10])
def test_the_lobes_of_a_cam_share_the_fall_of_a_turn(lobes: int) -> None:
    # The relation pi D tan(a) / Z is the one published for the cam rise of form-relieved hobs; the number is derived.
    relief, diameter = math.radians(10), 80.0
    one_tooth = 2 * math.pi / lobes * eccentric.throw_per_radian(relief, diameter)
    assert eccentric.throw_per_turn(relief, diameter) / lobes == pytest.approx(one_tooth, rel=1e-14)
    assert eccentric.throw_per_turn(relief, diameter) / 10 == pytest.approx(4.43, abs=5e-3)


@given(reliefs, st.floats(0.01, 5.0))
def test_on_a_very_large_tool_it_is_the_tangent_line(relief: float, land: float) -> None:
    assert eccentric.drop(2 * land / 1e9, relief, 1e9) == pytest.approx(land * math.tan(relief), rel=1e-9)


def test_the_case_of_twelve_millimetres() -> None:
    assert eccentric.drop(1 / 3, math.radians(8), 12.0) == pytest.approx(0.28108, abs=5e-6)
    assert 2.0 * math.tan(math.radians(8)) == pytest.approx(0.28108, abs=5e-6)


def test_the_case_of_half_an_inch() -> None:
    in_inches = eccentric.drop(0.080 / 0.25, math.radians(7), 0.5)
    assert in_inches == pytest.approx(0.00982, abs=5e-6)
    assert 0.080 * math.tan(math.radians(7)) == pytest.approx(0.00982, abs=5e-6)
    assert eccentric.drop(0.080 / 0.25, math.radians(7), 12.7) == pytest.approx(25.4 * in_inches, rel=1e-12)


def test_it_never_comes_back_to_the_circle() -> None:
    assert eccentric.clear_angle(math.radians(8)) == pytest.approx(2 * math.pi)
    assert eccentric.clear_angle(math.radians(30)) == pytest.approx(math.sqrt(3))
    assert eccentric.clear_angle(0.0) == 0.0


def test_without_relief_nothing_falls() -> None:
    assert eccentric.drop(1.0, 0.0, 12.0) == 0.0
    assert eccentric.relief_angle_from_drop(0.0, 1.0, 12.0) == 0.0


@pytest.mark.parametrize(
    ("turned", "relief", "diameter"),
    [
        (1.1, math.radians(45), 12.0),
        (-0.1, 0.1, 12.0),
        (0.1, -0.1, 12.0),
        (0.1, math.pi / 2, 12.0),
        (0.1, 0.1, 0.0),
        (math.nan, 0.1, 12.0),
    ],
)
def test_what_no_cam_can_grind_is_refused(turned: float, relief: float, diameter: float) -> None:
    with pytest.raises(GeometryError):
        eccentric.drop(turned, relief, diameter)


@pytest.mark.parametrize(
    ("drop", "turned", "says"),
    [(-0.01, 0.3, "stands proud"), (6.0, 0.3, "more than the radius"), (0.1, 0.0, "more than zero")],
)
def test_a_reading_that_no_cam_explains_is_refused(drop: float, turned: float, says: str) -> None:
    with pytest.raises(GeometryError, match=says):
        eccentric.relief_angle_from_drop(drop, turned, 12.0)
