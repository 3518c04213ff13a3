"""The calculation that reads the relief off an indicator: which form it tells, and when it will not tell."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.sentences import Amount
from geometry.tooth.heel_advice import READABLE

AsShown = Callable[[Amount | str], float]


def reading(**values: Given) -> Result:
    return run(calculation("relief-from-reading"), values)


def relief_drop(**values: Given) -> Result:
    return run(calculation("relief-drop"), values)


def said(result: Result) -> str:
    return " ".join(str(check.sentence) for check in result.checks)


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks]


def on_the_indicator(form: str, turned: float, relief: float, diameter: float) -> float:
    radius = diameter / 2
    if form == "eccentric":
        return radius * math.tan(relief) * turned
    return radius - radius * math.cos(relief) / math.cos(turned - relief)


diameters = st.floats(4.0, 60.0)
reliefs = st.floats(math.radians(3), math.radians(25))
lands = st.floats(0.1, 0.9)
forms = st.sampled_from(("eccentric", "flat"))
measures = st.sampled_from(("arc", "chord"))


def wide(turned: float, diameter: float, measure: str) -> float:
    return turned * diameter / 2 if measure == "arc" else diameter * math.sin(turned / 2)


@given(diameters, reliefs, lands, forms, measures)
def test_it_is_the_way_back_from_the_drop_of_the_heel(
    diameter: float, relief: float, turned: float, form: str, measure: str
) -> None:
    width = wide(turned, diameter, measure)
    tool: dict[str, Given] = {"diameter": diameter, "land_width": width, "land_measured_as": measure}
    there = relief_drop(**tool, relief_angle=relief, relief_form=form).outputs["heel_drop"]
    back = reading(**tool, drop=there).outputs
    assert back[f"{form}_relief_angle"] == pytest.approx(relief, rel=1e-8)


@given(diameters, reliefs, lands, st.floats(0.2, 0.8), forms)
def test_two_readings_of_a_known_surface_tell_its_form_or_say_that_they_cannot(
    diameter: float, relief: float, turned: float, share: float, form: str
) -> None:
    places = [turned, share * turned]
    drops = [on_the_indicator(form, place, relief, diameter) for place in places]
    assume(0.0 < drops[0] < 0.8 * diameter / 2)
    result = reading(
        diameter=diameter,
        drop=drops[0],
        land_width=places[0] * diameter / 2,
        second_drop=drops[1],
        second_land_width=places[1] * diameter / 2,
    )
    assert result.outputs[f"{form}_misfit"] == pytest.approx(0.0, abs=1e-9 * diameter)
    other = "flat" if form == "eccentric" else "eccentric"
    if "relief_angle" in result.outputs:
        assert result.outputs["relief_angle"] == pytest.approx(relief, rel=1e-8)
        assert f"it is {form}" in said(result)
        assert f"it is {other}," not in said(result)
    else:
        assert "does not tell which it is" in said(result) or "less than the" in said(result)


@given(diameters, st.floats(math.radians(5), math.radians(20)), st.floats(0.5, 0.9), forms)
def test_a_second_reading_half_way_tells_the_form_on_a_wide_land(
    diameter: float, relief: float, turned: float, form: str
) -> None:
    drops = [on_the_indicator(form, place, relief, diameter) for place in (turned, turned / 2)]
    assume(0.02 < drops[0] < 0.8 * diameter / 2)
    result = reading(
        diameter=diameter,
        drop=drops[0],
        land_width=turned * diameter / 2,
        second_drop=drops[1],
        second_land_width=turned * diameter / 4,
    )
    assert result.outputs["relief_angle"] == pytest.approx(relief, rel=1e-8)
    assert "stop" not in states(result)


def test_the_second_reading_it_asks_for_does_tell(as_shown: AsShown) -> None:
    @given(diameters, reliefs, lands, forms, measures)
    def whatever_the_indicator_shows(
        diameter: float, relief: float, turned: float, form: str, measure: str
    ) -> None:
        tool: dict[str, Given] = {
            "diameter": diameter,
            "drop": on_the_indicator(form, turned, relief, diameter),
            "land_width": wide(turned, diameter, measure),
            "land_measured_as": measure,
        }
        asked = [check for check in reading(**tool).checks if "To tell which" in str(check.sentence)]
        assume(asked)
        parts = asked[0].sentence.parts
        place = as_shown(parts["half"])
        there = place * 2 / diameter if measure == "arc" else 2 * math.asin(place / diameter)
        shown = on_the_indicator(form, there, relief, diameter)
        again = reading(**tool, second_drop=shown, second_land_width=place)
        assert again.outputs["relief_angle"] == pytest.approx(relief, rel=1e-8)
        assert as_shown(parts["even" if form == "eccentric" else "flat"]) == pytest.approx(shown, abs=2e-3)

    whatever_the_indicator_shows()


def test_the_numbers_of_one_reading() -> None:
    # Derived: atan(0.28108 / 2), and the slope of the line through the edge and the place read.
    result = reading(diameter=12.0, drop=0.28108, land_width=2.0)
    assert math.degrees(result.outputs["eccentric_relief_angle"]) == pytest.approx(8.0, abs=2e-4)
    across, up = (6 - 0.28108) * math.sin(1 / 3), (6 - 0.28108) * math.cos(1 / 3)
    assert result.outputs["flat_relief_angle"] == pytest.approx(math.atan2(6 - up, across), rel=1e-12)
    assert "relief_angle" not in result.outputs
    assert states(result) == ["note", "note"]


def test_a_place_proud_of_the_circle_is_a_flat_that_rubs() -> None:
    result = reading(diameter=12.0, drop=-0.05485, land_width=2.0)
    assert math.degrees(result.outputs["relief_angle"]) == pytest.approx(8.0, abs=1e-3)
    assert "eccentric_relief_angle" not in result.outputs
    assert states(result) == ["stop", "note"]
    assert "stands 0.05485 mm proud" in said(result)
    assert "cannot be eccentric" in said(result)


def test_far_round_the_tool_it_can_only_be_eccentric() -> None:
    result = reading(diameter=12.0, drop=0.4, land_width=20.0)
    assert result.outputs["relief_angle"] == pytest.approx(math.atan(0.4 / 20), rel=1e-12)
    assert "flat_relief_angle" not in result.outputs


@pytest.mark.parametrize("second", [0.17, 0.2])
def test_readings_that_neither_form_explains_are_not_forced_into_one(second: float) -> None:
    result = reading(diameter=12.0, drop=0.28108, land_width=2.0, second_drop=second, second_land_width=1.0)
    assert "relief_angle" not in result.outputs
    assert states(result) == ["watch"]
    assert said(result).startswith("Neither form fits well")
    assert abs(result.outputs["eccentric_misfit"]) > READABLE
    assert abs(result.outputs["flat_misfit"]) > READABLE


def test_a_second_reading_close_by_is_said_not_to_tell() -> None:
    result = reading(diameter=12.0, drop=0.28108, land_width=2.0, second_drop=0.279, second_land_width=1.99)
    assert "relief_angle" not in result.outputs
    assert result.checks[0].state == "watch"
    assert "does not tell which it is" in said(result)
    assert "read again at" in said(result)


def test_readings_in_the_other_order_are_refused_with_the_order_that_is_wanted() -> None:
    with pytest.raises(Refusal) as refused:
        reading(diameter=12.0, drop=0.142, land_width=1.0, second_drop=0.281, second_land_width=2.0)
    assert "Give the one at the heel first" in str(refused.value)


def test_a_form_that_is_named_is_taken_and_held_against_the_second_reading() -> None:
    tool: dict[str, Given] = {"diameter": 12.0, "drop": 0.28108, "land_width": 2.0}
    alone = reading(**tool, relief_form="flat")
    assert alone.outputs["relief_angle"] == alone.outputs["flat_relief_angle"]
    fits = reading(**tool, relief_form="eccentric", second_drop=0.14, second_land_width=1.0)
    assert states(fits) == ["pass"]
    misses = reading(**tool, relief_form="flat", second_drop=0.14, second_land_width=1.0)
    assert misses.outputs["relief_angle"] == misses.outputs["flat_relief_angle"]
    assert states(misses) == ["watch"]
    assert "fits an eccentric one of 8 deg" in said(misses)
    neither = reading(**tool, relief_form="flat", second_drop=0.18, second_land_width=1.0)
    assert "No other form fits it either" in said(neither)


@pytest.mark.parametrize("form", ["eccentric", "flat"])
def test_a_form_that_cannot_be_is_refused(form: str) -> None:
    tool: dict[str, Given] = {"diameter": 12.0, "drop": -0.05, "land_width": 2.0, "relief_form": form}
    if form == "flat":
        tool |= {"drop": 0.4, "land_width": 20.0}
    with pytest.raises(Refusal) as refused:
        reading(**tool)
    assert refused.value.problems[0].key == "relief_form"


@pytest.mark.parametrize(
    ("given_key", "asked"), [("second_drop", "second_land_width"), ("second_land_width", "second_drop")]
)
def test_half_a_second_reading_waits_for_the_other_half(given_key: str, asked: str) -> None:
    values: dict[str, Given] = {"diameter": 12.0, "drop": 0.2, "land_width": 2.0, given_key: 0.1}
    with pytest.raises(Refusal) as refused:
        reading(**values)
    (problem,) = refused.value.problems
    assert problem.key == asked
    assert problem.missing


def test_readings_at_one_place_or_at_the_edge_are_refused(as_shown: AsShown) -> None:
    tool: dict[str, Given] = {"diameter": 12.0, "drop": 0.28108, "land_width": 2.0}
    with pytest.raises(Refusal) as refused:
        reading(**tool, second_drop=0.28, second_land_width=2.0)
    (problem,) = refused.value.problems
    half = as_shown(problem.sentence.parts["half"])
    assert "relief_angle" in reading(**tool, second_drop=0.14, second_land_width=half).outputs
    for key in ("land_width", "second_land_width"):
        with pytest.raises(Refusal, match="At the edge itself"):
            reading(**{**tool, "second_drop": 0.1, "second_land_width": 1.0, key: 0.0})


def test_a_drop_too_small_to_read_and_a_relief_too_steep_to_be_are_pointed_out() -> None:
    small = reading(diameter=12.0, drop=0.004, land_width=2.0)
    assert small.checks[0].state == "watch"
    assert "little more than a guess" in said(small)
    steep = reading(diameter=12.0, drop=4.0, land_width=2.0)
    assert "more than any tool bears" in said(steep)


def test_a_narrow_land_makes_no_difference_that_an_indicator_can_show() -> None:
    result = reading(diameter=12.0, drop=0.04, land_width=0.5)
    assert "differ by less than" in said(result)
    assert states(result) == ["note", "note"]


@given(diameters, reliefs, lands)
def test_the_indicator_on_the_way_is_expected_for_both_forms(
    diameter: float, relief: float, turned: float
) -> None:
    drop = on_the_indicator("eccentric", turned, relief, diameter)
    assume(drop < 0.8 * diameter / 2)
    result = reading(diameter=diameter, drop=drop, land_width=turned * diameter / 2)
    last = result.stations[-1].readings
    assert last["eccentric_drop"] == pytest.approx(drop, rel=1e-12)
    assert last["flat_drop"] == pytest.approx(drop, rel=1e-9)
    middle = result.stations[2].readings
    assert middle["flat_drop"] > middle["eccentric_drop"]


def test_the_figure_shows_each_form_and_the_readings() -> None:
    result = reading(diameter=12.0, drop=0.28, land_width=2.0, second_drop=0.14, second_land_width=1.0)
    assert result.figure is not None
    assert [curve.name for curve in result.figure.curves] == ["eccentric", "flat", "as read"]
    assert result.figure.curves[-1].points == ((0.0, 0.0), (1 / 6, 0.14), (1 / 3, 0.28))
