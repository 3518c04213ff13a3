"""Index moves, counted again hole by hole and in exact fractions."""

from __future__ import annotations

import math
from fractions import Fraction
from itertools import accumulate

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.setting.indexing import (
    CIRCLES,
    LEAST_SPACING,
    Move,
    even_moves,
    exact_circles,
    listed_moves,
    needed_circle,
    places_of,
    same_count,
    worst_even_error,
    worst_listed_error,
)

divisions = st.integers(1, 60)
ratios = st.sampled_from([1, 5, 24, 40, 60, 90, 120])
circles = st.integers(1, 120)


def reached(moves: tuple[Move, ...], circle: int) -> list[int]:
    """The holes passed from the first edge on, by counting."""
    return list(accumulate(move.turns * circle + move.holes for move in moves))


def exact_errors(divisions: int, ratio: int, circle: int) -> list[Fraction]:
    """In holes, each place met to the nearest hole, in exact fractions."""
    places = [Fraction(place * ratio * circle, divisions) for place in range(1, divisions + 1)]
    return [math.floor(place + Fraction(1, 2)) - place for place in places]


@given(divisions, ratios, circles)
def test_every_move_of_even_spacing_reaches_the_nearest_hole(number: int, ratio: int, circle: int) -> None:
    moves = even_moves(number, ratio, circle)
    part = 2 * math.pi / (ratio * circle)
    for move, error in zip(moves, exact_errors(number, ratio, circle), strict=True):
        assert move.error == pytest.approx(float(error) * part, abs=1e-12)
    assert reached(moves, circle)[-1] == ratio * circle
    assert all(0 <= move.holes < circle for move in moves)


@given(divisions, ratios, circles)
def test_the_worst_error_is_that_of_the_worst_place(number: int, ratio: int, circle: int) -> None:
    worst = max(abs(error) for error in exact_errors(number, ratio, circle))
    found = worst_even_error(number, ratio, circle)
    assert found == pytest.approx(float(worst) * 2 * math.pi / (ratio * circle), abs=1e-13)
    assert found <= math.pi / (ratio * circle)


@given(divisions, ratios)
def test_the_needed_circle_is_the_smallest_that_is_exact(number: int, ratio: int) -> None:
    tried = next(holes for holes in range(1, 200) if worst_even_error(number, ratio, holes) == 0)
    assert needed_circle(number, ratio) == tried


@given(divisions, ratios, st.lists(circles, min_size=1, max_size=8, unique=True))
def test_exact_circles_are_those_without_error_the_largest_first(
    number: int, ratio: int, plates: list[int]
) -> None:
    without = sorted((c for c in plates if worst_even_error(number, ratio, c) == 0), reverse=True)
    assert list(exact_circles(number, ratio, plates)) == without


@given(divisions, ratios, circles)
def test_even_spacing_given_as_a_list_of_angles_gives_the_same_errors(
    number: int, ratio: int, circle: int
) -> None:
    places = [2 * math.pi * place / number for place in range(1, number + 1)]
    assert worst_listed_error(places, ratio, circle) == pytest.approx(
        worst_even_error(number, ratio, circle), abs=1e-8
    )


@given(st.lists(st.floats(0.02, 6.0), min_size=1, max_size=12), ratios, circles)
def test_listed_moves_reach_the_nearest_hole_of_every_place(
    spacing: list[float], ratio: int, circle: int
) -> None:
    places = list(accumulate(spacing))
    moves = listed_moves(places, ratio, circle)
    part = 2 * math.pi / (ratio * circle)
    turned = list(accumulate(move.angle for move in moves))
    for place, there, move in zip(places, turned, moves, strict=True):
        assert move.error == pytest.approx(there - place, abs=2e-9)
        assert abs(move.error) <= part / 2 * (1 + 1e-9) + 1e-9
    assert max(abs(move.error) for move in moves) == pytest.approx(
        worst_listed_error(places, ratio, circle), abs=1e-12
    )


def test_places_end_on_the_whole_turn_even_where_the_angles_were_rounded() -> None:
    sevenths = [math.radians(51.43)] * 7
    places = places_of(sevenths)
    assert places[-1] == 2 * math.pi
    assert places[2] == pytest.approx(math.radians(3 * 51.43))


def test_angles_that_miss_the_whole_turn_are_refused_with_what_is_missing() -> None:
    with pytest.raises(GeometryError, match=r"0\.2 deg short"):
        places_of([math.radians(51.4)] * 7)
    with pytest.raises(GeometryError, match="over"):
        places_of([math.radians(61)] * 6)


def test_edges_that_fall_together_are_refused() -> None:
    with pytest.raises(GeometryError, match="one edge"):
        places_of([LEAST_SPACING / 2, 2 * math.pi - LEAST_SPACING / 2])


def test_one_angle_is_wanted_for_each_edge() -> None:
    same_count([1.0, 2.0], 2)
    with pytest.raises(GeometryError, match="each of the 3 edges"):
        same_count([1.0, 2.0], 3)


@pytest.mark.parametrize("bad", [0, -1])
def test_counts_start_at_one(bad: int) -> None:
    for ask in (
        lambda: needed_circle(bad, 40),
        lambda: needed_circle(6, bad),
        lambda: worst_even_error(6, 40, bad),
        lambda: even_moves(bad, 40, 20),
        lambda: listed_moves([1.0], 40, bad),
        lambda: exact_circles(6, 40, (bad,)),
    ):
        with pytest.raises(GeometryError):
            ask()


def test_one_division_is_one_turn_of_the_spindle() -> None:
    (move,) = even_moves(1, 40, 24)
    assert (move.turns, move.holes, move.error) == (40, 0, 0.0)


def test_the_common_plate_divides_every_number_of_flutes_that_a_tool_may_have() -> None:
    assert [number for number in range(1, 61) if not exact_circles(number, 40, CIRCLES)] == []
    assert not exact_circles(61, 40, CIRCLES)
