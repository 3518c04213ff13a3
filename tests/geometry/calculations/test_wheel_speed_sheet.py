"""The wheel-speed calculation: a rating passed over is a stop, and the spindle speed it names fixes it."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Check, Given
from geometry.calculations import calculation
from geometry.evaluate import run
from geometry.quantities import quantity
from geometry.sentences import Amount
from library.units.show import say

SHEET = calculation("wheel-speed")
RPM = 2 * math.pi / 60


def only(values: dict[str, Given]) -> Check:
    (check,) = run(SHEET, values).checks
    return check


def highest(check: Check) -> float:
    part = check.sentence.parts["highest"]
    assert isinstance(part, Amount)
    return part.value


def test_a_wheel_of_150_at_3000_turns_runs_23_562_metres_a_second() -> None:
    # By hand: pi x 0.150 m x 50 turns a second. Derived.
    found = run(SHEET, {"wheel_diameter": 150.0, "rotational_speed": 3000 * RPM}).outputs
    assert found["surface_speed"] / 1000 == pytest.approx(math.pi * 0.150 * 50, rel=1e-12)


def test_a_wheel_without_a_rating_is_never_called_safe() -> None:
    assert only({"wheel_diameter": 150.0, "rotational_speed": 1.0}).state == "watch"


@given(st.floats(10, 400), st.floats(5_000, 60_000), st.floats(1.001, 3))
def test_over_its_rating_a_wheel_is_a_stop_and_the_speed_named_is_not(
    wheel: float, rated: float, part: float
) -> None:
    values: dict[str, Given] = {"wheel_diameter": wheel, "surface_speed": rated * part, "rated_speed": rated}
    check = only(values)
    assert check.state == "stop"
    slower = only(
        {"wheel_diameter": wheel, "rotational_speed": highest(check) * (1 - 1e-12), "rated_speed": rated}
    )
    assert slower.state == "pass"


@given(st.floats(10, 400), st.floats(5_000, 60_000), st.floats(0.01, 0.999))
def test_under_its_rating_a_wheel_passes(wheel: float, rated: float, part: float) -> None:
    assert (
        only({"wheel_diameter": wheel, "surface_speed": rated * part, "rated_speed": rated}).state == "pass"
    )


@given(st.floats(50, 400), st.floats(5_000, 60_000), st.floats(0.3, 3))
def test_of_two_ratings_the_lower_one_counts(wheel: float, rated: float, part: float) -> None:
    turns = 2 * rated / wheel * part
    found = run(
        SHEET,
        {
            "wheel_diameter": wheel,
            "surface_speed": 1000.0,
            "rated_speed": rated,
            "rated_rotational_speed": turns,
        },
    )
    lower = min(turns, 2 * rated / wheel)
    assert found.outputs["highest_rotational_speed"] == pytest.approx(lower, rel=1e-12)
    assert highest(found.checks[0]) == found.outputs["highest_rotational_speed"]


def test_the_highest_spindle_speed_is_never_rounded_up() -> None:
    check = only({"wheel_diameter": 150.0, "rotational_speed": 100.0, "rated_speed": 35_000.0})
    part = check.sentence.parts["highest"]
    assert isinstance(part, Amount)
    assert part.rounding == "down"


@given(st.floats(50, 400), st.floats(50, 600), st.floats(1000, 60_000), st.booleans())
def test_the_speed_said_is_the_speed_answered_and_the_cure_cures(
    wheel: float, turns: float, rated: float, by_rim: bool
) -> None:
    values: dict[str, Given] = {"wheel_diameter": wheel, "rated_speed": rated}
    values["surface_speed" if by_rim else "rotational_speed"] = turns * wheel / 2 if by_rim else turns
    found = run(SHEET, values)
    (check,) = found.checks
    now = check.sentence.parts["now"]
    assert isinstance(now, Amount)
    assert now.value == pytest.approx(found.outputs["surface_speed"], rel=1e-12)
    # An answer and a sentence that round one number differently would print two.
    assert now.rounding is quantity("surface_speed").rounding
    if check.state == "stop":
        cured = {key: value for key, value in {**values, **dict(check.cure)}.items() if value is not None}
        assert run(SHEET, cured).checks[0].state == "pass"


WORN: dict[str, Given] = {"wheel_diameter": 98.0, "wheel_new_diameter": 100.0, "rated_speed": 25_000.0}


def test_a_worn_wheel_is_turned_no_faster_than_it_was_when_new() -> None:
    # By hand: 25 m/s on 100 mm is 25 / (pi x 0.100) turns a second, 4774.65 in a minute; on 98 mm it would be 4872.09.
    found = run(SHEET, {**WORN, "rotational_speed": 4700 * RPM})
    assert found.outputs["highest_rotational_speed"] / RPM == pytest.approx(4774.65, abs=0.005)
    assert found.checks[0].state == "pass"
    said = say(found.checks[0].sentence)
    assert (
        "within its rating of 25.00 m/s. Do not turn it faster than 4774 rpm: 25.00 m/s at the 100.000 mm"
        in said
    )
    assert "a worn wheel is turned no faster" in said


def test_a_worn_wheel_over_the_turns_of_the_new_one_stops_though_its_rim_is_within_the_rating() -> None:
    # 4800 turns are 24.63 m/s on 98 mm, and 25.13 m/s on the 100 mm that it had.
    found = run(SHEET, {**WORN, "rotational_speed": 4800 * RPM})
    assert found.outputs["surface_speed"] < 25_000
    (check,) = found.checks
    assert check.state == "stop"
    assert "4800 rpm, 26 rpm over its rating of 4774 rpm" in say(check.sentence)
    cured = {key: value for key, value in {**WORN, **dict(check.cure)}.items() if value is not None}
    assert run(SHEET, cured).checks[0].state == "pass"


@pytest.mark.parametrize("new", [None, 60.0])
def test_where_the_diameter_when_new_is_not_known_the_turns_marked_are_told_to_bind(
    new: float | None,
) -> None:
    # A diameter when new below that of now cannot be one.
    values = {key: value for key, value in WORN.items() if key != "wheel_new_diameter"}
    values |= {"wheel_new_diameter": new} if new else {}
    within = say(only({**values, "rotational_speed": 4000 * RPM}).sentence)
    assert within.endswith("faster than 4872 rpm, nor faster than the turns marked on the wheel.")
    over = say(only({**values, "rotational_speed": 5000 * RPM}).sentence)
    assert "at 4872 rpm or less, and never faster than the turns marked on the wheel" in over


@pytest.mark.parametrize("known", [{"rated_rotational_speed": 9000 * RPM}, {"wheel_new_diameter": 98.0}])
def test_where_the_turns_marked_are_known_nothing_more_is_said_of_them(known: dict[str, Given]) -> None:
    values: dict[str, Given] = {
        "wheel_diameter": 98.0,
        "rated_speed": 25_000.0,
        "rotational_speed": 4000 * RPM,
    }
    assert say(only({**values, **known}).sentence).endswith("Do not turn it faster than 4872 rpm.")
