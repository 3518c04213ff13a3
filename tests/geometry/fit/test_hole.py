"""Limits of holes: the tables of ISO 286 against the formulas that ISO 286-1 gives for them."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence

import pytest

from geometry.fit.hole import CLASSES, hole_limits
from geometry.fit.iso_286 import BELOW, FINER_STEPS, GRADES, LOWER, STEPS
from geometry.preconditions import GeometryError


def middles(steps: Sequence[int]) -> list[float]:
    """The geometric mean of each step, by which ISO 286-1 counts; the first one begins at 1 mm."""
    return [math.sqrt(low * high) for low, high in zip((1, *steps[:-1]), steps, strict=True)]


def rounding(value: float) -> float:
    """How far a printed tolerance may lie from its formula: a whole micrometre, or 3 percent of a coarse one."""
    return max(1.0, 0.03 * value)


# ISO 286-1, A.3.2.2: multiples of i = 0.45 cbrt(D) + 0.001 D. The first step is printed a little wider.
@pytest.mark.parametrize(
    ("grade", "multiple"), [(5, 7), (6, 10), (7, 16), (8, 25), (9, 40), (10, 64), (11, 100)]
)
def test_a_grade_is_so_many_times_the_unit_of_tolerance(grade: int, multiple: float) -> None:
    found = list(zip(middles(STEPS), GRADES[grade], strict=True))
    for middle, wide in found[1:]:
        wanted = multiple * (0.45 * middle ** (1 / 3) + 0.001 * middle)
        assert abs(wide - wanted) <= rounding(wanted), (middle, wanted)
    assert 0 <= found[0][1] / (multiple * 0.542) - 1 < 0.16


# ISO 286-1, table of formulas for fundamental deviations, in micrometres with D in mm.
@pytest.mark.parametrize(
    ("letter", "formula"),
    [
        ("D", lambda d: 16 * d**0.44),
        ("E", lambda d: 11 * d**0.41),
        ("F", lambda d: 5.5 * d**0.41),
        ("G", lambda d: 2.5 * d**0.34),
    ],
)
def test_a_hole_above_its_size_begins_where_the_formula_says(
    letter: str, formula: Callable[[float], float]
) -> None:
    for middle, low in list(zip(middles(STEPS), LOWER[letter], strict=True))[1:]:
        assert abs(low - formula(middle)) <= max(1.5, 0.025 * low), middle


def test_tight_letters_follow_from_those_beside_them() -> None:
    # ISO 286-1: n is 5 D^0.34, p is IT7 and up to 6 more, s is IT7 + 0.4 D above 50 mm, r the geometric mean of p and s.
    for middle, below in list(zip(middles(STEPS), BELOW["N"], strict=True))[1:]:
        assert abs(below - 5 * middle**0.34) <= 1
    for seventh, below in list(zip(GRADES[7], BELOW["P"], strict=True))[1:]:
        assert 0 <= below - seventh <= 6
    for step, middle, r, s in zip(FINER_STEPS, middles(FINER_STEPS), BELOW["R"], BELOW["S"], strict=True):
        at = bisect_left(STEPS, step)
        assert abs(r - math.sqrt(BELOW["P"][at] * s)) <= 1.5
        assert step <= 50 or abs(s - GRADES[7][at] - 0.4 * middle) <= 1


@pytest.mark.parametrize("tolerance_class", CLASSES)
def test_the_two_limits_lie_the_tolerance_of_the_grade_apart(tolerance_class: str) -> None:
    grade = int("".join(sign for sign in tolerance_class if sign.isdigit()))
    for at, size in enumerate(STEPS):
        assert hole_limits(float(size), tolerance_class).width == pytest.approx(GRADES[grade][at] / 1000)


def test_a_step_ends_with_its_own_size() -> None:
    # ISO 286-1: over 10 up to and including 18.
    assert hole_limits(18.0, "H7").high == pytest.approx(18.018)
    assert hole_limits(18.001, "H7").high == pytest.approx(18.022)


def test_a_size_beyond_the_tables_is_refused_with_the_way_round_it() -> None:
    with pytest.raises(GeometryError, match="give the limits of the hole"):
        hole_limits(500.1, "H7")
    with pytest.raises(GeometryError, match="no tolerance class"):
        hole_limits(10.0, "h7")
