"""The setting-height calculation: which diameter counts, there and back, and where the shop rule drifts."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon, box

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.quantities import quantity
from geometry.sentences import Amount
from geometry.wheel.types import DISH, ON_THE_END
from geometry.wheel.types import STRAIGHT as STRAIGHT_WHEEL

SHEET = calculation("setting-height")
STRAIGHT: dict[str, Given] = {
    "relief_angle": math.radians(7),
    "wheel_shape": "type-1-straight",
    "wheel_diameter": 150.0,
}


def test_the_check_values_and_their_difference() -> None:
    # Derived, and by the rule 0.0087: 9.1402 and 9.1350 mm.
    outputs = run(SHEET, STRAIGHT).outputs
    assert outputs["wheel_head_height"] == pytest.approx(9.1402, abs=5e-5)
    assert outputs["rule_height"] == pytest.approx(9.1350, abs=5e-5)
    assert outputs["rule_difference"] == pytest.approx(9.1350 - 9.14020, abs=1e-4)


def test_a_straight_wheel_counts_the_wheel_and_a_cup_wheel_the_tool() -> None:
    both = {**STRAIGHT, "diameter": 20.0}
    assert run(SHEET, both).outputs["wheel_head_height"] == pytest.approx(
        75 * math.sin(math.radians(7)), rel=1e-12
    )
    cup = run(SHEET, {**both, "wheel_shape": "type-6-straight-cup"})
    assert cup.outputs["tooth_rest_height"] == pytest.approx(10 * math.sin(math.radians(7)), rel=1e-12)
    assert "TOOL" in str(cup.checks[0].sentence)


def inside(ground: Polygon, angle: float) -> float:
    """How far the ground tool lies inside its circle of 6 mm, in a direction from the level of its axis."""
    ray = LineString([(0, 0), (12 * math.cos(angle), 12 * math.sin(angle))])
    return 6 - float(ray.intersection(ground).length)


def test_the_side_that_is_named_relieves_the_land_and_the_other_side_does_not() -> None:
    """Derived: a tool of 12 mm as a polygon, and what a wheel at its right takes off it."""
    tool = Point(0, 0).buffer(6, quad_segs=5000)
    straight = run(SHEET, STRAIGHT)
    height = straight.outputs["wheel_head_height"]
    wheel = Point(6 + math.sqrt(75**2 - height**2), height).buffer(75, quad_segs=20000)
    ground = tool.difference(wheel)
    assert inside(ground, 0.1) == pytest.approx(
        6 - 6 * math.cos(math.radians(7)) / math.cos(0.1 - math.radians(7)), rel=0.1
    )
    assert inside(ground, -0.1) == pytest.approx(0, abs=1e-6)
    assert "above the tool axis, tooth rest level" in str(straight.checks[0].sentence)
    assert "above the axis of the tool, the land lying above" in quantity("wheel_head_height").definition

    cup = run(
        SHEET, {"relief_angle": math.radians(7), "wheel_shape": "type-6-straight-cup", "diameter": 12.0}
    )
    edge = math.asin(-cup.outputs["tooth_rest_height"] / 6)
    ground = tool.difference(box(6 * math.cos(edge), -20, 20, 20))
    assert inside(ground, edge + 0.1) == pytest.approx(
        6 - 6 * math.cos(edge) / math.cos(edge + 0.1), rel=1e-4
    )
    assert inside(ground, edge - 0.1) == pytest.approx(0, abs=1e-6)
    assert "below the tool axis." in str(cup.checks[0].sentence)
    assert "below the axis of the tool, the land lying above" in quantity("tooth_rest_height").definition


@pytest.mark.parametrize(
    ("shape", "wanted"), [(STRAIGHT_WHEEL, "wheel_diameter"), *((shape, "diameter") for shape in ON_THE_END)]
)
def test_only_the_diameter_that_counts_is_asked_for(shape: str, wanted: str) -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"relief_angle": 0.1, "wheel_shape": shape})
    assert [problem.key for problem in refused.value.problems] == [wanted]


@given(st.floats(0.001, 0.7), st.floats(5, 400))
def test_a_height_read_on_the_machine_leads_back_to_the_relief(relief: float, wheel: float) -> None:
    height = run(SHEET, {"relief_angle": relief, "wheel_diameter": wheel}).outputs["wheel_head_height"]
    back = run(SHEET, {"wheel_head_height": height, "wheel_diameter": wheel}).outputs
    assert back["relief_angle"] == pytest.approx(relief, rel=1e-9)
    assert back["wheel_head_height"] == height


def test_a_height_beyond_the_wheel_is_refused_with_the_limit() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"wheel_head_height": 75.0, "wheel_diameter": 150.0})
    assert refused.value.problems[0].key == "wheel_head_height"
    assert "75 mm" in str(refused.value)


def test_where_the_shop_rule_drifts_the_exact_height_is_named() -> None:
    result = run(SHEET, {**STRAIGHT, "relief_angle": math.radians(25)})
    check = result.checks[-1]
    # The answer is the exact height whatever the rule says, so nothing is wrong with the tool: a fact.
    assert check.state == "note"
    exact = check.sentence.parts["exact"]
    assert isinstance(exact, Amount)
    assert exact.value == pytest.approx(75 * math.sin(math.radians(25)), rel=1e-12)


def test_no_height_is_a_watch_and_some_relief_ends_it() -> None:
    assert run(SHEET, {**STRAIGHT, "relief_angle": 0.0}).checks[0].state == "stop"
    assert run(SHEET, {**STRAIGHT, "relief_angle": 1e-6}).checks[0].state == "note"


@pytest.mark.parametrize("shape", [STRAIGHT_WHEEL, *ON_THE_END])
def test_only_the_height_of_the_wheel_in_hand_is_answered(shape: str) -> None:
    outputs = run(SHEET, {**STRAIGHT, "diameter": 20.0, "wheel_shape": shape}).outputs
    heights = {"wheel_head_height", "tooth_rest_height"} & set(outputs)
    assert heights == {"wheel_head_height" if shape == STRAIGHT_WHEEL else "tooth_rest_height"}


def test_a_tooth_rest_too_low_is_refused_by_its_own_name() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"tooth_rest_height": 6.0, "wheel_shape": "type-11-flaring-cup", "diameter": 12.0})
    assert refused.value.problems[0].key == "tooth_rest_height"


def test_a_dish_is_answered_but_is_no_wheel_for_a_land_and_says_so() -> None:
    values = {**STRAIGHT, "diameter": 20.0}
    assert any("dish" in str(one.sentence) for one in run(SHEET, {**values, "wheel_shape": DISH}).checks)
    for shape in (STRAIGHT_WHEEL, *ON_THE_END[:-1]):
        assert not any(
            "dish" in str(one.sentence) for one in run(SHEET, {**values, "wheel_shape": shape}).checks
        )


CONE: dict[str, Given] = {
    "surface": "cone",
    "included_angle": math.radians(82),
    "relief_angle": math.radians(8),
}
"""A countersink whose relief is given square to its cone."""


def test_a_straight_wheel_sets_a_cone_square_to_its_edge() -> None:
    """The rim's tangent at the touching point turns about a line along the edge: 75 sin 8 deg, by hand 10.4380."""
    found = run(SHEET, {**CONE, "wheel_diameter": 150.0}).outputs
    assert found["wheel_head_height"] == pytest.approx(75 * 0.139173, abs=1e-4)


