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


QUARTER: dict[str, Given] = {"nominal_diameter": 6.35, "threads_per_inch": 20 / 25.4}


# 1/4-20: 2B to .2224 in, 3B to .2211 in (ASME B1.1); H5 to .2200, H8 to .2215, H10 to .2225. L1 lies under .2175.
@pytest.mark.parametrize(
    ("mark", "of", "state", "cure"),
    [
        ("H5", "2B", "note", ""),
        ("H7", "3B", "note", ""),
        ("H8", "3B", "watch", "H3"),
        ("H9", "2B", "note", ""),
        ("H10", "2B", "watch", "H5"),
        ("H10", "3B", "watch", "H3"),
        ("L1", "2B", "watch", "H5"),
    ],
)
def test_a_mark_is_held_against_the_class_of_the_thread(mark: str, of: str, state: str, cure: str) -> None:
    values = {**QUARTER, "tap_limit": mark, "thread_class": of}
    found = run(SHEET, values)
    assert found.checks[0].state == state
    if cure:
        assert found.checks[0].cure == (("tap_limit", cure),)
        assert run(SHEET, {**values, "tap_limit": cure}).checks[0].state == "note"
    assert found.outputs["thread_upper_limit"] / 25.4 == pytest.approx(0.2224 if of == "2B" else 0.2211)


def test_a_metric_tap_is_held_against_the_class_too() -> None:
    values: dict[str, Given] = {"nominal_diameter": 12.0, "pitch": 1.75, "thread_class": "6G"}
    found = run(SHEET, {**values, "tap_limit": "ISO1-4H"})
    # M12 x 1.75 in position G begins 0.034 over basic, ISO 1 at 0.1 of 0.160. Derived.
    assert found.checks[0].state == "watch"
    assert found.checks[0].cure == (("tap_limit", "ISO3-6G"),)
    assert run(SHEET, {**values, "tap_limit": "ISO3-6G"}).checks[0].state == "note"
    assert found.outputs["thread_lower_limit"] == pytest.approx(10.863 + 0.034, abs=1e-3)


def test_a_tap_that_measures_over_the_class_is_stopped() -> None:
    values = {**QUARTER, "tap_limit": "H8", "thread_class": "3B", "tap_pitch_diameter": 0.2215 * 25.4}
    assert "NOT GO" in str(run(SHEET, values).checks[0].sentence)
    assert run(SHEET, {**values, "thread_class": "2B"}).checks[0].state == "pass"


def test_the_maker_recommends_a_mark_only_where_the_table_has_the_thread() -> None:
    told = [
        str(one.sentence) for one in run(SHEET, {**QUARTER, "tap_limit": "H3", "thread_class": "2B"}).checks
    ]
    assert any("recommends a tap marked H5" in one for one in told)
    other: dict[str, Given] = {
        "nominal_diameter": 38.1,
        "threads_per_inch": 16 / 25.4,
        "engagement_length": 14.2875,
    }
    found = run(SHEET, {**other, "tap_limit": "H3", "thread_class": "2B"})
    assert not any(
        "recommends" in str(one.sentence) or "engagement" in str(one.sentence) for one in found.checks
    )


@pytest.mark.parametrize(
    ("values", "match"),
    [
        ({"nominal_diameter": 12.0, "pitch": 1.75, "thread_class": "2B"}, "class of unified threads"),
        ({**QUARTER, "thread_class": "6H"}, "class of metric threads"),
        ({"nominal_diameter": 200.0, "pitch": 4.0, "thread_class": "6H"}, "reach from"),
    ],
)
def test_a_class_of_another_sort_of_thread_is_refused(values: dict[str, Given], match: str) -> None:
    limits: dict[str, Given] = {"tap_limit": "limits", "tap_lower_limit": 5.0, "tap_upper_limit": 5.1}
    with pytest.raises(Refusal, match=match):
        run(SHEET, {**values, **limits})


def test_the_class_alone_tells_its_limits_and_the_mark_to_take() -> None:
    half: dict[str, Given] = {"nominal_diameter": 12.7, "threads_per_inch": 13 / 25.4}
    found = run(SHEET, {**half, "thread_class": "2B"})
    # 1/2-13 UNC-2B: .4500 to .4565 in, ASME B1.1 as tables give it; a tap maker's page recommends H5.
    assert [found.outputs[f"thread_{end}_limit"] / 25.4 for end in ("lower", "upper")] == pytest.approx(
        [0.4500, 0.4565], abs=6e-5
    )
    assert "recommends a tap marked H5" in str(found.checks[0].sentence)
    assert "tap_lower_limit" not in found.outputs
    with pytest.raises(Refusal, match="or give thread_class") as told:
        run(SHEET, half)
    assert told.value.problems[0].missing


@pytest.mark.parametrize(("measured", "state"), [(0.4510, "pass"), (0.4490, "watch"), (0.4570, "stop")])
def test_a_measured_tap_without_a_mark_is_held_against_the_class(measured: float, state: str) -> None:
    half: dict[str, Given] = {"nominal_diameter": 12.7, "threads_per_inch": 13 / 25.4, "thread_class": "2B"}
    assert run(SHEET, {**half, "tap_pitch_diameter": measured * 25.4}).checks[0].state == state


def test_a_mark_of_the_other_system_is_doubted() -> None:
    half: dict[str, Given] = {"nominal_diameter": 12.7, "threads_per_inch": 13 / 25.4}
    doubted = run(SHEET, {**half, "tap_limit": "ISO1-4H"}).checks[0]
    assert doubted.state == "watch"
    assert "mark of metric taps" in str(doubted.sentence)
    with_class = run(SHEET, {**half, "tap_limit": "D3", "thread_class": "2B"}).checks[0]
    assert with_class.cure == (("tap_limit", "H5"),)
    metric = run(SHEET, {"nominal_diameter": 12.0, "pitch": 1.75, "tap_limit": "H5"}).checks[0]
    assert (metric.state, "pitch in millimetres" in str(metric.sentence)) == ("watch", True)
