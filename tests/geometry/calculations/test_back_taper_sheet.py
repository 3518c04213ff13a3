"""The back-taper calculation: one taper stated in five ways, and what to do about none or the wrong one."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Check, Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount
from library.units.show import say
from library.units.system import Display

SHEET = calculation("back-taper")


def amount(check: Check, name: str) -> float:
    part = check.sentence.parts[name]
    assert isinstance(part, Amount)
    return part.value


@given(st.floats(1e-5, 0.1), st.floats(5, 60))
def test_one_taper_stated_in_five_ways_is_one_taper(taper: float, diameter: float) -> None:
    long = diameter
    ways: list[dict[str, Given]] = [
        {"taper_ratio": taper},
        {"back_taper": 100 * taper},
        {"back_diameter": diameter - taper * long, "taper_length": long},
        {"taper_angle": 2 * math.atan(taper / 2)},
        {"swivel_angle": math.atan(taper / 2)},
    ]
    for way in ways:
        found = run(SHEET, {"diameter": diameter, **way, "distance_from_front": 0.5 * diameter})
        assert found.outputs["taper_ratio"] == pytest.approx(taper, rel=1e-7)
        assert found.outputs["taper_angle"] == 2 * found.outputs["swivel_angle"]
        # By hand: half the diameter behind the front half of the taper of a whole diameter is lost.
        assert found.outputs["diameter_there"] == pytest.approx(diameter * (1 - taper / 2), rel=1e-9)
        assert found.outputs["indicator_fall"] == pytest.approx(diameter * taper / 4, rel=1e-7)


def test_each_distance_has_its_line_from_the_front_on() -> None:
    result = run(SHEET, {"diameter": 10.0, "taper_ratio": 0.001, "distance_from_front": (50.0, 0.0, 20.0)})
    assert [row.values["distance_from_front"] for row in result.rows] == [0.0, 20.0, 50.0]
    assert [row.values["diameter_there"] for row in result.rows] == pytest.approx(
        [10.0, 9.98, 9.95], rel=1e-12
    )


def test_a_small_swivel_is_set_by_the_indicator() -> None:
    # By hand: 0.05 mm off the diameter in 100 mm is 0.025 mm on the indicator. Derived.
    loses, check = run(SHEET, {"diameter": 10.0, "back_taper": 0.05}).checks
    assert (loses.state, check.state) == ("pass", "note")
    assert "less than its scale shows" in str(check.sentence)
    assert "deg" not in str(check.sentence)
    assert amount(check, "fall") == pytest.approx(0.025, rel=1e-12)
    _, steep = run(SHEET, {"diameter": 10.0, "taper_ratio": 1 / 16}).checks
    assert "less than its scale shows" not in str(steep.sentence)


@pytest.mark.parametrize(("back", "state"), [(10.01, "stop"), (10.0, "watch")])
def test_a_back_as_large_as_the_front_is_fixed_by_the_diameter_that_is_named(back: float, state: str) -> None:
    values: dict[str, Given] = {"diameter": 10.0, "back_diameter": back, "taper_length": 50.0}
    (check,) = run(SHEET, values).checks
    assert check.state == state
    # The front is said, and the back is to be below it: by the last digit that is shown.
    fixed, _ = run(SHEET, {**values, "back_diameter": amount(check, "front") - 1e-3}).checks
    assert fixed.state == "pass"
    assert [key for key, _ in check.cure] == ["back_diameter"]


def test_a_swivel_the_wrong_way_is_a_stop() -> None:
    (check,) = run(SHEET, {"diameter": 10.0, "swivel_angle": -0.01}).checks
    assert check.state == "stop"


PIN: dict[str, Given] = {"diameter": 6.0, "taper_direction": "larger"}
"""A taper pin reamer of 6 mm. By hand: 1 in 50 gains 60 / 50 = 1.2 mm in 60 mm, 7.2 mm there, half of it on one side."""


@pytest.mark.parametrize(
    "stated",
    [
        {"taper_ratio": 0.02, "taper_length": 60.0},
        {"back_diameter": 7.2, "taper_length": 60.0},
        {"taper_angle": 2 * math.atan(0.01), "distance_from_front": 60.0},
        {"swivel_angle": math.atan(0.01), "distance_from_front": 60.0},
    ],
)
def test_a_tool_that_cuts_a_taper_grows_toward_its_shank(stated: dict[str, Given]) -> None:
    found = run(SHEET, {**PIN, **stated, "wanted_taper": 0.02})
    assert found.outputs["diameter_there"] == pytest.approx(7.2, rel=1e-9)
    assert found.outputs["indicator_rise"] == pytest.approx(0.6, rel=1e-9)
    assert "indicator_fall" not in found.outputs
    # By hand: the side goes out 0.6 in 60 mm, which is 0.573 degrees.
    assert math.degrees(found.outputs["swivel_angle"]) == pytest.approx(0.573, abs=5e-4)
    grows, setting = found.checks
    assert (grows.state, setting.state) == ("pass", "note")
    assert amount(grows, "by") == pytest.approx(1.2, rel=1e-9)
    assert "rises" in str(setting.sentence)


@pytest.mark.parametrize(
    ("back", "state"),
    [(7.2, "pass"), (7.21, "pass"), (7.22, "watch"), (7.15, "watch"), (6.0, "watch"), (5.9, "stop")],
)
def test_a_measured_taper_is_held_against_the_one_that_is_wanted(back: float, state: str) -> None:
    found = run(SHEET, {**PIN, "back_diameter": back, "taper_length": 60.0, "wanted_taper": 0.02})
    assert found.checks[0].state == state
    # It is ground to what is wanted, so that the table is set for that and not for what came in.
    assert found.outputs["swivel_angle"] == pytest.approx(math.atan(0.01), rel=1e-12)
    assert found.outputs["diameter_there"] == pytest.approx(7.2, rel=1e-12)


def test_without_a_wanted_taper_nothing_judges_one_and_without_a_length_the_wanted_one_is_set() -> None:
    found = run(SHEET, {**PIN, "back_diameter": 7.2, "taper_length": 60.0})
    assert {one.state for one in found.checks} == {"note"}
    assert "'Taper wanted'" in str(found.checks[0].sentence)
    waiting = run(SHEET, {**PIN, "back_diameter": 7.2, "wanted_taper": 0.02})
    assert waiting.outputs["swivel_angle"] == pytest.approx(math.atan(0.01), rel=1e-12)
    assert {one.state for one in waiting.checks} == {"note"}


@pytest.mark.parametrize("stated", [{"taper_ratio": 0.02}, {"back_diameter": 7.2, "taper_length": 60.0}])
def test_so_steep_a_taper_is_passed_as_no_back_taper_and_the_line_of_its_way_is_named(
    stated: dict[str, Given],
) -> None:
    check = run(SHEET, {"diameter": 6.0, **stated}).checks[0]
    assert check.state in {"watch", "stop"}
    assert "larger in the line 'Toward the back'" in str(check.sentence)


def test_a_back_diameter_waits_for_its_distance() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"diameter": 10.0, "back_diameter": 9.9})
    assert [(problem.key, problem.missing) for problem in refused.value.problems] == [("taper_length", True)]


def test_two_ways_at_once_are_refused() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {"diameter": 10.0, "taper_ratio": 0.001, "back_taper": 0.1})
    assert "only one" in str(refused.value)


def test_a_back_diameter_that_only_tells_how_much_smaller_it_is_is_asked_about() -> None:
    # 0.15 of 16 mm would be a swivel of 7.5 degrees.
    def doubts(back: float) -> list[str]:
        found = run(
            calculation("back-taper"), {"diameter": 16.0, "back_diameter": back, "taper_length": 60.0}
        )
        return [str(one.sentence) for one in found.checks if one.state == "watch"]

    assert doubts(15.97) == []
    (told,) = doubts(0.15)
    assert "or how much smaller it is there?" in told
    assert "within 3 percent of it would be believed" in told


def test_without_a_length_a_taper_is_told_over_a_round_one_of_the_unit_that_is_worked_in() -> None:
    # 1/4 in in a foot, and half of it on one side; over 100 mm a forty-eighth of it, 2.083 mm.
    stated: dict[str, Given] = {"diameter": 10.0, "taper_direction": "larger", "taper_ratio": 1 / 48}
    told = [
        [say(one.sentence, show) for one in run(SHEET, stated).checks]
        for show in (Display("in"), Display("mm"))
    ]
    assert "it gains 0.2500 in on the diameter over a foot" in told[0][0]
    assert told[0][1].endswith("rises 0.1250 in over a foot.")
    assert "it gains 2.083 mm on the diameter over 100.000 mm" in told[1][0]
