"""The drill-point calculation: what is answered from what was measured, and what its sentences say."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Check, Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount

SHEET = calculation("drill-point")
DRILL: dict[str, Given] = {"diameter": 10.0, "point_angle": math.radians(118)}


def amount(check: Check, name: str) -> float:
    part = check.sentence.parts[name]
    assert isinstance(part, Amount)
    return part.value


def complaints(result: Result) -> list[Check]:
    return [check for check in result.checks if check.state in ("watch", "stop")]


def test_diameter_and_point_are_enough_for_the_setting_and_the_length() -> None:
    result = run(SHEET, DRILL)
    assert set(result.outputs) == {"half_point_angle", "point_length"}
    # By hand: 5 mm over the tangent of 59 degrees. Derived.
    assert result.outputs["point_length"] == pytest.approx(5 / math.tan(math.radians(59)), rel=1e-12)
    assert math.degrees(amount(result.checks[0], "rest")) == pytest.approx(31, rel=1e-12)


def test_web_and_chisel_edge_together_give_the_lips() -> None:
    result = run(SHEET, {**DRILL, "web_thickness": 1.5, "chisel_edge_angle": math.radians(125)}).outputs
    # By hand from a drawing with the lips level: half a web up, 55 degrees to the lip. Derived.
    inner = 0.75 / math.tan(math.radians(55))
    corner = math.sqrt(25 - 0.75**2)
    assert result["chisel_edge_length"] == pytest.approx(2 * math.hypot(inner, 0.75), rel=1e-12)
    assert result["lip_length"] == pytest.approx((corner - inner) / math.sin(math.radians(59)), rel=1e-12)
    assert result["chisel_height"] == pytest.approx((corner - inner) / math.tan(math.radians(59)), rel=1e-12)
    assert result["chisel_height"] < result["point_length"]


def test_a_web_alone_tells_what_is_still_wanted() -> None:
    result = run(SHEET, {**DRILL, "web_thickness": 1.5})
    assert "chisel_edge_length" not in result.outputs
    assert "chisel edge angle" in str(result.checks[-1].sentence)


def test_unlike_lips_are_told_by_how_much_to_lower_the_high_one() -> None:
    result = run(SHEET, {**DRILL, "lip_height_difference": 0.1})
    (check,) = complaints(result)
    assert amount(check, "difference") == 0.1
    assert result.outputs["hole_oversize"] == pytest.approx(0.2, rel=1e-12)
    # By hand: the tip is off by half the difference times the tangent of half the point. Derived.
    assert result.outputs["point_offset"] == pytest.approx(0.05 * math.tan(math.radians(59)), rel=1e-12)
    assert result.outputs["hole_oversize_about_point"] == pytest.approx(
        0.1 * math.tan(math.radians(59)), rel=1e-12
    )
    assert amount(check, "hole") == pytest.approx(10.2, rel=1e-12)


def test_lips_made_level_as_advised_are_no_complaint() -> None:
    (check,) = complaints(run(SHEET, {**DRILL, "lip_height_difference": 0.1}))
    assert complaints(run(SHEET, {**DRILL, "lip_height_difference": 0.1 - amount(check, "difference")})) == []


@pytest.mark.parametrize(("point", "difference"), [(math.pi, 0.1), (math.radians(118), 6.1)])
def test_a_difference_that_no_tip_off_the_axis_explains_is_laid_to_the_angles(
    point: float, difference: float
) -> None:
    result = run(SHEET, {"diameter": 10.0, "point_angle": point, "lip_height_difference": difference})
    (check,) = complaints(result)
    assert "their angles differ" in str(check.sentence)
    assert "point_offset" not in result.outputs
    assert amount(check, "half") == pytest.approx(point / 2, rel=1e-12)


def test_no_lip_relief_is_a_stop_and_any_above_it_is_none() -> None:
    (check,) = complaints(run(SHEET, {**DRILL, "lip_relief_angle": 0.0}))
    assert check.state == "stop"
    assert complaints(run(SHEET, {**DRILL, "lip_relief_angle": amount(check, "least")})) == []


def test_lip_relief_across_the_margin_is_told_square_to_the_lip() -> None:
    found = run(SHEET, {**DRILL, "lip_relief_angle": math.radians(12)}).outputs["relief_angle"]
    # By hand: the tangent is less by the sine of 59 degrees. Derived.
    assert math.tan(found) == pytest.approx(
        math.tan(math.radians(12)) * math.sin(math.radians(59)), rel=1e-12
    )


@given(st.floats(0.02, 0.6), st.floats(math.radians(30), math.radians(89)))
def test_the_relief_that_is_answered_is_the_one_square_to_the_lip_and_is_called_so(
    lip_relief: float, half: float
) -> None:
    # Derived, by vectors: the flank holds the lip and the line that falls behind it on the cylinder. In the plane square
    # to the lip it falls from the direction round the drill by the angle between that and the line that flank and plane share.
    lip = (math.sin(half), 0.0, -math.cos(half))
    behind = (0.0, math.cos(lip_relief), -math.sin(lip_relief))
    along = sum(a * b for a, b in zip(lip, behind, strict=True))
    square = [b - along * a for a, b in zip(lip, behind, strict=True)]
    falls = math.acos(square[1] / math.hypot(*square))
    result = run(SHEET, {**DRILL, "point_angle": 2 * half, "lip_relief_angle": lip_relief})
    assert result.outputs["relief_angle"] == pytest.approx(falls, abs=1e-7)
    assert result.named["relief_angle"] == "Relief of the lip, square to the edge, without the web"


@given(st.floats(0.2, 0.6), st.floats(math.radians(45), math.radians(80)), st.floats(0.05, 0.2))
def test_with_the_web_the_relief_square_to_the_lip_is_that_of_a_lip_ahead_of_the_axis(
    lip_relief: float, half: float, share: float
) -> None:
    # Derived, by vectors as above: the corner lies half a web ahead, so that the line behind it runs outward too.
    ahead = math.asin(share)
    lip = (math.sin(half), 0.0, -math.cos(half))
    level = math.cos(lip_relief)
    behind = (level * math.sin(ahead), level * math.cos(ahead), -math.sin(lip_relief))
    along = sum(a * b for a, b in zip(lip, behind, strict=True))
    square = [b - along * a for a, b in zip(lip, behind, strict=True)]
    wanted = math.atan2(-math.copysign(math.hypot(square[0], square[2]), square[2]), square[1])
    values = {"point_angle": 2 * half, "lip_relief_angle": lip_relief, "web_thickness": share * 12.7}
    result = run(SHEET, {**DRILL, "diameter": 12.7} | values)
    if wanted < 0:
        assert "relief_angle" not in result.outputs
        return
    assert result.outputs["relief_angle"] == pytest.approx(wanted, abs=1e-7)
    assert result.named["relief_angle"] == "Relief of the lip, square to the edge"


def test_half_the_point_says_that_it_is_of_a_drill_that_is_not_rolled_and_what_a_rolled_one_takes() -> None:
    # Derived by hand: sin d is 0.6 / 4, 8.627 degrees ahead; the facet falls (tan 12 - cot 59 sin d) / cos d = 0.1238, so that
    # the axis lies atan(1 / hypot(cot 59, 0.1238)) = 58.47 to the face, rolled atan(0.1238 / cot 59) = 11.64.
    values = {"diameter": 8.0, "point_angle": math.radians(118), "lip_relief_angle": math.radians(12)}
    for web, said in ({}, "a web of 1.2 mm, the usual one"), ({"web_thickness": 1.2}, "its web of 1.2 mm"):
        result = run(SHEET, values | web)
        assert result.named["half_point_angle"] == "Half point angle, drill not rolled"
        told = " ".join(str(one.sentence) for one in result.checks)
        assert f"one rolled 11.64 deg on a work head for flat facets takes 58.47 deg with {said}" in told
    assert math.degrees(result.outputs["relief_angle"]) == pytest.approx(6.06, abs=0.005)


def test_a_web_so_thick_that_no_relief_is_left_square_to_the_lip_is_told_and_answers_none() -> None:
    values = {"diameter": 8.0, "point_angle": math.radians(118), "lip_relief_angle": math.radians(12)}
    result = run(SHEET, values | {"web_thickness": 4.0})
    assert "relief_angle" not in result.outputs
    assert result.checks[0].state == "watch"
    assert "leaves none square to it" in str(result.checks[0].sentence)


@given(st.floats(0.05, 0.6), st.floats(0.1, 4))
def test_the_indicator_along_the_axis_falls_by_the_lip_relief_over_the_land(
    lip_relief: float, land: float
) -> None:
    result = run(SHEET, {**DRILL, "lip_relief_angle": lip_relief, "land_width": land})
    for station in result.stations:
        round_the_circle = station.angle * 5.0
        assert station.readings["axial_drop"] == pytest.approx(
            round_the_circle * math.tan(lip_relief), rel=1e-9
        )
    assert result.outputs["axial_drop"] == pytest.approx(land * math.tan(lip_relief), rel=1e-9)


def test_a_flat_end_is_told_to_have_no_tip() -> None:
    result = run(SHEET, {"diameter": 10.0, "point_angle": math.pi})
    assert result.outputs["point_length"] == 0
    assert "no tip" in str(result.checks[1].sentence)


def test_a_chisel_edge_longer_than_the_drill_is_refused_with_the_web_that_fits() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**DRILL, "web_thickness": 9.0, "chisel_edge_angle": math.radians(125)})
    assert refused.value.problems[0].key == "web_thickness"
    assert "thinner than 8.19" in str(refused.value)


@pytest.mark.parametrize(("degrees", "state"), [(10, "stop"), (170, "stop"), (40, "watch"), (70, "watch")])
def test_a_chisel_edge_that_drills_do_not_have_is_judged_whichever_way_it_is_counted(
    degrees: float, state: str
) -> None:
    # 120 to 135 degrees, or 60 to 45 counted the other way: common practice, no source.
    (check,) = complaints(run(SHEET, {**DRILL, "chisel_edge_angle": math.radians(degrees)}))
    assert check.state == state
    for usual in (45, 55, 60, 120, 125, 135):
        assert complaints(run(SHEET, {**DRILL, "chisel_edge_angle": math.radians(usual)})) == []


def test_a_setting_and_a_length_are_no_verdict() -> None:
    assert {check.state for check in run(SHEET, DRILL).checks} == {"note"}


def test_a_feed_typed_for_a_lip_relief_is_asked_about() -> None:
    result = run(SHEET, {**DRILL, "lip_relief_angle": math.radians(0.008)})
    (check,) = complaints(result)
    assert "was it a feed" in str(check.sentence)
    assert "pass" not in [one.state for one in result.checks]
    assert complaints(run(SHEET, {**DRILL, "lip_relief_angle": amount(check, "least")})) == []


def test_a_land_beyond_the_other_lip_is_a_stop() -> None:
    # Derived: half round a drill of 10 mm is 15.7 mm.
    values = {**DRILL, "lip_relief_angle": math.radians(12)}
    assert complaints(run(SHEET, {**values, "land_width": 15.6})) == []
    (check,) = complaints(run(SHEET, {**values, "land_width": 15.8}))
    assert check.state == "stop"
