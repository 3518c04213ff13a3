"""The calculation of the facets: the answer laid out as polygons, and every cure it offers taken at its word."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Point, Polygon

from geometry.calculation import Given, Result, Row
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount

AsShown = Callable[[Amount | str], float]
Tool = dict[str, Given]

BIG_DRILL: Tool = {
    "diameter": 12.0,
    "body_diameter": 12.7,
    "land_width": 8.0,
    "relief_angle": math.radians(10),
    "primary_land": 0.8,
    "least_gap": 0.05,
}


def facets(**values: Given) -> Result:
    return run(calculation("relief-facets"), values)


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks]


def said(result: Result) -> str:
    return " ".join(str(check.sentence) for check in result.checks)


def laid_out(rows: Sequence[Row], diameter: float) -> list[tuple[float, float]]:
    """Corners found from nothing but the angles and widths of the table."""
    points = [(0.0, diameter / 2)]
    for row in rows:
        across, up = points[-1]
        leans, width = row.values["facet_angle"], row.values["facet_width"]
        points.append((across + width * math.cos(leans), up - width * math.sin(leans)))
    return points


def tool_of(diameter: float, larger: float, land: float, relief: float, share: float, gap: float) -> Tool:
    """A drill ground down, whose primary land may end anywhere from the edge to past its deepest place."""
    width = share * diameter / 2 * math.sin(relief)
    return {
        "diameter": diameter,
        "body_diameter": larger * diameter,
        "land_width": land * diameter / 2,
        "relief_angle": relief,
        "primary_land": width,
        "least_gap": gap * diameter / 2 * (1 - math.cos(relief)),
    }


def tools(gap: st.SearchStrategy[float]) -> st.SearchStrategy[Tool]:
    return st.builds(
        tool_of,
        st.floats(2.0, 50.0),
        st.floats(1.0, 1.5),
        st.floats(0.3, 4.0),
        st.floats(math.radians(5), math.radians(25)),
        st.floats(0.2, 1.7),
        gap,
    )


any_tools = tools(st.floats(0.05, 3.0))
gentle_tools = tools(st.floats(0.05, 0.3))


@given(gentle_tools)
def test_laid_out_the_back_lies_in_the_circle_and_the_numbers_are_those_of_the_drawing(tool: Tool) -> None:
    result = facets(**tool)
    diameter, least = float(str(tool["diameter"])), float(str(tool["least_gap"]))
    slack = 1e-8 * diameter
    points = laid_out(result.rows, diameter)
    outside = max(math.hypot(*point) for point in points[1:])
    assert result.outputs["least_gap_found"] == pytest.approx(diameter / 2 - outside, abs=slack)
    deepest = diameter / 2 - Point(0, 0).distance(LineString(points))
    assert result.outputs["deepest_gap_found"] == pytest.approx(deepest, abs=slack)
    assert result.outputs["facets"] == len(result.rows)
    heel = points[-1]
    assert math.atan2(*heel) % (2 * math.pi) == pytest.approx(result.outputs["land_angle"], abs=1e-7)
    if "stop" not in states(result):
        assert diameter / 2 - outside >= least - slack
        assert result.outputs["heel_drop"] == pytest.approx(diameter / 2 - math.hypot(*heel), abs=slack)


@given(gentle_tools)
def test_the_table_says_where_each_facet_begins_and_how_high_it_lies(tool: Tool) -> None:
    result = facets(**tool)
    diameter = float(str(tool["diameter"]))
    points = laid_out(result.rows, diameter)
    for row, here, there in zip(result.rows, points, points[1:], strict=False):
        values = row.values
        assert values["facet_start"] == pytest.approx(math.atan2(*here) % (2 * math.pi), abs=1e-7)
        assert values["facet_start_drop"] == pytest.approx(
            diameter / 2 - math.hypot(*here), abs=1e-8 * diameter
        )
        leans = math.atan2(here[1] - there[1], there[0] - here[0]) if here != there else values["facet_angle"]
        from_axis = here[0] * math.sin(leans) + here[1] * math.cos(leans)
        assert values["facet_height"] == pytest.approx(from_axis, abs=1e-6 * diameter)
    assert [row.label.split(",")[0] for row in result.rows] == [
        f"facet {number}" for number in range(1, len(result.rows) + 1)
    ]


@given(gentle_tools)
def test_the_indicator_on_the_way_shows_the_polygon(tool: Tool) -> None:
    result = facets(**tool)
    assume("stop" not in states(result))
    diameter = float(str(tool["diameter"]))
    tooth = Polygon([(0, 0), *laid_out(result.rows, diameter)])
    for station in result.stations:
        ray = LineString([(0, 0), (diameter * math.sin(station.angle), diameter * math.cos(station.angle))])
        out = ray.intersection(tooth.buffer(1e-9 * diameter)).length
        assert station.readings["drop"] == pytest.approx(diameter / 2 - out, abs=1e-5 * diameter)


def test_no_stop_is_left_when_its_cure_is_taken(as_shown: AsShown) -> None:
    cures = {"width": "primary_land", "relief": "relief_angle", "accepted": "least_gap"}

    @given(any_tools)
    def every_cure(tool: Tool) -> None:
        result = facets(**tool)
        assume(states(result)[0] == "stop")
        parts = result.checks[0].sentence.parts
        offered = {cures[name]: as_shown(part) for name, part in parts.items() if name in cures}
        assert offered
        together = " and raise " in result.checks[0].sentence.template
        ways = [offered] if together else [{key: value} for key, value in offered.items()]
        for way in ways:
            again = facets(**{**tool, **way})
            assert states(again)[0] != "stop", (way, said(again))

    every_cure()


@given(gentle_tools, st.floats(math.radians(12), math.radians(60)))
def test_two_facets_as_they_are_are_judged_by_their_polygon(tool: Tool, second: float) -> None:
    assume(second > float(str(tool["relief_angle"])) + 0.01)
    result = facets(**tool, secondary_relief_angle=second)
    diameter, body = float(str(tool["diameter"])), float(str(tool["body_diameter"]))
    points = laid_out(result.rows, diameter)
    found = diameter / 2 - max(math.hypot(*point) for point in points[1:])
    end = math.atan2(*points[-1])
    if end < result.outputs["land_angle"] - 1e-9:
        found = min(found, (diameter - body) / 2)
    assert result.outputs["least_gap_found"] == pytest.approx(found, abs=1e-8 * diameter)
    assert result.outputs["least_gap_found"] >= (diameter - body) / 2 - 1e-8 * diameter
    clears = found >= float(str(tool["least_gap"]))
    assert ("stop" not in states(result)) == clears or abs(found - float(str(tool["least_gap"]))) < 1e-7


def test_the_cures_of_a_second_facet_do_cure(as_shown: AsShown) -> None:
    cures = {"enough": "secondary_relief_angle", "widest": "land_width"}

    @given(gentle_tools, st.floats(math.radians(12), math.radians(60)))
    def every_cure(tool: Tool, second: float) -> None:
        assume(second > float(str(tool["relief_angle"])) + 0.01)
        result = facets(**tool, secondary_relief_angle=second)
        parts = result.checks[0].sentence.parts
        offered = {cures[name]: as_shown(part) for name, part in parts.items() if name in cures}
        assume(offered)
        assert states(result)[0] == "stop"
        for key, value in offered.items():
            again = facets(**{**tool, "secondary_relief_angle": second, key: value})
            assert states(again)[0] != "stop", (key, value, said(again))
        assert "stop" not in states(facets(**tool))

    every_cure()


def test_the_depth_of_one_facet_more_can_be_asked_for(as_shown: AsShown) -> None:
    @given(gentle_tools)
    def asked(tool: Tool) -> None:
        result = facets(**tool)
        parts = result.checks[-1].sentence.parts
        assume("depth" in parts)
        depth = as_shown(parts["depth"])
        again = facets(**tool, deepest_gap=depth)
        assert "stop" not in states(again)
        assert again.outputs["deepest_gap_found"] <= depth + 1e-9
        assert again.outputs["facets"] <= result.outputs["facets"] + 1

    asked()


def test_a_drill_of_half_an_inch_ground_to_twelve_millimetres() -> None:
    # Derived: a straight line from the end of the primary land to the heel 0.05 mm inside the circle.
    result = facets(**BIG_DRILL)
    corner = (0.8 * math.cos(math.radians(10)), 6 - 0.8 * math.sin(math.radians(10)))
    heel = (5.95 * math.sin(8 / 6), 5.95 * math.cos(8 / 6))
    second = result.rows[1].values
    assert result.outputs["facets"] == 2
    assert second["facet_width"] == pytest.approx(math.dist(corner, heel), rel=1e-9)
    assert second["facet_angle"] == pytest.approx(
        math.atan2(corner[1] - heel[1], heel[0] - corner[0]), rel=1e-9
    )
    assert second["facet_start"] == pytest.approx(math.atan2(*corner), rel=1e-12)
    assert second["facet_start_drop"] == pytest.approx(6 - math.hypot(*corner), rel=1e-9)
    assert result.outputs["least_gap_found"] == pytest.approx(0.05, abs=1e-9)
    dip = Point(0, 0).distance(LineString([corner, heel]))
    assert result.outputs["deepest_cut"] == pytest.approx(6.35 - dip, rel=1e-9)


def test_less_depth_takes_more_facets() -> None:
    counts = [facets(**BIG_DRILL, deepest_gap=depth).outputs["facets"] for depth in (2.0, 0.5, 0.2, 0.13)]
    assert counts == [2, 3, 4, 5]


def test_inches_and_millimetres_give_the_same_facets() -> None:
    inch = 25.4
    lengths = ("diameter", "body_diameter", "land_width", "primary_land", "least_gap")
    small = {
        key: value / inch if key in lengths else value
        for key, value in BIG_DRILL.items()
        if isinstance(value, float)
    }
    here, there = facets(**BIG_DRILL), facets(**small)
    for one, other in zip(here.rows, there.rows, strict=True):
        assert other.values["facet_angle"] == pytest.approx(one.values["facet_angle"], rel=1e-12)
        for key in ("facet_width", "facet_height"):
            assert other.values[key] == pytest.approx(one.values[key] / inch, rel=1e-12)


def test_arc_and_chord_of_one_land_give_the_same_facets() -> None:
    across = 12 * math.sin(8 / 12)
    by_caliper = facets(**{**BIG_DRILL, "land_width": across, "land_measured_as": "chord"})
    assert by_caliper.outputs == pytest.approx(dict(facets(**BIG_DRILL).outputs), rel=1e-9)


def test_a_hole_is_cleared_by_the_gap_and_half_its_play() -> None:
    result = facets(**BIG_DRILL, hole_diameter=12.1)
    assert result.outputs["hole_gap"] == pytest.approx(0.05 + 0.05, abs=1e-9)
    wall = Point(0, 0).buffer(12.1 / 2, quad_segs=4000).exterior
    back = LineString(laid_out(result.rows, 12.0)[1:])
    assert result.outputs["hole_gap"] == pytest.approx(back.distance(wall), abs=1e-5)
    assert "In a hole of 12.1 mm" in said(result)


def test_a_primary_land_that_comes_back_leaves_the_old_body_standing() -> None:
    result = facets(**{**BIG_DRILL, "primary_land": 2.2})
    assert result.outputs["heel_drop"] == pytest.approx(-0.35)
    assert result.outputs["least_gap_found"] == pytest.approx(-0.35)
    assert states(result) == ["stop"]
    assert said(result) == (
        "The primary land comes back to the circle and ends 0.02127 mm proud of it, where 0.05 mm inside is wanted. "
        "Narrow the primary land to 1.74 mm or raise the relief of the primary land to 11.89 deg."
    )


def test_a_primary_land_wider_than_the_body_allows_ends_where_the_body_does() -> None:
    result = facets(**{**BIG_DRILL, "primary_land": 7.0, "secondary_relief_angle": math.radians(30)})
    (only,) = result.rows
    across, up = laid_out([only], 12.0)[1]
    assert math.hypot(across, up) == pytest.approx(12.7 / 2, rel=1e-9)
    assert result.outputs["heel_drop"] == pytest.approx(-0.35)


@pytest.mark.parametrize("wide", [2.5, 3.5, 5.0, 7.0])
def test_the_relief_named_for_a_primary_land_that_ran_out_of_the_body_is_enough(
    as_shown: AsShown, wide: float
) -> None:
    tool: Tool = {**BIG_DRILL, "primary_land": wide}
    result = facets(**tool)
    assert states(result) == ["stop"]
    parts = result.checks[0].sentence.parts
    assert states(facets(**{**tool, "relief_angle": as_shown(parts["relief"])}))[0] != "stop"
    assert states(facets(**{**tool, "primary_land": as_shown(parts["width"])}))[0] != "stop"


@pytest.mark.parametrize("second", [None, math.radians(20)])
@pytest.mark.parametrize("wide", [5e-324, 1e-310, 1e-200])
def test_a_primary_land_of_next_to_nothing_on_the_smallest_tool_is_judged_and_not_divided_by(
    wide: float, second: float | None
) -> None:
    tool: Tool = {**BIG_DRILL, "diameter": 0.05, "body_diameter": 0.05, "least_gap": 0.01, "land_width": 0.04}
    tool |= {"primary_land": wide} | ({} if second is None else {"secondary_relief_angle": second})
    result = facets(**tool)
    assert "stop" in states(result)
    assert all(map(math.isfinite, result.outputs.values()))


def test_a_gap_of_more_than_the_radius_is_refused() -> None:
    tool: Tool = {"diameter": 0.05, "body_diameter": 0.06, "land_width": 0.01, "relief_angle": 0.0}
    with pytest.raises(Refusal, match="would leave no core"):
        facets(**tool, primary_land=0.0, least_gap=0.03, secondary_relief_angle=5e-324)


def test_a_heel_that_rubs_is_told_before_a_primary_land_that_is_a_little_short() -> None:
    # The primary land ends 6 - sqrt(6^2 + 1 - 12 sin 10 deg) = 0.091 mm inside, where 0.1 is wanted.
    tool: Tool = {
        **BIG_DRILL,
        "body_diameter": 13.0,
        "land_width": 7.0,
        "primary_land": 1.0,
        "least_gap": 0.1,
    }
    result = facets(**tool, secondary_relief_angle=math.radians(15))
    assert states(result) == ["stop", "stop"]
    heel, primary = (str(check.sentence) for check in result.checks)
    assert heel.startswith("The heel stands 0.5 mm proud of the circle, where 0.1 mm inside it is wanted")
    assert primary.startswith("The primary land ends only 0.09101 mm inside the circle")


def test_a_first_facet_that_is_enough_is_said_to_be_enough() -> None:
    result = facets(**{**BIG_DRILL, "land_width": 1.2})
    assert result.outputs["facets"] == 1
    assert "no second facet is needed" in said(result)


def test_a_facet_given_too_deep_is_a_stop_with_the_steepest_that_is_not(as_shown: AsShown) -> None:
    tool: Tool = {**BIG_DRILL, "secondary_relief_angle": math.radians(50), "deepest_gap": 1.3}
    result = facets(**tool)
    assert states(result) == ["stop"]
    parts = result.checks[0].sentence.parts
    assert "stop" not in states(facets(**{**tool, "secondary_relief_angle": as_shown(parts["steepest"])}))
    assert "stop" not in states(facets(**{**tool, "deepest_gap": as_shown(parts["enough"])}))


@pytest.mark.parametrize(
    ("change", "key"),
    [
        ({"body_diameter": 11.9}, "body_diameter"),
        ({"land_width": 0.0}, "land_width"),
        ({"least_gap": 0.0}, "least_gap"),
        ({"least_gap": 5.5}, "least_gap"),
        ({"least_gap": 6.0, "secondary_relief_angle": math.radians(20)}, "least_gap"),
        ({"least_gap": 6.5, "secondary_relief_angle": math.radians(20)}, "least_gap"),
        ({"deepest_gap": 0.04, "secondary_relief_angle": math.radians(20)}, "deepest_gap"),
        ({"hole_diameter": 11.0}, "hole_diameter"),
        ({"deepest_gap": 0.04}, "deepest_gap"),
        ({"deepest_gap": 0.09}, "deepest_gap"),
        ({"deepest_gap": 5.9}, "deepest_gap"),
        ({"secondary_relief_angle": math.radians(9)}, "secondary_relief_angle"),
    ],
)
def test_values_that_do_not_fit_one_another_are_refused_by_name(change: Tool, key: str) -> None:
    with pytest.raises(Refusal) as refused:
        facets(**{**BIG_DRILL, **change})
    (problem,) = refused.value.problems
    assert problem.key == key


def test_the_figure_has_every_corner_the_wanted_gap_and_the_old_body() -> None:
    result = facets(**BIG_DRILL)
    assert result.figure is not None
    ground, wanted, body = result.figure.curves
    assert [curve.name for curve in result.figure.curves] == ["facets", "gap wanted", "old body"]
    corner = result.rows[1].values
    assert (corner["facet_start"], corner["facet_start_drop"]) in ground.points
    assert {drop for _, drop in wanted.points} == {0.05}
    assert [drop for _, drop in body.points] == pytest.approx([-0.35, -0.35])
    proud = facets(**{**BIG_DRILL, "primary_land": 2.2})
    assert proud.figure is not None
    assert proud.figure.curves[0].points[-1] == pytest.approx((8 / 6, -0.35))


def test_nothing_flatter_than_the_primary_land_is_advised_behind_it() -> None:
    # To keep 0.12 mm a second facet would have to be flatter than the primary land of 15 degrees before it.
    tool: Tool = {**BIG_DRILL, "relief_angle": math.radians(15), "deepest_gap": 0.12}
    result = facets(**tool, secondary_relief_angle=math.radians(20))
    (deep,) = (check for check in result.checks if "deeper than" in check.sentence.template)
    cure = dict(deep.cure)
    assert cure.get("secondary_relief_angle") is None
    assert cure["deepest_gap"] == result.outputs["deepest_gap_found"]


def test_a_primary_land_is_not_widened_beyond_the_land_nor_laid_steeper_than_the_second() -> None:
    tool: Tool = {**BIG_DRILL, "land_width": 0.5, "primary_land": 0.2, "least_gap": 0.2}
    for second in (11.0, 20.0, 40.0):
        for check in facets(**tool, secondary_relief_angle=math.radians(second)).checks:
            cure = dict(check.cure)
            assert float(str(cure.get("primary_land") or 0.0)) <= 0.5 or "relief_angle" in cure
            steeper = float(str(cure.get("relief_angle") or 0.0))
            assert steeper < math.radians(second) or "secondary_relief_angle" in cure or len(cure) > 1
