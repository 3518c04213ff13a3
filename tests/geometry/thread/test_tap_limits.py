"""The tolerances behind the limits of taps, by the formula of their standard."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

from geometry.preconditions import GeometryError
from geometry.thread.form import thread
from geometry.thread.iso_965 import FIRST, GRADE_5, STEPS
from geometry.thread.tap_limits import MARKS, fifth_grade, number_of, tap_limits


def test_every_tolerance_is_that_of_the_formula_to_its_rounding() -> None:
    # ISO 965-1: 1.06 x 90 P^0.4 d^0.1, d the geometric mean of the step, rounded to the R 40 series, whose steps are 6 percent.
    for low, high, row in zip((FIRST, *STEPS), STEPS, GRADE_5, strict=False):
        for pitch, wide in row.items():
            wanted = 1.06 * 90 * pitch**0.4 * math.sqrt(low * high) ** 0.1
            assert wide == pytest.approx(wanted, rel=0.04), (high, pitch)


def test_tolerances_grow_with_pitch_and_with_diameter() -> None:
    for row in GRADE_5:
        assert [*row.values()] == sorted(row.values())
    for smaller, larger in pairwise(GRADE_5):
        assert all(smaller[pitch] < larger[pitch] for pitch in smaller.keys() & larger.keys())


def test_a_pitch_that_no_table_lists_is_reckoned() -> None:
    # By hand: 1.06 x 90 x 1.1^0.4 x sqrt(11.2 x 22.4)^0.1 is 130.6 micrometres.
    assert fifth_grade(13.0, 1.1) == pytest.approx(0.1306, abs=1e-4)


@pytest.mark.parametrize("mark", MARKS)
def test_every_mark_has_limits_in_their_order(mark: str) -> None:
    found = tap_limits(thread(10.0, 1.5, "iso"), mark)
    assert 0.01 < found.width < 0.04


def test_beyond_the_tables_one_is_told_what_to_do() -> None:
    with pytest.raises(GeometryError, match="give those of the tap's maker"):
        tap_limits(thread(200.0, 4.0, "iso"), "ISO2-6H")
    with pytest.raises(GeometryError, match="give those of the tap's maker"):
        tap_limits(thread(100.0, 8.0, "iso"), "D5")


def test_a_measured_diameter_has_the_number_whose_limits_it_lies_between() -> None:
    made = thread(12.7, 25.4 / 13, "iso")
    for number in (1, 3, 10):
        limits = tap_limits(made, f"H{number}")
        assert number_of(made, "H", limits.middle) == f"H{number}"
    assert number_of(made, "H", made.pitch_diameter - 0.01) == ""
    assert number_of(made, "H", made.pitch_diameter + 0.2) == ""
    assert number_of(made, "D", made.pitch_diameter + 0.02) == ""
