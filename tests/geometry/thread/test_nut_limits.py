"""The limits of an internal thread by its class, and the taps that keep within them."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.thread.class_advice import mark_for
from geometry.thread.form import thread
from geometry.thread.iso_965 import G_ABOVE, GRADE_5, R40, STEPS
from geometry.thread.nut_limits import above_basic, grade_tolerance, nut_limits, unified_tolerance
from geometry.thread.recommended_taps import RECOMMENDED, recommended
from geometry.thread.tap_limits import tap_limits

INCH = 25.4


def test_every_listed_grade_is_that_of_the_formula_to_a_place_of_its_series() -> None:
    """ISO 965-1: 0.85, 1.06, 1.32, 1.7 and 2.12 times 90 P^0.4 d^0.1 for grades 4 to 8, rounded to preferred numbers."""
    first = 0.99
    for step, row in zip(STEPS, GRADE_5, strict=True):
        middle = math.sqrt(first * step)
        for pitch in row:
            screw = 90 * pitch**0.4 * middle**0.1
            for grade, factor in ((4, 0.85), (5, 1.06), (6, 1.32), (7, 1.7), (8, 2.12)):
                assert grade_tolerance(step, pitch, grade) * 1000 == pytest.approx(factor * screw, rel=0.07)
        first = step


def test_the_preferred_numbers_are_forty_to_a_tenfold() -> None:
    for one, following in itertools.pairwise(R40):
        assert following / one == pytest.approx(10 ** (1 / 40), rel=0.02)


def test_position_g_is_that_of_its_formula_to_two_micrometres() -> None:
    for pitch, micron in G_ABOVE.items():
        assert micron == pytest.approx(15 + 11 * pitch, abs=2.0)
    assert above_basic(1.1, "G") * 1000 == pytest.approx(27.1)


def test_3b_is_three_quarters_of_2b_and_1b_half_as_much_again() -> None:
    wide = [unified_tolerance(25.4, 25.4 / 8, 25.4, word) for word in ("3B", "2B", "1B")]
    # Of a 2A screw 0.0068 in: a cube root of 1, a square root of 1 and an eighth to two thirds. Worked by hand.
    of_screw = (0.0015 + 0.0015 + 0.015 / 4) * INCH
    assert wide == pytest.approx([0.975 * of_screw, 1.3 * of_screw, 1.95 * of_screw], abs=0.00006 * INCH)


def test_a_longer_engagement_widens_a_unified_class() -> None:
    made = thread(1.5 * INCH, INCH / 16, "iso")
    nine = nut_limits(made, "2B", 9 * INCH / 16)
    assert nine.width < nut_limits(made, "2B").width
    # ASME B1.1 by hand: 0.0015 (1.1447 + 0.75) + 0.015 (0.15749) = 0.005204, times 1.3.
    assert nine.width / INCH == pytest.approx(0.0068)


def test_a_pitch_that_is_not_listed_lies_between_those_that_are() -> None:
    # ISO 965-1 has 0.180 for 1.25 and 0.190 for 1.5, rounded by up to a place of the series.
    assert 0.17 < grade_tolerance(12.0, 1.3, 6) < 0.19
    with pytest.raises(GeometryError, match="reach from"):
        grade_tolerance(200.0, 6.0, 6)


def test_every_tap_that_the_maker_recommends_keeps_within_its_class() -> None:
    for size, count in RECOMMENDED:
        made = thread(size * INCH, INCH / count, "iso")
        for word in ("2B", "3B"):
            mark = recommended(made.diameter, made.pitch, word)
            tap, allowed = tap_limits(made, mark), nut_limits(made, word)
            assert allowed.low - 0.002 < tap.low < tap.high < allowed.high
            # And with so much room above that what is cut over the tap's own size finds place, common practice, no source.
            assert allowed.high - tap.high > 0.25 * allowed.width
            assert mark_for(made, word, allowed) == mark


@given(st.floats(1.0, 180.0), st.sampled_from(["4H", "5H", "6H", "7H", "6G", "7G"]))
def test_a_metric_mark_that_is_advised_keeps_within_the_class(diameter: float, word: str) -> None:
    made = thread(diameter, 0.12 * diameter ** (3 / 4) + 0.05, "iso")
    allowed = nut_limits(made, word)
    if mark := mark_for(made, word, allowed):
        tap = tap_limits(made, mark)
        assert allowed.low - 0.0013 <= tap.low
        assert tap.high <= allowed.high + 0.0013
    else:
        assert word in {"6G", "7G", "4H"}
