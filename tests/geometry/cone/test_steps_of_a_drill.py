"""Step drills as lists of diameters, and shoulders under a cam. All expected numbers are derived."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from geometry.cone.steps import Shoulder, relieved, shoulders
from geometry.preconditions import GeometryError

INCLUDED = st.floats(0.1, math.pi)


def test_between_each_two_steps_lies_one_shoulder_counted_from_the_point() -> None:
    found = shoulders((6.0, 8.0, 12.0), (1.5, 2.0))
    assert [(s.number, s.included_angle, s.inner, s.outer) for s in found] == [
        (1, 1.5, 6.0, 8.0),
        (2, 2.0, 8.0, 12.0),
    ]


def test_a_list_from_the_shank_down_is_the_same_tool() -> None:
    assert shoulders((12.0, 8.0, 6.0), (2.0, 1.5)) == shoulders((6.0, 8.0, 12.0), (1.5, 2.0))


def test_one_angle_serves_all_shoulders() -> None:
    assert [s.included_angle for s in shoulders((6.0, 8.0, 10.0, 12.0), (1.5,))] == [1.5, 1.5, 1.5]


def test_one_step_has_no_shoulder() -> None:
    assert shoulders((6.0,), (1.5,)) == ()


@pytest.mark.parametrize(
    ("diameters", "angles", "key"),
    [
        ((6.0, 8.0, 7.0), (1.5,), "diameter"),
        ((6.0, 6.0), (1.5,), "diameter"),
        ((8.0, 6.0, 7.0), (1.5,), "diameter"),
        ((6.0, 8.0, 10.0), (1.5, 1.5, 1.5), "included_angle"),
        ((6.0, 8.0), (0.0,), "included_angle"),
    ],
)
def test_a_list_that_is_no_step_drill_is_refused(
    diameters: tuple[float, ...], angles: tuple[float, ...], key: str
) -> None:
    with pytest.raises(GeometryError) as refused:
        shoulders(diameters, angles)
    assert refused.value.key == key


@given(st.floats(0, 3), st.floats(0, 3), INCLUDED, st.floats(1, 40))
def test_the_fall_of_a_shoulder_is_found_again_by_looking_for_the_land_at_one_diameter(
    radial: float, axial: float, included: float, inner: float
) -> None:
    # Up the generator by s, then moved by the cams of one turn: which s is met at the old diameter?
    half, radius = included / 2, inner / 2
    met = brentq(lambda s: (radius + s * math.sin(half) - radial) - radius, -1.0, 1e3, xtol=1e-13)
    fall = met * math.cos(half) + axial
    cut = relieved(Shoulder(1, included, inner, inner + 2), radial, axial, 2 * math.pi)
    assert cut.fall_per_turn == pytest.approx(fall, rel=1e-9, abs=1e-9)


@given(st.floats(0.01, 3), st.floats(0.01, 3), INCLUDED, st.integers(1, 12))
def test_the_same_cam_counted_per_tooth_or_per_turn_is_one_cam(
    radial: float, axial: float, included: float, flutes: int
) -> None:
    shoulder = Shoulder(1, included, 6.0, 8.0)
    per_tooth = relieved(shoulder, radial, axial, 2 * math.pi / flutes)
    per_turn = relieved(shoulder, radial * flutes, axial * flutes, 2 * math.pi)
    assert per_tooth.fall_per_turn == pytest.approx(per_turn.fall_per_turn, rel=1e-12)
    assert per_tooth.relief(7.0) == pytest.approx(per_turn.relief(7.0), rel=1e-12)


@given(st.floats(0.01, 3), st.floats(0.01, 3), INCLUDED, st.floats(0.001, 10))
def test_a_shoulder_drags_at_all_its_diameters_or_at_none(
    radial: float, axial: float, included: float, feed: float
) -> None:
    cut = relieved(Shoulder(1, included, 6.0, 18.0), radial, axial, 2 * math.pi)
    signs = {cut.left(feed, diameter) > 0 for diameter in (6.0, 9.0, 13.0, 18.0)}
    assert signs == {feed < cut.fall_per_turn}


@given(st.floats(0.001, 30), st.floats(0.001, 30), st.floats(0.5, 10), st.floats(0.1, 40))
def test_no_diameter_of_a_shoulder_has_less_left_than_its_weakest(
    fall: float, feed: float, inner: float, more: float
) -> None:
    cut = relieved(Shoulder(1, math.pi, inner, inner + more), 0.0, fall, 2 * math.pi)
    weakest = cut.weakest_diameter(feed)
    assert inner <= weakest <= inner + more
    least = cut.left(feed, weakest)
    for part in range(101):
        assert cut.left(feed, inner + more * part / 100) >= least - 1e-12
