"""The circular-land calculation: the width forward and back, what proves it, and what is ground off."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

SHEET = calculation("circular-land")
LAND: dict[str, Given] = {"diameter": 10.0, "margin_width": 0.2, "relief_angle": math.radians(6)}


def states(values: dict[str, Given]) -> list[str]:
    return [check.state for check in run(SHEET, values).checks]


@given(st.floats(3, 40), st.floats(0.05, 1.5), st.floats(0.09, 0.4), st.sampled_from(["flat", "eccentric"]))
def test_a_land_is_found_again_from_the_turn_at_which_its_end_shows(
    diameter: float, width: float, relief: float, form: str
) -> None:
    tool: dict[str, Given] = {
        "diameter": diameter, "relief_angle": relief, "relief_form": form, "indicator_division": 0.002,
    }  # fmt: skip
    turn = run(SHEET, {**tool, "margin_width": width}).outputs["first_division_angle"]
    found = run(SHEET, {**tool, "first_division_angle": turn}).outputs["margin_width"]
    assert found == pytest.approx(width, rel=1e-7)


def test_the_indicator_shows_the_land_wider_by_a_division_over_the_slope() -> None:
    # Derived, by hand: 0.002 / tan 6 = 0.01903; the circle bends the flat away by 0.0000036 on that way.
    read = run(SHEET, {**LAND, "indicator_division": 0.002}).outputs["land_as_read"]
    assert read == pytest.approx(0.2 + 0.002 / math.tan(math.radians(6)), abs=5e-4)
    assert read > 0.219


def test_a_coarse_indicator_proves_no_narrow_land_and_a_fine_one_does() -> None:
    narrow = {**LAND, "margin_width": 0.05}
    assert states(narrow) == ["watch"]
    assert states({**narrow, "indicator_division": 0.002}) == ["pass"]


def test_a_land_wider_than_a_twentieth_of_the_diameter_is_a_watch() -> None:
    assert "watch" in states({**LAND, "margin_width": 0.51})
    assert states({**LAND, "margin_width": 0.49}) == ["pass"]


def test_no_relief_is_a_stop_and_a_land_of_no_width_a_note() -> None:
    assert states({**LAND, "relief_angle": 0.0}) == ["stop"]
    assert states({**LAND, "margin_width": 0.0}) == ["note"]


def test_a_land_narrower_than_wanted_cannot_be_ground_wider() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**LAND, "margin_now": 0.1})
    assert refused.value.problems[0].key == "margin_now"
