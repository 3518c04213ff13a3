"""End teeth under a tilted and swivelled work head, by turned vectors, planes and lines."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.edge.end_teeth import corner_relief, dish_depth, dish_of_depth, end_drop, head_swivel

Vector = tuple[float, float, float]
DISHES, RELIEFS = st.floats(0.0, 0.2), st.floats(0.01, 0.5)


def swivelled(place: Vector, turn: float) -> Vector:
    """Turned about the upright."""
    x, y, z = place
    return (x * math.cos(turn) + z * math.sin(turn), y, z * math.cos(turn) - x * math.sin(turn))


def tilted(place: Vector, turn: float) -> Vector:
    """Turned about the level way across the spindle."""
    x, y, z = place
    return (x, y * math.cos(turn) - z * math.sin(turn), y * math.sin(turn) + z * math.cos(turn))


@given(DISHES, RELIEFS)
def test_tilt_and_swivel_lay_edge_and_land_along_the_wheel(dish: float, relief: float) -> None:
    # Derived: the face of the wheel is upright across z. The edge runs inward and back, the land behind it toward the shank.
    edge = (-math.cos(dish), 0.0, math.sin(dish))
    land = (0.0, math.cos(relief), math.sin(relief))
    for way in (edge, land):
        held = swivelled(tilted(way, -relief), -head_swivel(dish, relief))
        assert held[2] == pytest.approx(0.0, abs=1e-12)


@given(DISHES, RELIEFS, st.floats(0.0, 1.5), st.floats(2, 60))
def test_the_indicator_along_the_axis_meets_the_plane_of_the_tooth(
    dish: float, relief: float, turned: float, diameter: float
) -> None:
    # Derived: the plane through the edge and the land, found by their cross product, cut by a line along the axis.
    edge, land = (-math.cos(dish), 0.0, math.sin(dish)), (0.0, math.cos(relief), math.sin(relief))
    square = (
        edge[1] * land[2] - edge[2] * land[1],
        edge[2] * land[0] - edge[0] * land[2],
        edge[0] * land[1] - edge[1] * land[0],
    )
    across = diameter / 2 * (math.cos(turned) - 1), diameter / 2 * math.sin(turned)
    met = -(square[0] * across[0] + square[1] * across[1]) / square[2]
    assert end_drop(turned, relief, dish, diameter) == pytest.approx(met, abs=1e-9 * diameter)


@given(st.floats(0.0, 0.4), RELIEFS, st.floats(0.05, 1.5))
def test_with_its_relief_a_corner_chamfer_is_as_wide_behind_the_edge_as_at_it(
    land: float, end: float, lies: float
) -> None:
    # Derived, in the plane through the axis some way behind the edge: outside and end have come in, the chamfer too.
    behind, width = 0.3, 1.0
    outside, front = behind * math.tan(land), behind * math.tan(end)
    inward = behind * math.tan(corner_relief(land, end, lies))
    # The chamfer was the line from (0, 0) at the end to its corner with the outside, across the axis and along it.
    square = (math.cos(lies), -math.sin(lies))
    offset = -inward
    # Where it meets the end (along the axis at ``front``) and the outside (across it, ``outside`` further in).
    at_end = (offset + front * math.sin(lies)) / square[0]
    at_outside = width * math.sin(lies) - outside
    found = (at_outside - at_end) / math.sin(lies)
    assert found == pytest.approx(width, rel=1e-9, abs=1e-9)


@given(st.floats(-0.2, 0.2), st.floats(2, 60), st.floats(0.0, 0.9))
def test_a_dish_is_found_again_from_its_depth(dish: float, diameter: float, share: float) -> None:
    inner = share * diameter
    assert dish_of_depth(dish_depth(dish, diameter, inner), diameter, inner) == pytest.approx(dish, abs=1e-12)


def test_a_corner_between_outside_and_end_has_the_relief_of_the_one_it_becomes() -> None:
    assert corner_relief(0.1, 0.2, 0.0) == pytest.approx(0.1)
    assert corner_relief(0.1, 0.2, math.pi / 2) == pytest.approx(0.2)
    # By hand: 2 x 0.140541 x 0.707107 is the tangent of 11.24 degrees.
    assert math.degrees(corner_relief(math.radians(8), math.radians(8), math.radians(45))) == pytest.approx(
        11.24, abs=5e-3
    )
