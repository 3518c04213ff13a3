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
