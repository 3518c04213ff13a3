"""The step-relief calculation: the weakest step named, and advice that fixes what it complains of."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Check, Given, Result, Together
from geometry.calculations import calculation
from geometry.complaints import known_by
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount
from geometry.slips import Slip

SHEET = calculation("step-relief")
STEPS = st.lists(st.integers(2, 60), min_size=2, max_size=6, unique=True).map(
    lambda found: tuple(float(x) for x in sorted(found))
)
TOOL: dict[str, Given] = {
    "diameter": (6.0, 8.0, 10.0, 12.0),
    "included_angle": math.radians(90),
    "radial_throw": 3.0,
    "axial_throw": 1.0,
}


def amount(check: Check, name: str) -> float:
    part = check.sentence.parts[name]
    assert isinstance(part, Amount)
    return part.value


def complaints(result: Result) -> list[Check]:
    return [
        check for check in result.checks if check.state in {"watch", "stop"} and not isinstance(check, Slip)
    ]


def test_every_step_and_both_ends_of_every_shoulder_have_a_line() -> None:
    rows = run(SHEET, TOOL).rows
    assert [row.label for row in rows][:4] == [
        "Step 1",
        "Shoulder 1, inner end",
        "Shoulder 1, outer end",
        "Step 2",
    ]
    assert len(rows) == 4 + 2 * 3
    assert [row.values["diameter"] for row in rows] == [6, 6, 8, 8, 8, 10, 10, 10, 12, 12]


def test_what_is_left_is_the_relief_along_the_axis_less_the_slope_of_the_feed() -> None:
    rows = run(SHEET, {**TOOL, "feed": 0.3}).rows
    shoulders = [row.values for row in rows if "relief_left" in row.values]
    assert shoulders
    for values in shoulders:
        along_the_axis = values["relief_left"] + values["feed_slope"]
        # Along the axis the fall is that square to the cone over the sine of half its angle.
        assert math.tan(along_the_axis) * math.sin(values["included_angle"] / 2) == pytest.approx(
            math.tan(values["shoulder_relief_angle"])
        )


def test_a_line_of_a_step_has_the_relief_of_the_radial_throw_on_its_circle() -> None:
    # By hand: the cam of 3 mm a turn falls 3 / (2 pi) for each radian, over a radius of 4 mm. Derived.
    row = run(SHEET, TOOL).rows[3]
    assert math.tan(row.values["relief_angle"]) == pytest.approx(3 / (2 * math.pi) / 4, rel=1e-12)


def test_a_line_of_a_shoulder_has_the_relief_square_to_its_cone() -> None:
    # By hand: at 45 degrees to the axis both cams count by the root of a half. Derived.
    row = run(SHEET, TOOL).rows[2]
    expected = (3 + 1) * math.sqrt(0.5) / (2 * math.pi) / 4
    assert math.tan(row.values["shoulder_relief_angle"]) == pytest.approx(expected, rel=1e-12)


def test_the_largest_step_is_named_as_the_weakest_and_the_last_shoulder_with_it() -> None:
    result = run(SHEET, TOOL)
    assert amount(result.checks[0], "largest") == 12.0
    assert amount(result.checks[1], "number") == 3
    assert amount(result.checks[1], "place") == 12.0
    assert result.outputs["shoulder_relief_angle"] == min(
        row.values["shoulder_relief_angle"] for row in result.rows if "shoulder_relief_angle" in row.values
    )


def test_a_square_shoulder_is_not_relieved_by_a_radial_throw_and_is_named() -> None:
    result = run(SHEET, {**TOOL, "included_angle": (math.pi / 2, math.pi, math.pi / 2), "axial_throw": 0.0})
    (check,) = complaints(result)
    assert check.state == "stop"
    assert amount(check, "number") == 2


@given(
    STEPS,
    st.floats(-3, 3),
    st.floats(-3, 3),
    st.floats(0, 1),
    st.lists(st.floats(0.3, math.pi), min_size=5, max_size=5),
)
def test_a_stop_is_fixed_by_doing_what_all_the_stops_say(
    steps: tuple[float, ...], radial: float, axial: float, feed: float, angles: list[float]
) -> None:
    values: dict[str, Given] = {
        "diameter": steps,
        "included_angle": tuple(angles[: len(steps) - 1]),
        "radial_throw": radial,
        "axial_throw": axial,
        "feed": feed,
    }
    for check in complaints(run(SHEET, values)):
        ways = (
            [dict(check.cure)] if isinstance(check.cure, Together) else [{key: to} for key, to in check.cure]
        )
        for one in ways:
            beyond = {
                key: to + (-1e-6 if key == "feed" else 1e-6)
                for key, to in one.items()
                if isinstance(to, float)
            }
            again = complaints(run(SHEET, {**values, **beyond}))
            assert known_by(check) not in [known_by(other) for other in again]


@given(STEPS, st.floats(0.5, 5), st.floats(0, 3), st.floats(0.01, 1))
def test_a_feed_too_fast_is_fixed_by_the_slower_feed(
    steps: tuple[float, ...], radial: float, axial: float, more: float
) -> None:
    values: dict[str, Given] = {
        "diameter": steps,
        "included_angle": 1.6,
        "radial_throw": radial,
        "axial_throw": axial,
    }
    limit = run(SHEET, values).outputs["largest_feed"]
    (check,) = complaints(run(SHEET, {**values, "feed": limit * (1 + more)}))
    assert check.state == "stop"
    assert amount(check, "limit") == pytest.approx(limit, rel=1e-12)
    assert complaints(run(SHEET, {**values, "feed": amount(check, "limit") * (1 - 1e-9)})) == []


@given(STEPS, st.floats(0.1, 2), st.floats(0.05, 0.5), st.sampled_from(["turn", "tooth"]))
def test_a_step_or_shoulder_short_of_the_relief_wanted_is_fixed_by_the_cam_that_is_named(
    steps: tuple[float, ...], radial: float, wanted: float, per: str
) -> None:
    values: dict[str, Given] = {
        "diameter": steps,
        "included_angle": 2.0,
        "radial_throw": radial,
        "throw_per": per,
        "flutes": 3.0,
        "least_relief_angle": wanted,
        "shoulder_relief_angle": wanted,
    }
    fixed = dict(values)
    for check in complaints(run(SHEET, values)):
        fixed |= {key: to + 1e-9 for key, to in check.cure if isinstance(to, float)}
    result = run(SHEET, fixed)
    assert complaints(result) == []
    assert result.outputs["relief_angle"] >= wanted - 1e-9
    assert result.outputs["shoulder_relief_angle"] >= wanted - 1e-9


def test_on_a_shoulder_that_is_nearly_a_cylinder_both_cams_are_advised_and_do_it() -> None:
    values: dict[str, Given] = {
        "diameter": (400.0, 400.5),
        "included_angle": 1e-4,
        "radial_throw": 1.0,
        "shoulder_relief_angle": math.radians(40),
    }
    (check,) = complaints(run(SHEET, values))
    assert "both throws" in check.sentence.template
    cam = amount(check, "cam")
    assert cam <= 2000
    assert complaints(run(SHEET, {**values, "radial_throw": cam, "axial_throw": cam})) == []


@given(STEPS, st.floats(0.1, 5), st.floats(0.1, 5))
def test_a_list_from_the_shank_down_gives_the_same_tool(
    steps: tuple[float, ...], radial: float, axial: float
) -> None:
    values: dict[str, Given] = {
        "included_angle": 1.6,
        "radial_throw": radial,
        "axial_throw": axial,
        "feed": 0.1,
    }
    assert (
        run(SHEET, {**values, "diameter": steps}).outputs
        == run(SHEET, {**values, "diameter": steps[::-1]}).outputs
    )


def test_a_tool_of_one_step_has_no_shoulder_and_says_so() -> None:
    result = run(SHEET, {**TOOL, "diameter": 8.0, "feed": 0.2})
    assert set(result.outputs) == {"relief_angle"}
    assert "one step only" in str(result.checks[-1].sentence)


def told_at_once(**given: Given) -> list[tuple[str, str]]:
    with pytest.raises(Refusal) as refused:
        run(SHEET, given)
    return [(one.key, str(one.sentence)) for one in refused.value.problems if not one.missing]


def test_angles_that_are_not_one_for_each_shoulder_are_told_before_there_is_a_throw() -> None:
    right = math.radians(90)
    assert told_at_once(diameter=(6.0, 8.0, 10.0), included_angle=(right,) * 3) == [
        (
            "included_angle",
            "There are 3 included angles for 2 shoulders; give one for all, or one for each.",
        )
    ]
    assert told_at_once(diameter=(6.0, 8.0), included_angle=(right,) * 2) == [
        ("included_angle", "There are 2 included angles for 1 shoulder; give one.")
    ]
    assert told_at_once(diameter=(6.0, 8.0, 10.0), included_angle=(right,) * 2) == []
    assert told_at_once(diameter=(6.0, 8.0, 10.0), included_angle=right) == []


def test_steps_that_do_not_go_one_way_are_told_before_anything_else_is_given() -> None:
    assert [key for key, _ in told_at_once(diameter=(6.0, 10.0, 8.0))] == ["diameter"]
    assert [key for key, _ in told_at_once(diameter=(6.0, 6.0))] == ["diameter"]
    assert told_at_once(diameter=(10.0, 8.0, 6.0)) == []
    assert told_at_once(diameter=6.0) == []


def test_the_weakest_shoulder_is_no_good_news_where_it_falls_short_of_what_is_wanted() -> None:
    def states(wanted: float) -> dict[str, str]:
        found = run(SHEET, {**TOOL, "shoulder_relief_angle": math.radians(wanted)}).checks
        return {one.sentence.template.partition("}")[2][:20]: one.state for one in found}

    # The throws give the last shoulder (3 + 1) sqrt(1/2) / (2 pi) / 6 = 0.075, or 4.29 degrees; derived.
    assert states(4)[" is the weakest: {re"] == "pass"
    assert states(5)[" is the weakest: {re"] == "note"
    assert "pass" not in states(5).values()


# The limits of a shoulder. By hand: a throw of S square to the cone for each radian gives tan(relief) = S / r, so that
# from 10 to 6 mm the tangent grows as 10 / 6, and 8 to 12 degrees bear no more than tan 12 / tan 8 = 1.512. Derived.
LIMITS: dict[str, Given] = {
    "included_angle": math.radians(90),
    "radial_throw": 2.5,
    "shoulder_relief_angle": math.radians(10),
    "relief_lower_limit": math.radians(8),
    "relief_upper_limit": math.radians(12),
}


def limits_of(*diameters: float, axial: float = 0.0) -> list[Check]:
    return complaints(run(SHEET, {**LIMITS, "diameter": diameters, "axial_throw": axial}))


def test_each_end_of_each_shoulder_is_held_against_the_limits() -> None:
    # By hand: (4 + 6) mm at 45 degrees are 7.071 mm a turn, 1.1254 mm a radian.
    found = complaints(
        run(SHEET, {**LIMITS, "radial_throw": 4.0, "axial_throw": 6.0, "diameter": (6.0, 10.0, 14.0)})
    )
    (check,) = (one for one in found if "found1inner" in one.sentence.parts)
    ends = {name: amount(check, name) for name in check.sentence.parts if name.startswith("found")}
    assert ends == pytest.approx(
        {
            "found1inner": math.atan(1.12540 / 3),
            "found1outer": math.atan(1.12540 / 5),
            "found2inner": math.atan(1.12540 / 5),
        },
        rel=1e-4,
    )


def test_no_throw_is_advised_that_gives_another_shoulder_too_much() -> None:
    for check in limits_of(6.0, 10.0, 14.0):
        assert check.cure == ()
    (check,) = limits_of(6.0, 8.0, 10.0)
    # From 8 to 6, and from 10 to 8, the tangent grows less than 1.512 times; from 10 to 6 more.
    assert "each shoulder with a throw of its own" in check.sentence.template
    (check,) = limits_of(6.0, 10.0)
    assert "no throw keeps both limits" in check.sentence.template


def test_a_throw_that_is_advised_keeps_both_ends_of_all_shoulders_within() -> None:
    (check,) = limits_of(6.0, 7.0, 8.0)
    (((key, throw)),) = check.cure
    assert key == "axial_throw"
    assert isinstance(throw, float)
    square = (2.5 + throw) * math.sqrt(0.5) / (2 * math.pi)
    for diameter in (6.0, 7.0, 8.0):
        assert 8.0 <= math.degrees(math.atan(square / (diameter / 2))) <= 12.0


def test_what_reaches_the_wanted_relief_within_the_limits_is_told_alone() -> None:
    (check,) = limits_of(6.0, 7.0)
    # At 7 mm ten degrees want 3.5 tan 10 = 0.6171 mm a radian, 5.484 mm of both throws a turn.
    assert check.cure[0][1] == pytest.approx(5.4837 - 2.5, abs=1e-3)


def test_without_limits_nothing_is_said_of_them() -> None:
    found = complaints(run(SHEET, {**TOOL, "shoulder_relief_angle": math.radians(2)}))
    assert not any("high" in one.sentence.parts for one in found)


def test_after_the_throw_that_keeps_the_limits_what_is_short_of_the_wanted_relief_passes() -> None:
    # By hand: 1.5 times from 8 to 12 mm, so that ten degrees at both ends are had with no throw.
    limits = {**LIMITS, "diameter": (8.0, 12.0), "radial_throw": 2.0}
    (check,) = complaints(run(SHEET, limits))
    (((key, throw)),) = check.cure
    assert isinstance(throw, float)
    followed = run(SHEET, {**limits, key: throw})
    assert not complaints(followed)
    (told,) = (one for one in followed.checks if "high" in one.sentence.parts)
    assert told.state == "pass"
    assert amount(told, "relief") < math.radians(10)


def test_short_of_the_wanted_relief_without_both_limits_stays_a_watch() -> None:
    found = {**LIMITS, "diameter": (8.0, 12.0), "radial_throw": 2.0, "axial_throw": 5.5}
    found.pop("relief_upper_limit")
    assert complaints(run(SHEET, found))


ONE_SHOULDER: dict[str, Given] = {
    "diameter": (9.0, 12.0),
    "included_angle": (math.radians(90),),
    "throw_per": "tooth",
    "flutes": 2.0,
    "shoulder_relief_angle": math.radians(8),
    "relief_lower_limit": math.radians(6),
    "relief_upper_limit": math.radians(10),
}
"""Two steps with one shoulder between them and the relief that it may have."""


def test_a_shoulder_within_its_limits_passes_though_the_usual_relief_is_missed() -> None:
    # By hand: 3 mm from tooth to tooth at 45 degrees is 0.6752 mm a radian: 8.53 degrees at 9 mm, 6.42 at 12.
    found = run(SHEET, ONE_SHOULDER | {"radial_throw": 3.0})
    assert {check.state for check in found.checks} <= {"pass", "note"}
    (within,) = (check for check in found.checks if "that will do" in check.sentence.template)
    assert amount(within, "relief") == pytest.approx(math.atan(3 * math.sqrt(0.5) / math.pi / 6))


def test_a_shoulder_under_its_least_limit_is_on_watch() -> None:
    found = run(SHEET, ONE_SHOULDER | {"radial_throw": 2.0})
    assert "watch" in {check.state for check in found.checks}
