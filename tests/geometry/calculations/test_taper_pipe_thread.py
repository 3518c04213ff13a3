"""Taper pipe threads as a whole: computed at their own planes, or refused."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

QUARTER_NPT: dict[str, Given] = {"diameter": 13.716, "threads_per_inch": 18 / 25.4, "thread_taper": "npt"}
QUARTER_BSPT: dict[str, Given] = {"diameter": 13.157, "threads_per_inch": 19 / 25.4, "thread_taper": "bspt"}


def thread(**values: Given) -> Result:
    return run(calculation("screw-thread"), values)


def test_a_quarter_npt_is_no_parallel_thread() -> None:
    found = thread(**QUARTER_NPT)
    assert found.outputs["pitch_diameter"] == pytest.approx(12.487, abs=5e-4)
    assert found.outputs["front_pitch_diameter"] == pytest.approx(12.126, abs=5e-4)
    assert "tap_drill_diameter" not in found.outputs
    assert "thread_percent" not in found.outputs
    assert {check.state for check in found.checks} == {"note"}
    assert "hand-tight plane" in str(found.checks[0].sentence)


@pytest.mark.parametrize(
    ("hole", "state"),
    # Derived: the minor diameters of the two ends are 10.733 and 11.358; 27/64 in is drilled for a reamed hole.
    [(5.0, "stop"), (27 / 64 * 25.4, "watch"), (10.73, "watch"), (10.74, "pass"), (7 / 16 * 25.4, "pass"),
     (11.36, "pass"), (12.0, "watch"), (12.5, "stop"), (14.0, "stop")],
)  # fmt: skip
def test_a_straight_hole_is_judged_against_both_ends_of_the_thread(hole: float, state: str) -> None:
    assert thread(**QUARTER_NPT, drilled_diameter=hole).checks[0].state == state


@given(st.floats(0.0, 20.0), st.sampled_from([QUARTER_NPT, QUARTER_BSPT]))
def test_each_limit_that_is_named_for_a_hole_is_a_cure(hole: float, values: dict[str, Given]) -> None:
    found = thread(**values, drilled_diameter=hole).checks[0]
    for _, value in found.cure:
        assert value is not None
        assert thread(**{**values, "drilled_diameter": value}).checks[0].state == "pass"


def test_a_percentage_of_a_taper_thread_is_refused() -> None:
    with pytest.raises(Refusal, match="no percentage holds"):
        thread(**QUARTER_NPT, thread_percent=75.0)


@pytest.mark.parametrize("taper", ["npt", "bspt"])
def test_a_size_that_the_standard_does_not_have_is_refused_with_the_nearest(taper: str) -> None:
    with pytest.raises(Refusal, match="the nearest, 1/8"):
        thread(diameter=10.0, pitch=1.5, thread_taper=taper)


def test_a_rounded_diameter_and_pitch_still_name_their_size() -> None:
    found = thread(diameter=13.7, pitch=1.41, thread_taper="npt")
    assert found.outputs == thread(**QUARTER_NPT).outputs
