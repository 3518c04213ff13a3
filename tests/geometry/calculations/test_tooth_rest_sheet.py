"""The tooth-rest calculation: where the tooth touches, and whether the rest holds it to the end."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

SHEET, HEIGHT = calculation("tooth-rest"), calculation("setting-height")
TOOL: dict[str, Given] = {"diameter": 25.0, "helix_angle": math.radians(30), "relief_angle": math.radians(6)}


def states(result: Result) -> set[str]:
    return {check.state for check in result.checks}


def test_opposite_the_wheel_the_rest_stands_as_high_as_for_a_straight_tooth() -> None:
    height = run(
        HEIGHT, {"wheel_shape": "type-11-flaring-cup", "diameter": 25.0, "relief_angle": math.radians(6)}
    )
    found = run(SHEET, TOOL).outputs["tooth_rest_height"]
    assert found == pytest.approx(height.outputs["tooth_rest_height"])


def test_beside_the_wheel_the_height_allows_for_what_the_edge_has_wound() -> None:
    # By hand: 0.5 tan 30 = 0.288675 round a radius of 12.5 is 1.32319 degrees more than the 6.
    found = run(SHEET, {**TOOL, "rest_offset": 0.5}).outputs
    assert math.degrees(found["rest_turn"]) == pytest.approx(1.32319, abs=1e-5)
    assert found["tooth_rest_height"] == pytest.approx(12.5 * math.sin(math.radians(7.32319)), abs=1e-6)


def test_on_a_level_top_the_tooth_lies_on_the_corner_where_it_stands_lowest() -> None:
    level = run(SHEET, {**TOOL, "rest_width": 4.0, "rest_top": "level"})
    corner = run(SHEET, {**TOOL, "rest_offset": 2.0})
    assert level.outputs["rest_turn"] == pytest.approx(corner.outputs["rest_turn"])
    assert "watch" in states(level)
    assert "watch" not in states(run(SHEET, {**TOOL, "rest_width": 4.0}))


def test_a_rest_as_wide_as_the_wheel_holds_the_tooth_only_opposite_it() -> None:
    tool: dict[str, Given] = {**TOOL, "rest_width": 4.0, "wheel_width": 4.0}
    assert "watch" not in states(run(SHEET, tool))
    assert "watch" in states(run(SHEET, {**tool, "rest_offset": -0.2}))
    assert "watch" not in states(run(SHEET, {**tool, "rest_offset": -0.2, "rest_width": 4.4}))


def test_a_straight_tooth_rises_nowhere_and_has_no_lead() -> None:
    straight: dict[str, Given] = {**TOOL, "helix_angle": 0.0, "rest_offset": 3.0, "tooth_length": 50.0}
    found = run(SHEET, straight).outputs
    assert "helix_lead" not in found
    assert found["rest_turn"] == found["tooth_rise"] == 0.0


def test_the_lead_stands_for_the_helix_angle() -> None:
    lead = run(SHEET, TOOL).outputs["helix_lead"]
    tool = {key: value for key, value in TOOL.items() if key != "helix_angle"}
    assert run(SHEET, {**tool, "helix_lead": lead}).outputs["helix_angle"] == pytest.approx(math.radians(30))


def test_no_relief_is_a_stop_and_a_rest_far_away_is_refused() -> None:
    assert "stop" in states(run(SHEET, {**TOOL, "relief_angle": 0.0}))
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**TOOL, "rest_offset": 40.0})
    assert refused.value.problems[0].key == "rest_offset"
