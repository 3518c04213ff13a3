"""The flank-relief calculation: con-eccentric and eccentric lands, and the three ways in which a relief is stated."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run

SHEET = calculation("flank-relief")
LAND: dict[str, Given] = {"diameter": 12.0, "land_width": 3.2, "margin_width": 1.0}


def test_a_con_eccentric_land_falls_only_behind_its_margin() -> None:
    # Derived, by hand: (3.2 - 1.0) tan 2 is the fall at the heel, and half of it comes square to a 60 degree flank.
    found = run(SHEET, {**LAND, "relief_angle": math.radians(2)})
    assert found.outputs["crest_drop"] == pytest.approx(2.2 * math.tan(math.radians(2)))
    assert found.outputs["flank_gap"] == pytest.approx(1.1 * math.tan(math.radians(2)))
    drops = [one.readings["drop"] for one in found.stations]
    assert drops[:2] == [0.0, 0.0]
    assert drops[2] == pytest.approx(0.6 * math.tan(math.radians(2)))


@pytest.mark.parametrize("pitch", [{}, {"pitch": 1.75}, {"pitch": 3.0, "starts": 2.0}])
@pytest.mark.parametrize("stated", ["flank_relief_angle", "crest_drop"])
def test_the_relief_is_the_same_however_it_is_stated(stated: str, pitch: dict[str, Given]) -> None:
    tool = {**LAND, **pitch}
    first = run(SHEET, {**tool, "relief_angle": math.radians(3)}).outputs
    again = run(SHEET, {**tool, stated: first[stated]}).outputs
    assert again == pytest.approx(first)


def test_on_the_pitch_diameter_the_same_fall_is_steeper() -> None:
    # Derived, by hand: d2 = 12 - 0.649519 x 1.75 = 10.8633; the lead climbs 1.75 in pi d2 there, and takes a little off.
    radial = math.tan(math.radians(2)) * 12 / 10.8633
    climb = math.atan(1.75 / (math.pi * 10.8633))
    expected = math.atan(radial * math.sin(math.radians(30)) * math.cos(climb))
    found = run(SHEET, {**LAND, "pitch": 1.75, "relief_angle": math.radians(2)}).outputs["flank_relief_angle"]
    assert found == pytest.approx(expected, rel=2e-3)


def test_a_flank_angle_goes_before_that_of_the_form() -> None:
    found = run(SHEET, {**LAND, "relief_angle": 0.05, "flank_angle": math.radians(14.5)}).outputs
    assert math.tan(found["flank_relief_angle"]) == pytest.approx(
        math.tan(0.05) * math.sin(math.radians(14.5))
    )


def test_no_relief_is_a_concentric_land_and_no_fault() -> None:
    found = run(SHEET, {**LAND, "relief_angle": 0.0})
    assert {check.state for check in found.checks} == {"note"}
    assert any("concentric" in str(check.sentence) for check in found.checks)


def test_a_fall_that_nobody_can_read_is_a_watch() -> None:
    states = [check.state for check in run(SHEET, {**LAND, "relief_angle": math.radians(0.2)}).checks]
    assert states[0] == "watch"


@pytest.mark.parametrize(
    ("change", "key"), [({"margin_width": 3.2}, "margin_width"), ({"land_width": 0.5}, "margin_width")]
)
def test_a_margin_as_wide_as_the_land_is_refused(change: dict[str, Given], key: str) -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**LAND, "relief_angle": 0.05, **change})
    assert refused.value.problems[0].key == key


def test_a_crest_that_stands_proud_has_no_relief() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**LAND, "crest_drop": -0.02})
    assert refused.value.problems[0].key == "crest_drop"


def test_the_pitch_line_of_a_tap_that_measures_larger_is_that_of_its_thread() -> None:
    # ISO 2904: d2 = d - 0.5 P, 14 mm for Tr 16x4. A fall k a radian is k / 8.25 at crests of 16.5 and k / 7 there. Derived.
    values: dict[str, Given] = {"diameter": 16.5, "nominal_diameter": 16.0, "pitch": 4.0, "thread_form": "trapezoidal",
                                "land_width": 3.0, "relief_angle": math.radians(3)}  # fmt: skip
    found = run(calculation("flank-relief"), values).outputs["flank_side_angle"]
    at_pitch_line = math.tan(math.radians(3)) * 8.25 / 7.0
    assert math.tan(found) == pytest.approx(at_pitch_line * math.tan(math.radians(15)))
