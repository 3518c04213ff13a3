"""Facets of a drill on a work head, found again by turning the drill in space."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.drill import facet as facets
from geometry.drill.flank import Flank
from geometry.edge.readings import flat_reading
from geometry.edge.views import normal_of
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount

SHEET = calculation("point-setup")
DRILL: dict[str, Given] = {"point_angle": math.radians(118), "lip_relief_angle": math.radians(12)}
WHOLE = {**DRILL, "diameter": 10.0, "web_thickness": 1.5, "land_width": 5.0}
HALVES = st.floats(math.radians(20), math.radians(89))
RELIEFS = st.floats(math.radians(1), math.radians(35))
Vector = tuple[float, float, float]


def cross(one: Vector, other: Vector) -> Vector:
    (a, b, c), (d, e, f) = one, other
    return b * f - c * e, c * d - a * f, a * e - b * d


def turned(vector: Vector, axis: str, angle: float) -> Vector:
    """A vector turned about a coordinate axis by the right-hand rule, as a rotation matrix does it."""
    x, y, z = vector
    cos, sin = math.cos(angle), math.sin(angle)
    if axis == "z":
        return cos * x - sin * y, sin * x + cos * y, z
    return cos * x + sin * z, y, cos * z - sin * x


def lip_plane(half: float, relief: float) -> Vector:
    """The normal of the flank, out of the drill, from the lip and the way that falls behind it; tip up the z axis."""
    lip = (math.sin(half), 0.0, -math.cos(half))
    behind = (0.0, math.cos(relief), -math.sin(relief))
    x, y, z = cross(lip, behind)
    size = math.hypot(x, y, z)
    return x / size, y / size, z / size


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks if check.state in ("watch", "stop")]


@given(HALVES, RELIEFS)
def test_rolled_and_swivelled_the_flank_lies_against_the_wheel(half: float, relief: float) -> None:
    # Derived, by rotation matrices: the wheel's face is square to x. Behind the lip is +y, so the drill cuts toward -y;
    # it is turned that way by the roll, then its axis is swivelled from the face, z, toward the wheel.
    found = run(SHEET, {"point_angle": 2 * half, "lip_relief_angle": relief}).outputs
    rolled = turned(lip_plane(half, relief), "z", -found["roll_angle"])
    assert rolled[1] == pytest.approx(0.0, abs=1e-12)
    against = turned(rolled, "y", found["axis_to_wheel_angle"])
    assert against == pytest.approx((1.0, 0.0, 0.0), abs=1e-12)


def test_the_drill_of_118_and_12_degrees_is_rolled_19_48_and_stands_57_49_to_the_wheel() -> None:
    # Worked out by hand from tan 59 = 1.664279, tan 12 = 0.212557, sin 59 = 0.857167: tan(roll) = 0.353753, and
    # sin(axis) = 0.857167 / sqrt(1 + (0.857167 * 0.212557)^2) = 0.843285. Derived.
    found = run(SHEET, DRILL).outputs
    assert math.degrees(found["roll_angle"]) == pytest.approx(19.482, abs=2e-3)
    assert math.degrees(found["axis_to_wheel_angle"]) == pytest.approx(57.487, abs=2e-3)


@given(HALVES, RELIEFS)
def test_roll_and_swivel_give_back_point_and_relief(half: float, relief: float) -> None:
    found = run(SHEET, {"point_angle": 2 * half, "lip_relief_angle": relief}).outputs
    axis, roll = found["axis_to_wheel_angle"], found["roll_angle"]
    both = facets.facet_of_setting(axis, roll)
    by_axis, by_roll = facets.facet_of_axis(axis, relief), facets.facet_of_roll(2 * half, roll)
    for one in (both, by_axis, by_roll):
        assert one.point_angle == pytest.approx(2 * half, rel=1e-7)
        assert one.lip_relief == pytest.approx(relief, rel=1e-7)


def test_without_relief_the_axis_stands_at_half_the_point_and_nothing_is_rolled() -> None:
    found = facets.facet(math.radians(118), 0.0)
    assert found.roll == 0
    assert found.axis_to_wheel == pytest.approx(math.radians(59), rel=1e-12)


def test_a_flat_end_is_rolled_a_quarter_turn_and_tilted_by_its_relief() -> None:
    found = facets.facet(math.pi, math.radians(8))
    assert found.roll == pytest.approx(math.pi / 2)
    assert math.degrees(found.axis_to_wheel) == pytest.approx(82, rel=1e-12)


@given(HALVES, RELIEFS)
def test_the_chisel_edge_runs_along_both_flanks(half: float, relief: float) -> None:
    # Derived: the line in both planes is square to both normals; the second flank is the first turned half round.
    normal = lip_plane(half, relief)
    along = cross(normal, turned(normal, "z", math.pi))
    sharp = math.atan2(abs(along[1]), abs(along[0]))
    found = run(SHEET, {"point_angle": 2 * half, "lip_relief_angle": relief}).outputs
    assert found["chisel_edge_supplement"] == pytest.approx(sharp, rel=1e-9)
    assert along[0] * along[1] < 0, "it runs from the lip back over the axis"


@given(HALVES, RELIEFS, st.floats(0.02, 0.5))
def test_of_four_facets_each_half_of_the_edge_lies_in_the_first_of_one_side_and_the_second_of_the_other(
    half: float, relief: float, more: float
) -> None:
    second = relief + more
    along = cross(lip_plane(half, relief), turned(lip_plane(half, second), "z", math.pi))
    sharp = facets.chisel_angle(facets.facet(2 * half, relief), facets.facet(2 * half, second))
    assert sharp == pytest.approx(math.atan2(abs(along[1]), abs(along[0])), rel=1e-9)
    assert sharp is not None
    needed = facets.second_for_chisel(facets.facet(2 * half, relief), sharp)
    assert needed == pytest.approx(second, rel=1e-9)


@given(HALVES, RELIEFS, st.floats(0.01, 0.4), st.floats(1.0, 40.0))
def test_the_corner_shows_the_slope_of_the_plane_along_the_cylinder(
    half: float, relief: float, web: float, diameter: float
) -> None:
    # Derived: the height of the plane under a point that goes round the cylinder, differenced at the corner.
    normal, radius, lip = lip_plane(half, relief), diameter / 2, web * diameter / 2
    start = -math.asin(lip / radius)

    def height(turn: float) -> float:
        x, y = radius * math.cos(start + turn), radius * math.sin(start + turn)
        return -(normal[0] * x + normal[1] * y) / normal[2]

    step = 1e-5
    slope = (height(-step) - height(step)) / (2 * step * radius)
    found = facets.corner_relief(facets.facet(2 * half, relief), web * diameter, diameter)
    assert math.tan(found) == pytest.approx(slope, rel=1e-6)
    back = facets.for_corner_relief(found, 2 * half, web * diameter, diameter)
    assert back == pytest.approx(relief, rel=1e-7)


@given(HALVES, RELIEFS, st.floats(0.05, 1.5))
def test_a_lip_in_line_with_the_axis_reads_as_the_flat_of_any_other_edge(
    half: float, relief: float, turn: float
) -> None:
    # The relation of an edge at an angle to the axis was found elsewhere, by a plunger that meets a plane.
    flank = Flank(facets.facet(2 * half, relief), None, 0.0, 5.0)
    elsewhere = flat_reading(normal_of(relief, half, "axial"), half, 10.0, "axial")(turn)
    assert flank.drop(turn) == pytest.approx(elsewhere, rel=1e-9, abs=1e-12)


@given(RELIEFS)
def test_one_facet_is_back_at_the_height_of_the_corner_after_twice_its_roll(relief: float) -> None:
    # Derived: r (t sin a - c (1 - cos a)) = 0 where tan(a / 2) = t / c.
    first = facets.facet(math.radians(118), relief)
    flank = Flank(first, None, 0.0, 5.0)
    again = brentq(flank.drop, first.roll, math.pi)
    assert again == pytest.approx(2 * first.roll, rel=1e-9)


def test_a_heel_that_rubs_is_stopped_and_clears_with_the_second_facet_that_is_told() -> None:
    one = run(SHEET, WHOLE)
    assert states(one) == ["stop", "watch"]
    assert one.outputs["axial_drop"] < 0
    enough = dict(one.checks[0].cure)["second_lip_relief_angle"]
    assert isinstance(enough, float)
    level = run(SHEET, {**WHOLE, "second_lip_relief_angle": enough}).outputs["axial_drop"]
    assert level == pytest.approx(0.0, abs=1e-9)
    # By hand: the chisel edge lies at atan(2 x 0.600861 / (0.123829 + 0.600861)) = 58.91 degrees.
    assert states(run(SHEET, {**WHOLE, "second_lip_relief_angle": math.radians(31)})) == []


def test_the_first_facet_is_as_wide_as_from_the_lip_to_the_line_through_the_axis() -> None:
    # By hand: half a web of 0.75 seen along the axis, on a plane that falls by (tan 12 - 0.15 cot 59) / cos 8.6269 =
    # 0.123829 and so is inclined by atan(sin 59 x 0.123829) = 6.0588 degrees square to the lip. Derived.
    found = run(SHEET, {**WHOLE, "second_lip_relief_angle": math.radians(28)}).outputs
    assert found["primary_land"] == pytest.approx(0.75 / math.cos(math.radians(6.0588)), rel=1e-5)


@given(HALVES, RELIEFS, st.floats(0.02, 0.4), st.floats(1.0, 40.0), st.booleans())
def test_what_is_set_gives_the_wanted_lip_relief_on_the_cylinder_at_the_corner(
    half: float, wanted: float, web: float, diameter: float, by_axis: bool
) -> None:
    # Derived, by vectors: the wheel's face is turned back out of swivel and roll into the drill, and laid along the circle
    # of the corner, which lies half a web ahead of the axis.
    base: dict[str, Given] = {
        "lip_relief_angle": wanted,
        "diameter": diameter,
        "web_thickness": web * diameter,
    }
    try:
        found = run(SHEET, {**base, "point_angle": 2 * half}).outputs
    except Refusal as refused:
        assert [problem.key for problem in refused.problems] == ["lip_relief_angle"]
        assert math.tan(wanted) < web / math.tan(half)
        return
    # Beyond a quarter turn from the corner two points have that axis and relief, and the sharper one is answered.
    if by_axis and found["roll_angle"] + math.asin(web) < math.pi / 2 - 0.01:
        again = {**base, "axis_to_wheel_angle": found["axis_to_wheel_angle"]}
        back = run(SHEET, again).outputs
        assert back["roll_angle"] == pytest.approx(found["roll_angle"], abs=1e-6)
        assert back["point_angle"] == pytest.approx(2 * half, abs=1e-6)
    normal = turned(turned((1.0, 0.0, 0.0), "y", -found["axis_to_wheel_angle"]), "z", found["roll_angle"])
    ahead = math.asin(web)
    round_the_drill = (math.sin(ahead), math.cos(ahead), 0.0)
    falls = sum(a * b for a, b in zip(normal, round_the_drill, strict=True)) / normal[2]
    assert math.atan(falls) == pytest.approx(wanted, abs=1e-9)
    assert found["corner_relief_angle"] == pytest.approx(wanted, abs=1e-9)


@given(HALVES, st.floats(math.radians(1), math.radians(40)), st.floats(0.05, 0.4))
def test_a_roll_that_was_set_tells_the_lip_relief_at_the_corner(half: float, roll: float, web: float) -> None:
    values: dict[str, Given] = {
        "point_angle": 2 * half,
        "roll_angle": roll,
        "diameter": 10.0,
        "web_thickness": 10 * web,
    }
    shown = run(SHEET, values).outputs["lip_relief_angle"]
    # Within what a relief may be; beyond it nothing is asked.
    if shown < math.radians(60):
        del values["roll_angle"]
        again = run(SHEET, {**values, "lip_relief_angle": shown}).outputs
        assert again["roll_angle"] == pytest.approx(roll, abs=1e-7)


def test_a_web_that_nobody_measured_is_named_and_never_nothing() -> None:
    bare = {key: value for key, value in WHOLE.items() if key != "web_thickness"}
    found, measured = run(SHEET, bare), run(SHEET, WHOLE)
    # 0.15 of 10 mm, as the web of the other: common practice, no source.
    assert found.outputs["web_thickness"] == 1.5
    assert found.outputs["axial_drop"] == measured.outputs["axial_drop"]
    (said,) = [str(check.sentence) for check in found.checks if "was not measured" in check.sentence.template]
    assert "1.5 mm" in said
    assert not [check for check in measured.checks if "was not measured" in check.sentence.template]
    assert "web_thickness" not in measured.outputs


def test_without_a_diameter_it_says_that_the_lip_is_taken_in_line_with_the_axis() -> None:
    assert any("in line with the axis" in check.sentence.template for check in run(SHEET, DRILL).checks)


def test_a_second_facet_that_is_no_steeper_is_watched() -> None:
    assert "watch" in states(run(SHEET, {**DRILL, "second_lip_relief_angle": math.radians(11)}))


@pytest.mark.parametrize(
    ("values", "key"),
    [
        (
            {"axis_to_wheel_angle": math.radians(85), "lip_relief_angle": math.radians(12)},
            "axis_to_wheel_angle",
        ),
        ({"axis_to_wheel_angle": 0.0, "roll_angle": 0.2}, "axis_to_wheel_angle"),
        ({"point_angle": math.pi, "roll_angle": 0.2}, "roll_angle"),
        ({**DRILL, "diameter": 1.5, "web_thickness": 1.5}, "web_thickness"),
        ({**DRILL, "land_width": 2.0}, "diameter"),
    ],
)
def test_what_no_facet_can_be_is_refused_at_its_own_input(values: dict[str, Given], key: str) -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, values)
    assert [problem.key for problem in refused.value.problems] == [key]


@given(RELIEFS, st.floats(0.05, 0.3), st.booleans())
def test_the_drop_is_greatest_where_an_indicator_over_the_turned_plane_of_the_last_facet_stops_falling(
    relief: float, web: float, with_second: bool
) -> None:
    # Elsewhere: the circle of the corner in steps over two planes that meet on the line through the axis.
    first = facets.facet(math.radians(118), relief, 0.0)
    second = facets.Facet(first.slope, math.tan(relief + 0.2)) if with_second else None
    half = 5.0 * web
    start = math.asin(half / 5.0)

    def height(turn: float) -> float:
        x, y, _ = turned((5.0, 0.0, 0.0), "z", turn - start)
        steep = second.fall if second is not None and y > 0 else first.fall
        return -first.slope * x - steep * y

    turns = [place * 1e-4 for place in range(1, 20_000)]
    lowest = min(turns, key=height)
    assert Flank(first, second, half, 5.0).deepest == pytest.approx(lowest, abs=2e-4)


def rising(land: float, **more: Given) -> list[str]:
    found = run(SHEET, {**WHOLE, "land_width": land, **more})
    return [str(one.sentence) for one in found.checks if "gets less again" in str(one.sentence)]


def test_a_drop_that_gets_less_again_before_the_heel_is_said_to_be_right_and_where_it_is_greatest() -> None:
    # By hand: the lip lies asin(0.15) = 8.6269 degrees ahead, the roll is 11.6446 degrees: 20.27 degrees behind the corner;
    # there 0.123829 x (5 sin 11.6446 + 0.75) - 0.600861 x (4.943430 - 5 cos 11.6446) = 0.1900 mm.
    (said,) = rising(2.6)
    assert "20.27 deg" in said
    assert "0.19 mm" in said
    # Before that place the drop only grows; and of a heel that rubs nothing is said to be right.
    assert not rising(1.5)
    assert not rising(5.0)
    assert not rising(2.6, second_lip_relief_angle=math.radians(31))


def test_the_views_are_told_where_a_second_facet_seems_flatter_than_the_first() -> None:
    # The lip lies asin(1.5 / 10) ahead at the corner of a 10 mm drill with a web of 1.5 mm; the facet through it that falls
    # 12 degrees round the axis there falls tan 12 / cos - tan(31) tan(ahead) straight across. Derived.
    ahead = math.asin(0.15)
    across = math.atan(
        math.tan(math.radians(12)) / math.cos(ahead) - math.tan(math.radians(31)) * math.tan(ahead)
    )
    found = run(
        calculation("point-setup"),
        {"point_angle": math.radians(118), "lip_relief_angle": math.radians(12), "diameter": 10.0, "web_thickness": 1.5,
         "land_width": 9.0},
    )  # fmt: skip
    check = found.checks[0]
    assert check.state == "stop"
    told = check.sentence.parts
    assert isinstance(told["across"], Amount)
    assert told["across"].value == pytest.approx(across)
    assert "counted straight across the lip" in str(check.sentence)


@given(HALVES, st.floats(math.radians(8), math.radians(35)), st.floats(0.01, 0.12), st.floats(1.0, 40.0))
def test_the_point_stands_on_the_axis_where_the_planes_of_both_sides_meet(
    half: float, relief: float, web: float, diameter: float
) -> None:
    # Derived: the plane through a lip that lies half a web ahead of the axis, followed to the axis; by half a turn about
    # it the plane of the other side meets the axis at the same place.
    try:
        whole = run(
            SHEET,
            {
                "point_angle": 2 * half,
                "lip_relief_angle": relief,
                "diameter": diameter,
                "web_thickness": web * diameter,
            },
        ).outputs
    except Refusal:
        return
    x, y, z = lip_plane(half, facets.facet(2 * half, relief, facets.lip_ahead(web, 1.0)).lip_relief)
    ahead, out = web * diameter / 2, math.sqrt(1 - web**2) * diameter / 2
    # From the corner (out, -ahead, 0) to (0, 0, height): the step lies in the plane.
    height = (out * x - ahead * y) / z
    assert whole.get("point_height", 0.0) == pytest.approx(max(height, 0.0), rel=1e-9, abs=1e-9)


def test_a_plain_point_of_two_flats_is_told_to_get_a_second_facet_and_then_passes() -> None:
    plain = {
        "point_angle": math.radians(118),
        "lip_relief_angle": math.radians(12),
        "diameter": 12.5,
        "web_thickness": 2.1,
    }
    (found,) = [one for one in run(SHEET, plain).checks if one.state == "watch"]
    said = str(found.sentence)
    assert "as plain points of two flats have it up to a lip relief of" in said
    assert "Grind a second facet of" in said
    assert "behind the first" in said
    ((key, value),) = found.cure
    assert key == "second_lip_relief_angle"
    assert isinstance(value, float)
    assert states(run(SHEET, {**plain, key: value})) == []


def test_where_no_second_facet_in_use_reaches_the_chisel_edge_the_web_is_thinned() -> None:
    found = run(SHEET, {"point_angle": math.radians(40), "lip_relief_angle": math.radians(4)})
    (said,) = [str(one.sentence) for one in found.checks if one.state == "watch"]
    assert "second facet" not in said
    assert "Thin the web" in said
