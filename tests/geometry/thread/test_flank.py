"""The relief of a flank against the turned flank itself, built of points, and against what is published of hobs."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.thread.flank import flank_gap, flank_relief, radial_of_flank, side_relief

Vector = tuple[float, float, float]


def minus(one: Vector, other: Vector) -> Vector:
    return (one[0] - other[0], one[1] - other[1], one[2] - other[2])


def cross(one: Vector, other: Vector) -> Vector:
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


def dot(one: Vector, other: Vector) -> float:
    return sum(a * b for a, b in zip(one, other, strict=True))


def thread_flank(radius: float, flank: float, climb: float, fall: float) -> Callable[[float, float], Vector]:
    """A flank by the turn (rad) and the way up it (mm), which falls toward the axis behind the edge."""

    def place(turned: float, up: float) -> Vector:
        out = radius + up - fall * turned
        along = radius * math.tan(climb) * turned + up * math.tan(flank)
        return (out * math.cos(turned), out * math.sin(turned), along)

    return place


@given(st.floats(0.05, 1.0), st.floats(0.0, 0.3), st.floats(0.005, 0.3))
def test_a_flank_falls_away_from_the_thread_in_front_of_it(flank: float, climb: float, relief: float) -> None:
    # Derived: the tangents of the flank that was cut and of the one behind the edge, and the angle between their planes
    # in the section along the thread.
    radius, step = 6.0, 1e-6
    fall = radius * math.tan(relief)
    cut, ground = (thread_flank(radius, flank, climb, k) for k in (0.0, fall))
    edge = cut(0.0, 0.0)
    up, along = minus(cut(0.0, step), edge), minus(cut(step, 0.0), edge)
    square = cross(up, along)
    behind = minus(ground(step, 0.0), edge)
    # The point behind the edge lies beside the way along the thread as well: only what is square to the flank counts.
    away = abs(dot(behind, square)) / math.sqrt(dot(square, square))
    way = math.sqrt(dot(along, along))
    assert math.tan(flank_relief(relief, flank, climb)) == pytest.approx(away / way, rel=1e-4)
    assert flank_gap(fall * step, flank, climb) == pytest.approx(away, rel=1e-4)


def test_the_side_relief_is_that_of_the_hobs_for_which_it_is_published() -> None:
    # Published for the relieving of hobs: atan(tan(pressure angle) tan(cam angle)); 20 and 10 degrees by hand.
    hand = math.degrees(math.atan(0.363970 * 0.176327))
    assert math.degrees(side_relief(math.radians(10), math.radians(20))) == pytest.approx(hand, abs=1e-4)


def test_a_60_degree_flank_takes_half_of_the_fall_and_not_the_cosine_of_it() -> None:
    # Derived: a square fall of 1 on a side of an equilateral triangle.
    assert flank_gap(1.0, math.radians(30)) == pytest.approx(0.5)
    assert math.tan(flank_relief(0.05, math.radians(30))) == pytest.approx(math.tan(0.05) / 2)


@given(st.floats(0.02, 1.0), st.floats(0.0, 0.3), st.floats(0.0, 0.7))
def test_the_relief_of_the_land_is_found_again_from_that_of_the_flank(
    flank: float, climb: float, relief: float
) -> None:
    again = radial_of_flank(flank_relief(relief, flank, climb), flank, climb)
    assert again == pytest.approx(relief, rel=1e-9, abs=1e-12)


def test_a_flank_square_to_the_axis_gets_nothing_from_a_fall_toward_it() -> None:
    assert flank_relief(0.1, 0.0) == side_relief(0.1, 0.0) == 0.0
    with pytest.raises(GeometryError):
        radial_of_flank(0.05, 0.0)
