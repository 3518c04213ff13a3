"""Limits of a tap: what a measured pitch diameter means."""

from __future__ import annotations

import pytest

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

SHEET = calculation("tap-limits")


def m12(measured: float, **more: Given) -> Result:
    values: dict[str, Given] = {"nominal_diameter": 12.0, "pitch": 1.75, "tap_limit": "ISO2-6H"}
    return run(SHEET, {**values, "tap_pitch_diameter": measured, **more})


# M12 x 1.75, basic 10.863 (ISO 724), tolerance 5H 0.160 (ISO 965-1): the tap is 10.911 to 10.943. Derived.
@pytest.mark.parametrize(
    ("measured", "state"),
    [(10.95, "watch"), (10.93, "pass"), (10.911, "pass"), (10.90, "watch"), (10.86, "stop"), (9.0, "stop")],
)
def test_a_measured_tap_is_held_against_its_mark(measured: float, state: str) -> None:
    found = m12(measured)
    assert found.checks[0].state == state
    assert found.outputs["above_least"] == pytest.approx(measured - 10.9113, abs=1e-3)


def test_an_h_tap_over_its_limit_is_told_by_which_number_it_measures() -> None:
    # 1/4-20: basic .2175 in, H3 to .2190; .2194 lies between .2190 and .2195, which is H4. Derived.
    values: dict[str, Given] = {"nominal_diameter": 6.35, "threads_per_inch": 20 / 25.4, "tap_limit": "H3"}
    found = run(SHEET, {**values, "tap_pitch_diameter": 0.2194 * 25.4})
    assert found.checks[0].cure == (("tap_limit", "H4"),)
    assert (
        run(SHEET, {**values, "tap_limit": "H4", "tap_pitch_diameter": 0.2194 * 25.4}).checks[0].state
        == "pass"
    )


def test_a_tap_that_is_made_under_basic_is_not_told_that_it_is_worn() -> None:
    values: dict[str, Given] = {"nominal_diameter": 6.35, "threads_per_inch": 20 / 25.4, "tap_limit": "L1"}
    assert run(SHEET, {**values, "tap_pitch_diameter": 0.2172 * 25.4}).checks[0].state == "pass"


def test_limits_in_numbers_serve_every_form() -> None:
    limits: dict[str, Given] = {"tap_limit": "limits", "tap_lower_limit": 11.35, "tap_upper_limit": 11.38}
    values: dict[str, Given] = {
        "nominal_diameter": 12.7,
        "threads_per_inch": 12 / 25.4,
        "thread_form": "whitworth",
    }
    found = run(SHEET, {**values, **limits, "tap_pitch_diameter": 11.37})
    assert found.outputs["above_least"] == pytest.approx(0.02)
    with pytest.raises(Refusal, match="60 degree form"):
        run(SHEET, {**values, "tap_limit": "H3"})
    with pytest.raises(Refusal, match="larger than the lower one"):
        run(SHEET, {**values, **limits, "tap_upper_limit": 11.35})


def test_a_taper_pipe_tap_is_never_taken_for_a_parallel_one() -> None:
    with pytest.raises(Refusal, match="taper pipe tap"):
        run(
            SHEET,
            {
                "nominal_diameter": 13.716,
                "threads_per_inch": 18 / 25.4,
                "tap_limit": "H3",
                "thread_taper": "npt",
            },
        )


def test_what_is_from_memory_or_from_another_table_is_told() -> None:
    values: dict[str, Given] = {"nominal_diameter": 24.0, "pitch": 3.0}
    assert any("from memory" in str(one.sentence) for one in run(SHEET, {**values, "tap_limit": "D7"}).checks)
    assert not any("from memory" in str(one.sentence) for one in m12(10.92, pitch=1.5, tap_limit="D6").checks)
    large: dict[str, Given] = {"nominal_diameter": 38.1, "threads_per_inch": 6 / 25.4, "tap_limit": "H6"}
    assert any("Over 1 inch" in str(one.sentence) for one in run(SHEET, large).checks)
