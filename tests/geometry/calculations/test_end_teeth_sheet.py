"""The end-teeth calculation: dish forward and back, what rubs, and what is set."""

from __future__ import annotations

import math

import pytest

from geometry.calculation import Given, Result
from geometry.calculations import calculation
from geometry.evaluate import Refusal, run
from geometry.quantities import quantity

SHEET = calculation("end-teeth")
MILL: dict[str, Given] = {"diameter": 20.0, "relief_angle": math.radians(7)}
FLAT: dict[str, Given] = {**MILL, "dish_angle": 0.0}


def states(result: Result) -> list[str]:
    return [check.state for check in result.checks]


def test_the_dish_of_a_mill_is_as_deep_as_a_ruler_on_paper_finds_it() -> None:
    # By hand: 8 mm from the corner inward at 2 degrees, 8 x 0.0349208.
    found = run(SHEET, {**MILL, "inner_diameter": 4.0, "dish_angle": math.radians(2)})
    assert found.outputs["dish_depth"] == pytest.approx(0.279366, abs=1e-6)
    assert states(found)[0] == "pass"
    again = run(SHEET, {**MILL, "inner_diameter": 4.0, "dish_depth": 0.279366})
    assert math.degrees(again.outputs["dish_angle"]) == pytest.approx(2.0, abs=1e-5)


def test_without_a_dish_the_head_is_tilted_to_the_relief_and_not_swivelled() -> None:
    found = run(SHEET, FLAT)
    assert found.outputs["workhead_tilt"] == pytest.approx(math.radians(7))
    assert found.outputs["workhead_swivel"] == 0.0
    assert set(states(found)) == {"note"}
    (told,) = (
        check.sentence.template
        for check in found.checks
        if check.sentence.template.startswith("Lay one edge")
    )
    assert "corner comes to the wheel first" not in told
    assert told.endswith("; its base is not swivelled.")
    dished = run(SHEET, {**MILL, "dish_angle": math.radians(2)})
    assert any(
        "swivel its base {swivel} so that the corner" in check.sentence.template for check in dished.checks
    )


@pytest.mark.parametrize(
    ("change", "state"),
    [
        ({"dish_depth": -0.05}, "stop"),
        ({"dish_angle": math.radians(5.1)}, "watch"),
        ({"dish_angle": math.radians(4.9)}, "pass"),
        ({"dish_angle": 0.0, "relief_angle": 0.0}, "stop"),
        ({"dish_angle": 0.0, "secondary_relief_angle": math.radians(6)}, "watch"),
    ],
)
def test_what_rubs_or_weakens_is_told_first(change: dict[str, Given], state: str) -> None:
    assert states(run(SHEET, {**MILL, **change}))[0] == state


def test_each_facet_of_the_end_has_its_setting() -> None:
    rows = run(SHEET, {**FLAT, "secondary_relief_angle": math.radians(16)}).rows
    assert [math.degrees(row.values["workhead_tilt"]) for row in rows] == pytest.approx([7, 16])


def test_a_second_facet_is_set_by_numbers_of_its_own_and_nothing_is_read_at_its_heel() -> None:
    two: dict[str, Given] = {**MILL, "dish_angle": math.radians(2), "land_width": 2.0}
    found = run(SHEET, {**two, "secondary_relief_angle": math.radians(16)})
    assert math.degrees(found.outputs["workhead_tilt"]) == pytest.approx(7)
    assert math.degrees(found.outputs["second_workhead_tilt"]) == pytest.approx(16)
    # By hand: tan 2 x cos 16 = 0.0349208 x 0.961262 = 0.0335680, less a third of its cube 0.0335554 rad.
    assert math.degrees(found.outputs["second_workhead_swivel"]) == pytest.approx(1.92258, abs=2e-5)
    assert "axial_drop" not in found.outputs
    assert found.stations == ()
    assert any("no reading is told" in str(one.sentence) for one in found.checks)
    # One that is no steeper takes nothing off: the tooth is read as one flat.
    flat = run(SHEET, {**two, "secondary_relief_angle": math.radians(6)})
    assert "second_workhead_tilt" not in flat.outputs
    assert flat.outputs["axial_drop"] == run(SHEET, two).outputs["axial_drop"]


def test_the_indicator_along_the_axis_reads_the_relief_of_a_flat_end() -> None:
    # By hand: a chord-like way of 10 sin(0.2) = 1.98669 behind the edge, times tan 7.
    found = run(SHEET, {**FLAT, "land_width": 2.0})
    assert found.outputs["axial_drop"] == pytest.approx(1.986693 * math.tan(math.radians(7)), abs=1e-6)
    assert len(found.stations) == 5


def test_edges_that_begin_outside_the_corners_are_refused() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, {**FLAT, "inner_diameter": 20.0})
    assert refused.value.problems[0].key == "inner_diameter"


def test_a_dish_that_nobody_gave_is_asked_for_and_not_taken_as_none() -> None:
    with pytest.raises(Refusal) as refused:
        run(SHEET, MILL)
    assert [(one.key, one.missing) for one in refused.value.problems] == [("dish_angle", True)]


def test_what_is_tilted_and_swivelled_has_one_name_and_never_that_of_the_wheels_spindle() -> None:
    found = run(SHEET, {**FLAT, "land_width": 2.0})
    told = [str(one.sentence) for one in found.checks]
    assert any("Tilt the work head" in one for one in told)
    texts = [
        *told,
        SHEET.neglects,
        *(quantity(key).definition for key in ("workhead_tilt", "workhead_swivel")),
    ]
    assert [one for one in texts if "spindle" in one] == []


INNER: dict[str, Given] = {"inner_diameter": 4.0}


@pytest.mark.parametrize("inner", [{}, INNER])
def test_a_dish_is_told_in_words_that_hold_for_a_mill_and_for_a_counterbore(inner: dict[str, Given]) -> None:
    found = run(SHEET, {**MILL, **inner, "dish_angle": math.radians(2)})
    told = " ".join(str(one.sentence) for one in found.checks)
    assert "sunk without going sideways" in told
    assert "seat" not in told


@pytest.mark.parametrize(("inner", "is_told"), [({}, True), (INNER, False)])
def test_edges_whose_inner_end_nobody_gave_are_said_to_be_taken_to_the_middle(
    inner: dict[str, Given], is_told: bool
) -> None:
    found = run(SHEET, {**FLAT, **inner})
    assert any("reaching the middle" in str(one.sentence) for one in found.checks) is is_told
