"""Reamer size: what a measured reamer still is for its hole."""

from __future__ import annotations

import pytest

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from library.units.show import say
from library.units.system import Display

SHEET = calculation("reamer-size")


def reamer(measured: float, **more: Given) -> Result:
    return run(
        SHEET, {"nominal_diameter": 12.0, "measured_diameter": measured, "hole_tolerance": "H7", **more}
    )


def for_an_unnamed_hole(measured: float) -> Result:
    return run(SHEET, {"nominal_diameter": 12.0, "measured_diameter": measured})


# A 12 H7 hole is 12.000 to 12.018 (ISO 286), its reamer 12.008 to 12.015: derived from shares of 2.7 and 6.3, rounded up.
@pytest.mark.parametrize(
    ("measured", "state", "grind", "wear"),
    [
        (12.030, "stop", 0.015, 0.030),
        (12.017, "watch", 0.002, 0.017),
        (12.010, "pass", 0.0, 0.010),
        (12.003, "pass", 0.0, 0.003),
        (11.990, "stop", 0.0, 0.0),
        (10.0, "stop", 0.0, 0.0),
    ],
)
def test_a_measured_reamer_is_told_what_it_has_left(
    measured: float, state: str, grind: float, wear: float
) -> None:
    found = reamer(measured)
    assert found.checks[0].state == state
    assert found.outputs["left_to_grind"] == pytest.approx(grind)
    assert found.outputs["left_to_wear"] == pytest.approx(wear)


@pytest.mark.parametrize(
    ("measured", "said"),
    [
        (12.030, "12.030 mm, more than the largest hole H7, 12.018 mm."),
        (11.990, "11.990 mm, less than the smallest hole H7, 12.000 mm."),
    ],
)
def test_a_reamer_that_no_longer_fits_is_told_for_which_class_and_past_which_size(
    measured: float, said: str
) -> None:
    assert said in say(reamer(measured).checks[0].sentence)


@pytest.mark.parametrize("measured", [12.016, 12.1, 13.0])
def test_the_circle_of_one_over_its_limits_is_ground_to_their_middle_and_at_least_to_the_upper_one(
    measured: float,
) -> None:
    # The middle of 12.008 and 12.015 is 12.0115, taken up to 12.012. By hand.
    found = reamer(measured)
    assert found.outputs["circle_ground_to"] == pytest.approx(12.012)
    assert measured - found.outputs["left_to_grind"] == pytest.approx(12.015)
    assert "Grind its circle to 12.012 mm, the middle of its limits" in say(found.checks[0].sentence)


def test_a_reamer_within_its_limits_has_no_circle_to_be_ground() -> None:
    assert "circle_ground_to" not in reamer(12.010).outputs


@pytest.mark.parametrize("measured", [12.016, 12.1, 13.0])
def test_one_that_is_too_large_is_right_once_it_is_ground_as_told(measured: float) -> None:
    ((key, value),) = reamer(measured).checks[0].cure
    assert key == "measured_diameter"
    assert isinstance(value, float)
    assert reamer(value).checks[0].state == "pass"


@pytest.mark.parametrize(
    ("measured", "state"),
    [
        (12.030, "note"),
        (12.017, "note"),
        (12.010, "note"),
        (12.003, "note"),
        (11.990, "note"),
        (10.0, "watch"),
    ],
)
def test_a_class_that_is_only_presumed_stops_nothing_passes_nothing_and_has_nothing_ground_off(
    measured: float, state: str
) -> None:
    found = for_an_unnamed_hole(measured)
    assert found.checks[0].state == state
    assert {"stop", "pass"}.isdisjoint(one.state for one in found.checks)
    assert "left_to_grind" not in found.outputs
    assert "left_to_wear" not in found.outputs
    assert not any("Grind" in say(one.sentence) or one.cure for one in found.checks)


@pytest.mark.parametrize("measured", [12.030, 12.010, 11.990])
def test_a_presumed_class_is_named_as_one_with_the_line_to_name_the_hole_in(measured: float) -> None:
    said = say(for_an_unnamed_hole(measured).checks[0].sentence)
    assert "Nobody named the hole. For H7, which is presumed" in said
    assert "'Tolerance of the hole'" in said


def test_a_taper_has_no_class_and_so_no_limits() -> None:
    with pytest.raises(Refusal, match="no class of hole"):
        run(SHEET, {"hole_tolerance": "taper", "measured_diameter": 12.0})


def test_an_inch_hole_is_given_by_its_limits() -> None:
    # Derived in thousandths of a mm: .5000 to .5008 in is 20.32 wide; 3.048 and 7.112 are rounded up to 4 and 8.
    limits: dict[str, Given] = {
        "hole_tolerance": "limits",
        "hole_lower_limit": 12.7,
        "hole_upper_limit": 12.72032,
    }
    found = run(SHEET, {**limits, "measured_diameter": 12.71}).outputs
    assert found["reamer_upper_limit"] == pytest.approx(12.71632)
    assert found["reamer_lower_limit"] == pytest.approx(12.70832)
    assert "hole_upper_limit" not in found


@pytest.mark.parametrize(
    ("low", "high", "words"), [(10.0, 9.99, "larger than the smallest"), (10.0, 10.003, "honed")]
)
def test_limits_that_no_reamer_holds_are_refused(low: float, high: float, words: str) -> None:
    with pytest.raises(Refusal, match=words):
        run(SHEET, {"hole_tolerance": "limits", "hole_lower_limit": low, "hole_upper_limit": high})


def test_the_rule_leaves_something_to_wear_in_every_hole_that_is_reamed() -> None:
    # Derived: 0.15 and 0.35 of a tolerance, each a micrometre more at most.
    for wide in (0.004, 0.006, 0.01, 0.1):
        limits: dict[str, Given] = {
            "hole_tolerance": "limits",
            "hole_lower_limit": 20.0,
            "hole_upper_limit": 20.0 + wide,
        }
        found = run(SHEET, limits).outputs
        assert 20.0 < found["reamer_lower_limit"] < found["reamer_upper_limit"] < 20.0 + wide
        assert 20 + wide / 2 - 0.002 < found["reamer_lower_limit"] < 20 + wide / 2 + 1e-9


def test_the_hole_before_reaming_is_smaller_by_the_stock() -> None:
    found = reamer(12.01, reaming_stock=0.2)
    amounts = [check.sentence.parts["before"] for check in found.checks if "before" in check.sentence.parts]
    assert [getattr(one, "value", None) for one in amounts] == [pytest.approx(11.8115)]


def test_the_hole_before_reaming_is_told_as_finely_as_the_reamer_in_inches_too() -> None:
    # Without stock it is the middle of the reamer's limits, 12.0115 mm, 0.47289 in. By hand.
    found = run(
        calculation("reamer-size"), {"nominal_diameter": 12.0, "hole_tolerance": "H7", "reaming_stock": 0.0}
    )
    (told,) = [one.sentence for one in found.checks if "before reaming" in one.sentence.template]
    assert "is made 0.47289 in wide" in say(told, Display("in"))
