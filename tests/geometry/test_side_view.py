"""Outlines of a tool seen from the side: their angles, their places, and what is too long to draw."""

from __future__ import annotations

import math
from itertools import accumulate, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.side_view import SideView, chamfer_view, cone_view, is_drawable, point_view, step_view

diameters = st.floats(0.5, 80.0)
cones = st.floats(math.radians(10), math.pi)


@given(cones, diameters, st.floats(0.1, 0.9))
def test_a_cone_leans_by_half_its_included_angle(included: float, diameter: float, share: float) -> None:
    view = cone_view(included, (diameter, share * diameter))
    assert view is not None
    (x1, r1), (x2, r2), (x3, r3) = view.outline
    assert math.atan2(r2 - r1, x2 - x1) == pytest.approx(included / 2, rel=1e-6)
    assert (2 * r1, 2 * r2) == pytest.approx((share * diameter, diameter))
    assert r3 == r2
    assert x3 > x2


def test_one_diameter_draws_the_cone_from_its_tip_and_names_it() -> None:
    view = cone_view(math.radians(90), (20.0,))
    assert view is not None
    assert view.outline[:2] == ((0.0, 0.0), (10.0, 10.0))
    assert [mark.name for mark in view.marks] == ["largest"]


def test_places_between_are_numbered_as_in_the_table_from_the_largest_down() -> None:
    view = cone_view(math.radians(90), (20.0, 6.0, 12.0, 9.0))
    assert view is not None
    assert [(mark.name, 2 * mark.radius) for mark in view.marks] == [
        ("smallest", 6.0),
        ("place 3", 9.0),
        ("place 2", 12.0),
        ("largest", 20.0),
    ]


@pytest.mark.parametrize(("included", "length"), [(math.pi, 0.0), (0.0, 0.0)])
def test_a_face_and_a_cylinder_have_no_length_of_cone(included: float, length: float) -> None:
    view = cone_view(included, (20.0,))
    assert view is not None
    assert view.marks[-1].behind == length


def test_a_cone_that_would_be_longer_than_any_drawing_is_left_out() -> None:
    assert cone_view(math.radians(0.1), (20.0, 6.0)) is None
    assert cone_view(0.0, (20.0, 6.0)) is None
    assert point_view(math.radians(0.1), 10.0) is None
    assert step_view((6.0, 20.0), (math.radians(0.1),)) is None


@given(st.lists(st.floats(0.5, 10.0), min_size=1, max_size=12), st.floats(math.radians(60), math.pi))
def test_steps_rise_to_each_diameter_with_a_shoulder_of_the_angle_given(
    rises: list[float], included: float
) -> None:
    rising = list(accumulate(rises))
    view = step_view(rising, [included] * (len(rising) - 1))
    assert view is not None
    assert is_drawable(view)
    assert [2 * mark.radius for mark in view.marks if mark.name.startswith("step")] == pytest.approx(rising)
    slopes = [
        math.atan2(after[1] - before[1], after[0] - before[0])
        for before, after in pairwise(view.outline)
        if after[1] > before[1]
    ]
    assert slopes == pytest.approx([included / 2] * (len(rising) - 1), rel=1e-6)
    assert view.supposed


@given(diameters, st.floats(0.01, 0.12), st.floats(0.5, 10.0))
def test_the_threads_of_a_tap_grow_along_the_chamfer_and_then_stay_full(
    diameter: float, pitch_share: float, threads: float
) -> None:
    pitch = pitch_share * diameter
    depth = 0.6 * pitch
    view = chamfer_view(diameter, diameter - 2 * depth, threads * pitch, pitch, depth)
    assert is_drawable(view)
    crests = [radius for _, radius in view.outline[1::2]]
    assert crests == sorted(crests)
    assert max(crests) == pytest.approx(diameter / 2)
    assert min(radius for _, radius in view.outline) == pytest.approx(diameter / 2 - depth)


@pytest.mark.parametrize(
    "outline",
    [
        (),
        ((0.0, 1.0),),
        ((0.0, 1.0), (math.inf, 1.0)),
        ((2.0, 1.0), (1.0, 1.0)),
        ((0.0, 0.0), (1.0, 0.0)),
        ((0.0, -1.0), (1.0, 1.0)),
    ],
)
def test_what_has_no_length_no_width_or_no_order_is_not_drawable(
    outline: tuple[tuple[float, float], ...],
) -> None:
    assert not is_drawable(SideView(outline))


@given(st.floats(0.2, 200.0), st.floats(0.01, math.pi), st.floats(-3.0, 3.0))
def test_a_calculation_of_a_cone_gives_a_view_that_can_be_drawn_or_none(
    diameter: float, included: float, cam: float
) -> None:
    values: dict[str, Given] = {
        "diameter": (diameter, diameter / 3),
        "included_angle": included,
        "radial_throw": cam,
        "throw_per": "turn",
        "land_measured_as": "arc",
    }
    try:
        result = run(calculation("cone-relief"), values)
    except Refusal:
        return
    assert result.side is None or is_drawable(result.side)
