"""Unequal spaces on plates, against a search through all of them and against the moves of the index."""

from __future__ import annotations

import math
from itertools import combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.setting.indexing import CIRCLES, places_of, worst_listed_error
from geometry.setting.unequal import least_circle, nearest_spacing, spacing_on, usual_step


@given(
    st.lists(st.sampled_from(CIRCLES), min_size=1, max_size=6),
    st.sampled_from([40, 60, 90]),
    st.integers(3, 24),
    st.floats(0.3, 4.0),
    st.booleans(),
)
def test_every_edge_falls_on_a_hole_and_no_two_spaces_are_alike(
    circles: list[int], head: int, flutes: int, step: float, opposite: bool
) -> None:
    # Another way: the places are handed to the moves of the index, which meet each to the nearest hole.
    opposite = opposite and flutes % 2 == 0
    found = nearest_spacing(circles, head, flutes, math.radians(step), opposite)
    assert found is not None
    spacing, _ = found
    assert len(spacing.angles) == flutes
    assert worst_listed_error(places_of(spacing.angles), head, spacing.circle) == 0
    spaces = flutes // 2 if opposite else flutes
    assert len(set(spacing.holes)) == spaces
    assert not opposite or spacing.holes[:spaces] == spacing.holes[spaces:]


@pytest.mark.parametrize(("circle", "flutes", "step"), [(24, 3, 10.0), (30, 4, 12.0), (37, 5, 9.0)])
def test_no_other_set_of_spaces_on_the_circle_comes_nearer_to_the_step(
    circle: int, flutes: int, step: float
) -> None:
    # Derived: all sets of unlike spaces that fill a circle of direct indexing.
    part = 360 / circle

    def missed(holes: tuple[int, ...]) -> float:
        return max(abs((b - a) * part - step) for a, b in pairwise(holes))

    best = min(missed(one) for one in combinations(range(1, circle), flutes) if sum(one) == circle)
    found = spacing_on(circle, 1, flutes, math.radians(step), False)
    assert found is not None
    assert missed(tuple(sorted(found.holes))) == pytest.approx(best)


def test_eight_edges_of_2_degree_steps_stand_42_44_46_and_48_degrees_apart() -> None:
    # By hand: 4 x 45 = 180 = 42 + 44 + 46 + 48; a hole of 54 on a head of 40 is a sixth of a degree.
    found = nearest_spacing(CIRCLES, 40, 8, math.radians(2), True)
    assert found is not None
    assert found[0].circle == 54
    assert [math.degrees(one) for one in found[0].angles] == pytest.approx([42, 44, 46, 48] * 2)


@pytest.mark.parametrize("flutes", [3, 5, 7, 9, 11])
def test_the_order_balances_the_edges_no_worse_than_rising_spaces_do(flutes: int) -> None:
    # Another way: the middle of the edges by sines and cosines of the places.
    found = nearest_spacing(CIRCLES, 40, flutes, usual_step(flutes), False)
    assert found is not None

    def off(angles: tuple[float, ...]) -> float:
        places = [math.fsum(angles[:at]) for at in range(len(angles))]
        across, up = (math.fsum(map(round_, places)) for round_ in (math.cos, math.sin))
        return math.hypot(across, up) / len(angles)

    spacing = found[0]
    assert spacing.off_balance == pytest.approx(off(spacing.angles), abs=1e-9)
    assert off(spacing.angles) <= off(tuple(sorted(spacing.angles))) + 1e-9


def test_edges_that_stand_opposite_balance_and_need_a_half_turn_of_whole_holes() -> None:
    assert spacing_on(15, 1, 4, 0.5, True) is None
    found = spacing_on(16, 1, 4, 0.5, True)
    assert found is not None
    assert found.off_balance == 0
    # By hand: 1 + 2 + 3 + 4 + 5 holes are the least that five unlike spaces go into.
    assert least_circle(1, 5, False, 100) == 15
    assert spacing_on(14, 1, 5, 0.1, False) is None
    assert least_circle(1, 5, False, 14) is None
