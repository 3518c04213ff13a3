"""Holes before tapping, and what they leave of a thread."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.preconditions import GeometryError
from geometry.thread.form import thread
from geometry.thread.tap_drill import full_depth, hole_for_percent, percent_of_thread, rule_diameter

counted = st.sampled_from(["three-quarters", "five-eighths"])
names = st.sampled_from(["iso", "whitworth"])


@given(st.floats(2.0, 100.0), st.floats(0.03, 0.3), names, counted, st.floats(1.0, 100.0))
def test_a_hole_for_a_percentage_leaves_that_percentage(
    diameter: float, part: float, name: str, counted_as: str, percent: float
) -> None:
    made = thread(diameter, part * diameter, name)
    hole = hole_for_percent(percent, made, counted_as)
    assert percent_of_thread(hole, made, counted_as) == pytest.approx(percent, rel=1e-9)


@given(st.floats(2.0, 100.0), st.floats(0.03, 0.3), names)
def test_five_eighths_counts_the_basic_minor_diameter_as_a_full_thread(
    diameter: float, part: float, name: str
) -> None:
    made = thread(diameter, part * diameter, name)
    assert percent_of_thread(made.internal_minor_diameter, made, "five-eighths") == pytest.approx(100.0)


@given(st.floats(2.0, 100.0), st.floats(0.03, 0.3))
def test_the_common_rule_leaves_the_same_percentage_in_every_size(diameter: float, part: float) -> None:
    made = thread(diameter, part * diameter, "iso")
    hole = rule_diameter(made)
    # Derived by hand: 100 / (2 x 3/4 x sqrt(3)/2) and 100 / (2 x 5/8 x sqrt(3)/2).
    assert percent_of_thread(hole, made, "three-quarters") == pytest.approx(76.980036, rel=1e-6)
    assert percent_of_thread(hole, made, "five-eighths") == pytest.approx(92.376043, rel=1e-6)


def test_the_two_ways_of_counting_stand_as_six_to_five() -> None:
    made = thread(10.0, 1.5, "iso")
    assert full_depth(made, "three-quarters") / full_depth(made, "five-eighths") == pytest.approx(6 / 5)


def test_whitworth_has_one_depth_whatever_is_said() -> None:
    made = thread(10.0, 1.5, "whitworth")
    assert full_depth(made, "three-quarters") == full_depth(made, "five-eighths") == made.internal_depth


def test_a_hole_as_large_as_the_thread_leaves_nothing() -> None:
    made = thread(10.0, 1.5, "iso")
    assert percent_of_thread(10.0, made, "three-quarters") == 0.0
    assert percent_of_thread(10.5, made, "three-quarters") < 0


def test_a_percentage_that_leaves_no_hole_is_refused() -> None:
    with pytest.raises(GeometryError, match="leaves no hole"):
        hole_for_percent(150.0, thread(2.0, 1.2, "iso"), "three-quarters")
    with pytest.raises(GeometryError):
        hole_for_percent(0.0, thread(10.0, 1.5, "iso"), "three-quarters")
    with pytest.raises(GeometryError, match="three-quarters or five-eighths"):
        full_depth(thread(10.0, 1.5, "iso"), "all of it")
