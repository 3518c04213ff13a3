"""The comparison of relief form, against polygons, integration and one form's own calculation."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import brentq
from shapely import Polygon

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount

AsShown = Callable[[Amount | str], float]
Tool = dict[str, Given]
TWELVE: Tool = {"diameter": 12.0, "relief_angle": math.radians(8), "land_width": 2.0, "primary_land": 0.8}


def forms(**values: Given) -> Result:
    return run(calculation("relief-forms"), values)


def drop_of(**values: Given) -> float:
    return run(calculation("relief-drop"), values).outputs["heel_drop"]


def said(result: Result) -> str:
    return " ".join(str(check.sentence) for check in result.checks)


def tool_of(diameter: float, relief: float, turned: float, share: float, steeper: float, by: str) -> Tool:
    return {
        "compare_by": by,
        "diameter": diameter,
        "relief_angle": relief,
        "land_width": turned * diameter / 2,
        "primary_land": share * diameter / 2 * min(math.sin(relief), math.sin(turned)),
        "secondary_relief_angle": relief + steeper,
    }


tools = st.builds(
    tool_of,
    st.floats(2.0, 60.0),
    st.floats(math.radians(3), math.radians(25)),
    st.floats(0.15, 0.9),
    st.floats(0.2, 0.9),
    st.floats(0.05, 0.5),
    st.sampled_from(("edge-angle", "heel-drop")),
)


def two_facets(tool: Tool, result: Result) -> list[tuple[float, float]]:
    """Axis, edge, corner and heel of the two facets, laid out from the numbers of the answer."""
    radius, relief, width = (float(str(tool[key])) for key in ("diameter", "relief_angle", "primary_land"))
    radius /= 2
    second, turned = result.outputs["secondary_relief_angle"], result.outputs["land_angle"]
    corner = (width * math.cos(relief), radius - width * math.sin(relief))
    height = corner[0] * math.sin(second) + corner[1] * math.cos(second)
    heel = height / math.cos(turned - second)
    return [(0.0, 0.0), (0.0, radius), corner, (heel * math.sin(turned), heel * math.cos(turned))]


@given(tools)
def test_the_metal_left_is_the_area_of_the_drawn_tooth(tool: Tool) -> None:
    result = forms(**tool)
    radius, relief = float(str(tool["diameter"])) / 2, float(str(tool["relief_angle"]))
    turned = result.outputs["land_angle"]
    even, flat, two = result.rows
    integral, _ = quad(lambda at: (radius - radius * math.tan(relief) * at) ** 2 / 2, 0, turned, epsrel=1e-12)
    assert even.values["metal_left"] == pytest.approx(integral, rel=1e-9)
    heel = radius * math.cos(flat.values["relief_angle"]) / math.cos(turned - flat.values["relief_angle"])
    triangle = Polygon([(0, 0), (0, radius), (heel * math.sin(turned), heel * math.cos(turned))])
    assert flat.values["metal_left"] == pytest.approx(triangle.area, rel=1e-9)
    assert two.values["metal_left"] == pytest.approx(Polygon(two_facets(tool, result)).area, rel=1e-9)
    for row in result.rows:
        assert row.values["metal_left"] + row.values["metal_removed"] == pytest.approx(
            radius * radius * turned / 2, rel=1e-12
        )
        more = row.values["metal_left"] - even.values["metal_left"]
        assert row.values["metal_more"] == pytest.approx(more, abs=1e-9 * radius * radius)


@given(tools)
def test_each_form_has_what_they_are_compared_by_in_common(tool: Tool) -> None:
    result = forms(**tool)
    if tool["compare_by"] == "edge-angle":
        assert {row.values["relief_angle"] for row in result.rows} == {tool["relief_angle"]}
        assert result.outputs["secondary_relief_angle"] == tool["secondary_relief_angle"]
    else:
        drops = [row.values["heel_drop"] for row in result.rows]
        assert drops == pytest.approx([drops[0]] * 3, rel=1e-9)
        assert result.outputs["flat_relief_angle"] > float(str(tool["relief_angle"]))


@given(tools)
def test_eccentric_and_flat_agree_with_their_own_calculation(tool: Tool) -> None:
    result = forms(**tool)
    for row, form in zip(result.rows, ("eccentric", "flat"), strict=False):
        alone = (
            drop_of(
                diameter=tool["diameter"],
                land_width=tool["land_width"],
                relief_angle=row.values["relief_angle"],
                relief_form=form,
            )
            if row.values["relief_angle"] <= math.radians(45)
            else row.values["heel_drop"]
        )
        assert row.values["heel_drop"] == pytest.approx(alone, rel=1e-9, abs=1e-13)


@given(tools)
def test_it_rubs_where_the_surface_is_back_on_the_circle(tool: Tool) -> None:
    result = forms(**tool)
    radius = float(str(tool["diameter"])) / 2
    flat, two = result.rows[1].values, result.rows[2].values
    assert flat["rub_angle"] == pytest.approx(2 * flat["relief_angle"], rel=1e-6)
    assert result.outputs["clear_land_width"] == pytest.approx(2 * flat["relief_angle"] * radius, rel=1e-6)
    corner = two_facets(tool, result)[2]
    second = two["secondary_relief_angle"]
    height = corner[0] * math.sin(second) + corner[1] * math.cos(second)
    root = brentq(lambda at: height - radius * math.cos(at - second), second, second + math.pi / 2)
    assert two["rub_angle"] == pytest.approx(root, abs=1e-6)


@given(tools)
def test_the_crossing_is_where_the_two_drops_are_the_same(tool: Tool) -> None:
    result = forms(**tool)
    assume("crossing_angle" in result.outputs)
    at = result.outputs["crossing_angle"]
    radius, relief = float(str(tool["diameter"])) / 2, float(str(tool["relief_angle"]))
    corner = two_facets(tool, result)[2]
    second = result.outputs["secondary_relief_angle"]
    height = corner[0] * math.sin(second) + corner[1] * math.cos(second)
    there = radius - height / math.cos(at - second)
    assert there == pytest.approx(radius * math.tan(relief) * at, abs=1e-9 * radius)
    assert math.atan2(*corner) <= at + 1e-9 <= result.outputs["land_angle"] + 2e-9


@given(tools)
def test_with_the_same_edge_a_flat_always_leaves_the_most_metal(tool: Tool) -> None:
    assume(tool["compare_by"] == "edge-angle")
    even, flat, two = (row.values["metal_left"] for row in forms(**tool).rows)
    assert flat >= two * (1 - 1e-12)
    assert flat > even


def test_the_case_of_twelve_millimetres() -> None:
    result = forms(**TWELVE, secondary_relief_angle=math.radians(18))
    even, flat, two = (row.values["heel_drop"] for row in result.rows)
    assert even == pytest.approx(0.28108, abs=5e-6)
    assert flat == pytest.approx(-0.05485, abs=5e-6)
    corner = (0.8 * math.cos(math.radians(8)), 6 - 0.8 * math.sin(math.radians(8)))
    height = corner[0] * math.sin(math.radians(18)) + corner[1] * math.cos(math.radians(18))
    assert two == pytest.approx(6 - height / math.cos(1 / 3 - math.radians(18)), rel=1e-9)
    assert result.outputs["clear_land_width"] == pytest.approx(1.6755, abs=5e-5)
    assert "One flat rubs from 1.676 mm behind the edge on." in said(result)


def test_every_cure_of_a_form_that_rubs_does_cure(as_shown: AsShown) -> None:
    @given(tools)
    def every_cure(tool: Tool) -> None:
        result = forms(**tool)
        first, second = result.checks[:2]
        for check, name, own in (
            (first, "widest", "land_width"),
            (first, "enough", "relief_angle"),
            (second, "enough", "secondary_relief_angle"),
            (second, "widest", "land_width"),
            (second, "width", "primary_land"),
        ):
            if check.state != "watch" or name not in check.sentence.parts:
                continue
            value = as_shown(check.sentence.parts[name]) + (
                math.radians(0.02) if own == "relief_angle" else 0.0
            )
            changed: Tool = {**tool, own: value}
            if float(str(changed["secondary_relief_angle"])) <= float(str(changed["relief_angle"])):
                continue
            try:
                again = forms(**changed)
            except Refusal as refusal:
                assert refusal.problems[0].key == "primary_land"
                continue
            row = again.rows[1 if check is first else 2]
            assert row.values["rub_angle"] > again.outputs["land_angle"], own

    every_cure()


def test_a_land_that_no_flat_comes_round_still_shows_where_it_rubs() -> None:
    result = forms(**{**TWELVE, "land_width": 14.0}, secondary_relief_angle=math.radians(18))
    even, flat, two = result.rows
    assert "heel_drop" in even.values
    assert "heel_drop" not in flat.values
    assert "heel_drop" not in two.values
    assert flat.values["rub_angle"] == pytest.approx(math.radians(16), rel=1e-9)
    assert set(result.stations[0].readings) == {"eccentric_drop"}


def test_a_flat_too_steep_for_an_edge_is_pointed_out(as_shown: AsShown) -> None:
    wide: Tool = {**TWELVE, "land_width": 12.0, "compare_by": "heel-drop"}
    result = forms(**wide)
    parts = result.checks[0].sentence.parts
    assert result.checks[0].state == "watch"
    again = forms(**{**wide, "land_width": as_shown(parts["widest"])})
    assert again.outputs["flat_relief_angle"] == pytest.approx(math.radians(45), abs=1e-3)
    assert again.checks[0].state == "pass"


@pytest.mark.parametrize(
    ("change", "key"),
    [
        ({"land_width": 0.0}, "land_width"),
        ({"relief_angle": 0.0}, "relief_angle"),
        ({"primary_land": 2.5}, "primary_land"),
        ({"secondary_relief_angle": math.radians(7)}, "secondary_relief_angle"),
        ({"relief_angle": math.radians(40), "land_width": 9.0}, "relief_angle"),
        ({"compare_by": "heel-drop", "land_width": 19.0}, "land_width"),
    ],
)
def test_what_cannot_be_compared_is_refused_by_name(change: Tool, key: str) -> None:
    with pytest.raises(Refusal) as refused:
        forms(**{**TWELVE, "secondary_relief_angle": math.radians(50), **change})
    (problem,) = refused.value.problems
    assert problem.key == key


def test_a_primary_land_back_on_the_circle_is_pointed_out(as_shown: AsShown) -> None:
    tool: Tool = {**TWELVE, "primary_land": 1.8, "secondary_relief_angle": math.radians(18)}
    check = forms(**tool).checks[1]
    assert check.state == "watch"
    assert "back on the circle before the second begins" in str(check.sentence)
    again = forms(**{**tool, "primary_land": as_shown(check.sentence.parts["width"])}).checks[1]
    assert "before the second begins" not in str(again.sentence)


@given(tools)
def test_the_figure_and_the_indicator_show_all_three_out_to_the_heel(tool: Tool) -> None:
    result = forms(**tool)
    assert result.figure is not None
    last = result.stations[-1].readings
    for curve, row, key in zip(
        result.figure.curves, result.rows, ("eccentric_drop", "flat_drop", "two_facet_drop"), strict=True
    ):
        assert curve.name == row.label
        assert curve.points[-1][1] == pytest.approx(row.values["heel_drop"], rel=1e-9, abs=1e-12)
        assert last[key] == pytest.approx(row.values["heel_drop"], rel=1e-9, abs=1e-12)
