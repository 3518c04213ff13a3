"""The reamer-land calculation: whether the heel clears behind margin and facets, and advice that fixes."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Check, Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount

SHEET = calculation("reamer-land")
LAND: dict[str, Given] = {
    "diameter": 10.0,
    "land_width": 2.0,
    "margin_width": 0.2,
    "relief_angle": math.radians(6),
    "primary_land": 0.6,
    "secondary_relief_angle": math.radians(15),
}


def stops(result: Result) -> list[Check]:
    return [check for check in result.checks if check.state == "stop"]


def amounts(check: Check) -> dict[str, float]:
    return {name: part.value for name, part in check.sentence.parts.items() if isinstance(part, Amount)}


def test_a_common_reamer_tooth_clears_as_its_drawing_shows() -> None:
    # By hand on paper: the margin turned back by 0.04, then 0.6 mm at 6 and the rest at 15 degrees, cut off by
    # the ray 0.36 round. Derived.
    across, height = 0.6 * math.cos(math.radians(6)), 5 - 0.6 * math.sin(math.radians(6))
    cosine, sine = math.cos(math.radians(15)), math.sin(math.radians(15))
    along = (height * math.tan(0.36) - across) / (cosine + sine * math.tan(0.36))
    heel = math.hypot(across + along * cosine, height - along * sine)
    result = run(SHEET, LAND)
    assert result.outputs["heel_drop"] == pytest.approx(5 - heel, rel=1e-9)
    assert result.outputs["primary_drop"] == pytest.approx(5 - math.hypot(across, height), rel=1e-9)
    assert stops(result) == []


def test_the_margin_reads_nothing_on_the_indicator() -> None:
    result = run(SHEET, {**LAND, "margin_width": 1.1})
    assert [station.readings["drop"] for station in result.stations[:3]] == [0, 0, 0]
    assert result.stations[3].readings["drop"] > 0


@given(
    st.floats(4, 40),
    st.floats(0.05, 0.35),
    st.floats(0, 0.1),
    st.floats(0.01, 0.5),
    st.one_of(st.none(), st.tuples(st.floats(0.01, 0.6), st.floats(0.02, 0.8))),
    st.sampled_from(["arc", "chord"]),
)
def test_all_advice_fixes_the_heel_it_stands_beside(
    diameter: float,
    land_share: float,
    margin_share: float,
    relief: float,
    behind: tuple[float, float] | None,
    measured_as: str,
) -> None:
    land = land_share * diameter
    values: dict[str, Given] = {
        "diameter": diameter,
        "land_width": land,
        "land_measured_as": measured_as,
        "margin_width": margin_share * land,
        "relief_angle": relief,
    }
    if behind is not None:
        values |= {"primary_land": behind[0] * land, "secondary_relief_angle": behind[1]}
    result = run(SHEET, values)
    found = stops(result)
    assume(found)
    for check in found:
        told = amounts(check)
        if "widest" in told:
            narrower = run(SHEET, {**values, "land_width": told["widest"] * (1 - 1e-6)})
            assert narrower.outputs["heel_drop"] > 0
        if "enough" in told and "widest" in told:
            key = "secondary_relief_angle" if "secondary" in check.sentence.template else "relief_angle"
            steeper = run(SHEET, {**values, key: told["enough"] * (1 + 1e-6)})
            assert steeper.outputs["heel_drop"] > 0
        if "width" in told:
            thinner = run(SHEET, {**values, "primary_land": told["width"] * (1 - 1e-6)})
            assert thinner.outputs.get("primary_drop", 1.0) > 0


@given(st.floats(0.03, 0.3), st.floats(0.3, 0.8), st.sampled_from(["arc", "chord"]))
def test_a_land_as_wide_as_clears_ends_on_the_circle(
    relief: float, secondary: float, measured_as: str
) -> None:
    values = {
        **LAND,
        "relief_angle": relief,
        "secondary_relief_angle": secondary,
        "land_measured_as": measured_as,
    }
    widest = run(SHEET, values).outputs["clear_land_width"]
    assert run(SHEET, {**values, "land_width": widest}).outputs["heel_drop"] == pytest.approx(0, abs=1e-8)


def test_a_primary_land_no_relief_can_bring_in_is_narrowed_and_relieved() -> None:
    values: dict[str, Given] = {
        "diameter": 10.0,
        "land_width": 10.0,
        "relief_angle": 0.0,
        "primary_land": 9.0,
        "secondary_relief_angle": 1.0,
    }
    told = next(amounts(check) for check in stops(run(SHEET, values)) if "width" in check.sentence.parts)
    fixed = {**values, "primary_land": told["width"], "relief_angle": told["enough"] * 1.001}
    assert run(SHEET, fixed).outputs["primary_drop"] > 0


def test_a_heel_that_clears_by_less_than_an_indicator_shows_is_a_watch_with_the_relief_to_take() -> None:
    values: dict[str, Given] = {"diameter": 10.0, "land_width": 1.0, "relief_angle": math.radians(6)}
    (check,) = run(SHEET, values).checks
    assert check.state == "watch"
    (better,) = run(SHEET, {**values, "relief_angle": amounts(check)["enough"] * (1 + 1e-9)}).checks
    assert better.state == "pass"


def test_a_secondary_relief_waits_for_the_width_of_the_primary() -> None:
    values = {key: value for key, value in LAND.items() if key != "primary_land"}
    with pytest.raises(Refusal) as refused:
        run(SHEET, values)
    assert [(problem.key, problem.missing) for problem in refused.value.problems] == [("primary_land", True)]
    with pytest.raises(Refusal) as refused:
        run(
            SHEET,
            {"secondary_relief_angle": LAND["secondary_relief_angle"], "relief_angle": LAND["relief_angle"]},
        )
    waits = {problem.key: problem.missing for problem in refused.value.problems}
    assert waits == {"diameter": True, "land_width": True, "primary_land": True}


def test_a_margin_as_wide_as_the_land_is_refused() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**LAND, "margin_width": 2.0})
    assert refused.value.problems[0].key == "margin_width"


def test_a_margin_is_a_fact_and_a_heel_that_clears_a_verdict() -> None:
    assert [check.state for check in run(SHEET, LAND).checks] == ["pass", "note"]


def test_a_relief_that_is_none_is_asked_about() -> None:
    found = run(SHEET, {**LAND, "relief_angle": math.radians(0.008)})
    assert any("was it a feed" in str(check.sentence) for check in found.checks)