def test_what_is_swivelled_for_a_cone_is_not_named_as_that_hangs_on_the_machine() -> None:
    (said,) = (
        one.sentence.template
        for one in run(SHEET, {**CONE, "wheel_diameter": 150.0}).checks
        if "kappa" in one.sentence.parts
    )
    assert "swivel by {kappa}" in said
    assert "table" not in said


def test_a_tooth_rest_sets_a_cone_square_to_its_axis() -> None:
    """The cup's face is a plane. A tool turned by d about its axis has its edge d behind the line where that plane touches
    a cone about the axis, so in the section square to the axis the plane falls d below the tangent. Found by vectors."""
    diameter, kappa = 25.4, math.radians(41)
    found = run(SHEET, {**CONE, "wheel_shape": "type-6-straight-cup", "diameter": diameter}).outputs
    turned = math.asin(found["tooth_rest_height"] / (diameter / 2))
    # The face of the cup, with the axis of the tool up the z axis; the edge stands at an angle below the line of touch.
    face = (math.cos(kappa), 0.0, math.sin(kappa))
    outward = (math.cos(turned), -math.sin(turned))
    tangent = (math.sin(turned), math.cos(turned))
    # In the plane square to the axis the face is a line whose normal is (cos kappa, 0): its fall along the tangent.
    fall = -(face[0] * tangent[0]) / -(face[0] * outward[0])
    square = math.atan(math.tan(math.atan(fall)) * math.cos(kappa))
    assert math.degrees(square) == pytest.approx(8.0, abs=1e-9)


