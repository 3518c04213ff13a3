"""The feed-clearance calculation: the weakest place, the largest feed, and advice that fixes."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from geometry.calculation import Check, Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount

SHEET = calculation("feed-clearance")
RUNS = st.sampled_from(["not-measured", "constant", "rising", "cam"])


def complaint(result: Result) -> Check | None:
    return next((check for check in result.checks if check.state in {"watch", "stop"}), None)


def test_the_check_values_stand_in_the_table() -> None:
    # Derived: 0.25 mm a turn on a drill of 6 mm, outside and at a quarter of the diameter across.
    tool: dict[str, Given] = {"diameter": 6.0, "relief_angle": math.radians(8), "feed": 0.25}
    result = run(SHEET, tool | {"lip_relief_runs": "constant", "inner_diameter": 1.5})
    outside, inside = result.rows[0], result.rows[-1]
    assert math.degrees(outside.values["feed_slope"]) == pytest.approx(0.7599, abs=5e-5)
    assert inside.values["diameter"] == 1.5
    assert math.degrees(inside.values["feed_slope"]) == pytest.approx(3.0368, abs=5e-5)
    assert math.degrees(result.outputs["relief_left"]) == pytest.approx(8 - 3.0368, abs=5e-5)
    assert result.outputs["weakest_diameter"] == 1.5


def test_without_a_feed_it_tells_which_feed_is_too_much() -> None:
    tool: dict[str, Given] = {"diameter": 6.0, "relief_angle": math.radians(8), "inner_diameter": 1.5}
    result = run(SHEET, tool | {"lip_relief_runs": "constant"})
    assert "relief_left" not in result.outputs
    assert complaint(result) is None
    # By hand: pi x 1.5 x tan 8 degrees.
    assert result.outputs["largest_feed"] == pytest.approx(
        math.pi * 1.5 * math.tan(math.radians(8)), rel=1e-12
    )


def test_rising_relief_asks_for_the_inner_one() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"diameter": 6.0, "relief_angle": 0.14, "lip_relief_runs": "rising"})
    assert [problem.key for problem in refused.value.problems] == ["inner_relief_angle"]


@given(
    RUNS,
    st.floats(2, 40),
    st.floats(0.02, 0.6),
    st.floats(0.02, 1.2),
    st.floats(0.05, 0.9),
    st.floats(0.5, 1.5),
)
def test_just_under_the_largest_feed_all_clears_and_just_over_it_the_weakest_place_drags(
    runs: str, outer: float, relief: float, inner_relief: float, share: float, part: float
) -> None:
    assume(abs(part - 1) > 1e-6)
    values: dict[str, Given] = {
        "diameter": outer,
        "relief_angle": relief,
        "inner_relief_angle": inner_relief,
        "lip_relief_runs": runs,
        "inner_diameter": share * outer,
    }
    largest = run(SHEET, values).outputs["largest_feed"]
    assume(largest * part <= 25)
    found = run(SHEET, {**values, "feed": largest * part})
    assert (found.outputs["relief_left"] > 0) is (part < 1)
    assert any(check.state == "stop" for check in found.checks) is (part > 1)
    known = [row.values["relief_left"] for row in found.rows if "relief_left" in row.values]
    assert found.outputs["relief_left"] <= min(known) + 1e-12


@example("not-measured", 2.0, 0.0078125, 0.0, 0.5, 1e-12)  # half a degree to raise to, and a hair
@given(RUNS, st.floats(0.5, 40), st.floats(0, 0.3), st.floats(0, 0.6), st.floats(0.02, 0.95), st.floats(0, 3))
def test_all_advice_fixes_what_it_stands_beside(
    runs: str, outer: float, relief: float, inner_relief: float, share: float, feed: float
) -> None:
    values: dict[str, Given] = {
        "diameter": outer,
        "relief_angle": relief,
        "inner_relief_angle": inner_relief,
        "lip_relief_runs": runs,
        "inner_diameter": share * outer,
        "feed": feed,
    }
    check = complaint(run(SHEET, values))
    assume(check is not None)
    assert check is not None
    told = {name: part.value for name, part in check.sentence.parts.items() if isinstance(part, Amount)}
    for change in changes(told):
        assert complaint(run(SHEET, {**values, **change})) is None


def changes(told: dict[str, float]) -> list[dict[str, Given]]:
    """The ways out that a sentence offers, each as the inputs to change."""
    up, down = 1 + 1e-9, 1 - 1e-9
    raised: dict[str, Given] = {
        key: told[key] * up for key in ("relief_angle", "inner_relief_angle") if key in told
    }
    if "steeper" in told:
        both: dict[str, Given] = dict.fromkeys(("relief_angle", "inner_relief_angle"), told["steeper"] * up)
        return [{**both, "feed": told["slower"] * down}]
    slower: dict[str, Given] = {"feed": told["slower"] * down} if "slower" in told else {}
    ways = [way for way in (raised, slower) if way]
    assert ways
    return ways


def test_no_relief_at_all_is_a_stop_with_or_without_a_feed() -> None:
    for feed in ({}, {"feed": 0.0}, {"feed": 0.2}):
        check = complaint(run(SHEET, {"diameter": 6.0, "relief_angle": 0.0, **feed}))
        assert check is not None
        assert check.state == "stop"


def test_relief_nearly_used_up_is_a_watch() -> None:
    tool: dict[str, Given] = {"diameter": 6.0, "relief_angle": math.radians(3.3), "feed": 0.25}
    check = complaint(run(SHEET, tool | {"lip_relief_runs": "constant", "inner_diameter": 1.5}))
    assert check is not None
    assert check.state == "watch"


def test_a_lip_that_begins_outside_the_drill_is_refused() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"diameter": 6.0, "relief_angle": 0.1, "inner_diameter": 6.0})
    assert refused.value.problems[0].key == "inner_diameter"


def test_a_web_that_was_measured_says_where_the_lip_begins() -> None:
    """By hand: a chisel edge at 125 degrees over a web of 1.6 mm is 1.6 / sin 55 = 1.9532 mm long."""
    tool: dict[str, Given] = {"diameter": 10.0, "relief_angle": math.radians(12), "web_thickness": 1.6}
    alone = run(SHEET, tool)
    assert alone.outputs["inner_diameter"] == 1.6
    assert "the web of {web}" in alone.checks[-1].sentence.template
    edge = run(SHEET, tool | {"chisel_edge_angle": math.radians(125)})
    assert edge.outputs["inner_diameter"] == pytest.approx(1.9532, abs=5e-5)
    assert run(SHEET, tool | {"inner_diameter": 2.5}).outputs["inner_diameter"] == 2.5
    with pytest.raises(Refusal) as refused:
        run(SHEET, tool | {"web_thickness": 10.0})
    assert refused.value.problems[0].key == "web_thickness"


def test_a_lip_measured_at_its_corner_only_is_judged_there_and_nowhere_else() -> None:
    """By hand: 0.25 mm a turn on 18.85 mm climbs 0.7599 degrees; at 0.9 mm across it climbs 5.0525."""
    result = run(SHEET, {"diameter": 6.0, "relief_angle": math.radians(12), "feed": 0.25})
    assert math.degrees(result.outputs["relief_left"]) == pytest.approx(12 - 0.7599, abs=5e-5)
    assert result.outputs["weakest_diameter"] == 6.0
    assert result.outputs["inner_diameter"] == pytest.approx(0.9)
    assert [check.state for check in result.checks] == ["pass", "note", "note"]
    needed = result.checks[1].sentence.parts["needed"]
    assert isinstance(needed, Amount)
    assert math.degrees(needed.value) == pytest.approx(math.degrees(math.atan(0.25 / (math.pi * 0.9))) + 0.5)
    assert "relief_left" not in result.rows[-1].values


def test_a_countersinks_relief_is_turned_along_the_axis_before_the_feed_takes_of_it() -> None:
    """By hand: tan 8 degrees over sin 41 is 0.21422, which is 12.0911 degrees along the axis."""
    cone: dict[str, Given] = {"surface": "cone", "included_angle": math.radians(82)}
    found = run(SHEET, {**cone, "diameter": 25.4, "relief_angle": math.radians(8), "feed": 0.25})
    slope = math.degrees(math.atan(0.25 / (math.pi * 25.4)))
    assert math.degrees(found.outputs["relief_left"]) == pytest.approx(12.0911 - slope, abs=5e-4)


@pytest.mark.parametrize(
    ("surface", "edge"), [("shoulder", "included_angle"), ("cone", "included_angle"), ("end", "")]
)
def test_only_a_lip_is_said_to_begin_at_a_web(surface: str, edge: str) -> None:
    known: dict[str, Given] = {"surface": surface, "diameter": 10.0, "relief_angle": math.radians(10)}
    found = run(SHEET, {**known, **({edge: math.radians(90)} if edge else {})})
    (said,) = [str(one.sentence) for one in found.checks if "No inner diameter" in str(one.sentence)]
    assert f"the {surface} is taken to begin at 1.5 mm across" in said
    assert "the step or the pilot before it" in said
    assert "web" not in said
    assert "chisel" not in said
    lip = run(SHEET, {"surface": "lip", "diameter": 10.0, "relief_angle": math.radians(10)})
    assert any("the lip is taken to begin" in str(one.sentence) for one in lip.checks)
