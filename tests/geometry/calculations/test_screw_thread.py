"""The sizes of a thread and its tap drill, as a whole."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.running import Refusal, run


def thread(**values: Given) -> Result:
    return run(calculation("screw-thread"), values)


@given(st.floats(2.0, 100.0), st.floats(4.0, 80.0), st.sampled_from(["iso", "whitworth"]))
def test_inches_and_millimetres_give_the_same_thread(diameter: float, count: float, form: str) -> None:
    if 25.4 / count > diameter / 2:
        return
    metric = thread(diameter=diameter, pitch=25.4 / count, thread_form=form).outputs
    inch = thread(diameter=diameter, threads_per_inch=count / 25.4, thread_form=form).outputs
    assert inch == pytest.approx(metric, rel=1e-12)


@given(st.floats(30.0, 83.0), st.sampled_from(["three-quarters", "five-eighths"]))
def test_percentage_to_hole_and_back(percent: float, counted_as: str) -> None:
    hole = thread(diameter=10.0, pitch=1.5, thread_percent=percent, full_thread=counted_as).outputs
    back = thread(
        diameter=10.0, pitch=1.5, drilled_diameter=hole["drilled_diameter"], full_thread=counted_as
    ).outputs
    assert back["thread_percent"] == pytest.approx(percent, rel=1e-9)


def test_without_a_hole_only_the_rule_is_given() -> None:
    found = thread(diameter=10.0, pitch=1.5)
    assert "drilled_diameter" not in found.outputs
    assert found.outputs["tap_drill_diameter"] == 8.5
    assert "76.98 percent" in str(found.checks[0].sentence)


def test_what_a_full_thread_is_counted_as_is_said_beside_the_percentage() -> None:
    for counted_as, words in (("three-quarters", "three quarters"), ("five-eighths", "five eighths")):
        found = thread(diameter=10.0, pitch=1.5, drilled_diameter=8.6, full_thread=counted_as)
        assert words in str(found.checks[0].sentence)
    whitworth = thread(diameter=10.0, pitch=1.5, drilled_diameter=8.6, thread_form="whitworth")
    assert "Whitworth" in str(whitworth.checks[0].sentence)


def test_many_starts_have_a_lead_of_as_many_pitches() -> None:
    found = thread(diameter=10.0, pitch=1.5, starts=3.0)
    assert found.outputs["lead"] == 4.5
    assert found.outputs["pitch"] == 1.5
    assert "3 starts" in str(found.checks[-1].sentence)


def test_a_hole_outside_the_thread_is_stopped() -> None:
    for hole in (10.0, 12.0, 8.3, 0.0):
        found = thread(diameter=10.0, pitch=1.5, drilled_diameter=hole)
        assert found.checks[0].state == "stop"
        assert found.outputs["thread_percent"] >= 0


def test_a_thread_without_core_is_refused() -> None:
    with pytest.raises(Refusal, match="no core"):
        thread(diameter=2.0, pitch=2.0)
    with pytest.raises(Refusal, match="only one"):
        thread(diameter=10.0, pitch=1.5, drilled_diameter=8.5, thread_percent=75.0)