LIP: dict[str, Given] = {
    **STRAIGHT,
    "surface": "lip",
    "relief_angle": math.radians(25),
    "point_angle": math.radians(130),
}


def test_a_lip_of_130_degrees_has_25_along_the_axis_from_a_height_for_what_that_is_square_to_it() -> None:
    # Derived: square to a lip that lies 65 degrees off the axis, tan 25 sin 65 = 0.42262 is 22.910 degrees;
    # 75 sin 22.910 = 29.196 mm.
    found = run(SHEET, LIP).outputs
    assert found["wheel_head_height"] == pytest.approx(29.196, abs=5e-4)
    assert math.degrees(found["normal_relief_angle"]) == pytest.approx(22.910, abs=5e-4)


def test_the_wheel_raised_beside_a_lip_leaves_a_plane_with_the_relief_along_the_axis() -> None:
    """Derived with vectors: the tangent of the wheel at the lip, turned about the lip, and its slope round the axis."""
    height, half = run(SHEET, LIP).outputs["wheel_head_height"], math.radians(65)
    tilt = math.asin(height / 75)
    lip = (math.cos(half), math.sin(half), 0.0)  # along the axis (back), outward, and the way it cuts
    square = (-math.sin(half), math.cos(half), 0.0)  # from the tool toward the wheel
    face = tuple(
        math.cos(tilt) * one + math.sin(tilt) * way for one, way in zip(square, (0, 0, 1), strict=True)
    )
    assert sum(one * other for one, other in zip(face, lip, strict=True)) == pytest.approx(0)
    # In the plane, one step behind the lip round the axis goes so far back along the axis.
    assert math.atan(abs(face[2] / face[0])) == pytest.approx(math.radians(25))


def test_an_end_has_from_a_straight_wheel_the_relief_of_a_land_and_from_a_tooth_rest_none() -> None:
    # Derived: an end lies square to the axis, so that square to its edge is along the axis: 75 sin 7 = 9.1402 mm.
    end: dict[str, Given] = {**STRAIGHT, "surface": "end"}
    assert run(SHEET, end).outputs["wheel_head_height"] == pytest.approx(9.1402, abs=5e-5)
    for surface, cure in (("end", "Tilt the wheel"), ("lip", "Roll and swivel it")):
        cup = {**LIP, "surface": surface, "wheel_shape": "type-6-straight-cup", "diameter": 20.0}
        with pytest.raises(Refusal) as refused:
            run(SHEET, cup)
        assert cure in str(refused.value)


def test_a_cone_says_how_far_its_side_lies_off_the_axis() -> None:
    # Derived: half of 90 degrees.
    cone: dict[str, Given] = {**STRAIGHT, "surface": "cone", "included_angle": math.radians(90)}
    assert math.degrees(run(SHEET, cone).outputs["half_included_angle"]) == pytest.approx(45)
    assert "half_included_angle" not in run(SHEET, LIP).outputs
