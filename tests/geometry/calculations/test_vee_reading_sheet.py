"""A tool with an odd number of flutes in a vee, found again by letting it down into a drawn vee."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.tooth.vee import fitting_vee, vee_of

SHEET = calculation("vee-reading")
ODD = st.integers(1, 14).map(lambda n: 2.0 * n + 1)


def let_down(edges: list[float], radius: float, vee: float) -> float:
    """The height of the axis above the apex when some edges, at angles from the top, first meet the sides of the vee.

    Each edge is a point; its distance to each side is counted with the vector square to that side.
    """

    def gap(height: float) -> float:
        places = [(radius * math.sin(a), height + radius * math.cos(a)) for a in edges]
        sides = [(math.cos(vee / 2), math.sin(vee / 2)), (-math.cos(vee / 2), math.sin(vee / 2))]
        return min(u * x + v * y for x, y in places for u, v in sides)

    return float(brentq(gap, 0.0, 60 * radius, xtol=1e-13))


@given(ODD, st.floats(0.5, 100.0))
def test_in_the_vee_that_fits_the_edges_stop_where_the_circle_does(flutes: float, diameter: float) -> None:
    # Derived: the edges are let down as points, the circle as 720 of them.
    radius, vee = diameter / 2, fitting_vee(flutes)
    edges = [2 * math.pi * n / flutes for n in range(int(flutes))]
    top = let_down(edges, radius, vee) + radius
    found = run(SHEET, {"flutes": flutes, "diameter": diameter}).outputs
    assert found["vee_reading"] == pytest.approx(top, rel=1e-9)
    circle = [math.pi * n / 360 for n in range(720)]
    assert let_down(circle, radius, vee) + radius == pytest.approx(top, rel=1e-4)


@given(st.sampled_from([3.0, 5.0, 9.0, 15.0]), st.floats(-0.4, 0.4))
def test_a_vee_a_little_off_is_counted_with_its_own_angle(flutes: float, off: float) -> None:
    vee = math.radians({3.0: 60, 9.0: 60, 5.0: 108, 15.0: 108}[flutes] + off)
    edges = [2 * math.pi * n / flutes for n in range(int(flutes))]
    found = run(SHEET, {"flutes": flutes, "vee_angle": vee, "diameter": 10.0})
    lowest = min(edges, key=lambda a: abs(a - (math.pi / 2 + vee / 2)))
    # The two edges nearest to where the sides touch carry the tool.
    carried = let_down([lowest, -lowest], 5.0, vee) + 5.0
    assert found.outputs["vee_reading"] == pytest.approx(carried, rel=1e-9)
    assert found.checks[0].state == "pass"


def test_three_flutes_in_a_vee_of_60_read_half_as_much_again_as_the_diameter() -> None:
    # D = 2 M / 3, as it is known of flute micrometers. By hand: sin 30 is a half, so M = R (1 + 2).
    found = run(SHEET, {"flutes": 3.0, "vee_angle": math.radians(60), "vee_reading": 18.0}).outputs
    assert found["diameter"] == pytest.approx(12.0, rel=1e-12)
    assert found["vee_gain"] == pytest.approx(1.5, rel=1e-12)


@pytest.mark.parametrize(("flutes", "degrees"), [(3, 60), (5, 108)])
def test_the_vee_that_fits_is_that_of_flute_micrometers(flutes: int, degrees: int) -> None:
    # A home workshop's page on flute micrometers: 60 degrees for three flutes, 108 for five.
    assert math.degrees(fitting_vee(flutes)) == pytest.approx(degrees, rel=1e-12)


@given(ODD, st.floats(1.0, 50.0), st.floats(1.0, 50.0))
def test_the_difference_to_a_master_gives_back_the_diameter(
    flutes: float, diameter: float, master: float
) -> None:
    there = run(SHEET, {"flutes": flutes, "diameter": diameter, "master_diameter": master}).outputs
    back = run(
        SHEET, {"flutes": flutes, "vee_difference": there["vee_difference"], "master_diameter": master}
    )
    assert back.outputs["diameter"] == pytest.approx(diameter, rel=1e-9)


def test_a_master_of_the_same_size_shows_no_difference() -> None:
    found = run(SHEET, {"flutes": 7.0, "diameter": 12.0, "master_diameter": 12.0}).outputs
    assert found["vee_difference"] == pytest.approx(0.0, abs=1e-12)


def test_many_flutes_lie_nearly_flat_and_read_nearly_the_diameter() -> None:
    assert vee_of(fitting_vee(59)).reading(10.0) == pytest.approx(10.0, rel=1e-3)


def test_five_flutes_in_a_vee_of_90_rock_and_are_told_which_vee_fits() -> None:
    wrong: dict[str, Given] = {"flutes": 5.0, "vee_angle": math.radians(90), "vee_reading": 14.5}
    (stop, *_) = run(SHEET, wrong).checks
    assert stop.state == "stop"
    ((key, fit),) = stop.cure
    assert key == "vee_angle"
    assert fit == pytest.approx(math.radians(108))


@pytest.mark.parametrize(
    ("values", "key"),
    [
        ({"flutes": 4.0, "vee_reading": 18.0}, "flutes"),
        ({"flutes": 1.0, "vee_reading": 18.0}, "flutes"),
        ({"vee_reading": 18.0}, "vee_angle"),
        ({"flutes": 3.0, "vee_difference": 0.1}, "master_diameter"),
        ({"flutes": 3.0, "vee_difference": -40.0, "master_diameter": 12.0}, "vee_difference"),
        ({"flutes": 3.0, "vee_reading": 0.02}, "vee_reading"),
    ],
)
def test_what_cannot_be_read_is_refused_at_its_own_input(values: dict[str, Given], key: str) -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, values)
    assert [problem.key for problem in refused.value.problems] == [key]
