"""The parts a calculation is made of."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculation import QUARTERS, Inputs, is_number, passed, stations, stop, watch
from geometry.calculations import calculation, calculation_names, calculations_for
from geometry.sentences import length

INPUTS = Inputs({"diameter": 12.0, "other_diameter": (12.0, 10.0), "hand": "left"})


def test_a_number_is_read_as_a_number_and_a_word_as_a_word() -> None:
    assert INPUTS.number("diameter") == 12.0
    assert INPUTS.number("other_diameter") == 12.0
    assert INPUTS.numbers("other_diameter") == (12.0, 10.0)
    assert INPUTS.numbers("diameter") == (12.0,)
    assert INPUTS.choice("hand") == "left"


def test_what_was_not_given_is_known_not_to_be_there() -> None:
    assert INPUTS.has("diameter")
    assert not INPUTS.has("pitch")
    assert INPUTS.number_or("pitch", 1.5) == 1.5
    assert INPUTS.number_or("diameter", 1.5) == 12.0
    with pytest.raises(KeyError):
        INPUTS.number("pitch")


def test_a_word_is_no_number_and_a_number_no_word() -> None:
    with pytest.raises(TypeError, match="hand is a word"):
        INPUTS.number("hand")
    with pytest.raises(TypeError, match="hand is a word"):
        INPUTS.numbers("hand")
    with pytest.raises(TypeError, match="diameter is a number"):
        INPUTS.choice("diameter")


def test_a_check_carries_its_state_its_sentence_and_its_amounts() -> None:
    for make, state in ((passed, "pass"), (watch, "watch"), (stop, "stop")):
        check = make("The gap is {gap}.", gap=length(0.25))
        assert check.state == state
        assert str(check.sentence) == "The gap is 0.25 mm."


@given(st.floats(0.001, 6.0))
def test_the_indicator_is_read_at_edge_quarters_and_heel(turned: float) -> None:
    found = stations(turned, {"drop": math.sin, "lead_over_land": math.cos})
    assert tuple(one.fraction for one in found) == QUARTERS == (0.0, 0.25, 0.5, 0.75, 1.0)
    for number, one in enumerate(found):
        assert one.angle == pytest.approx(number * turned / 4, rel=1e-15)
        assert one.readings == {"drop": math.sin(one.angle), "lead_over_land": math.cos(one.angle)}


def test_an_input_is_found_by_its_key() -> None:
    sheet = calculation("relief-drop")
    field = sheet.field("land_measured_as")
    assert field is not None
    assert field.default == "arc"
    assert sheet.field("pitch") is None


@pytest.mark.parametrize(
    ("value", "number"),
    [(1.0, True), ((1.0, 2.0), True), ("left", False), (math.nan, False), ((1.0, math.inf), False)],
)
def test_a_word_or_a_number_that_is_none_is_told_from_a_number(
    value: float | tuple[float, ...] | str, number: bool
) -> None:
    assert is_number(value) is number


def test_calculations_are_found_by_their_files_and_in_order() -> None:
    names = calculation_names()
    assert list(names) == sorted(names)
    assert {"relief-drop", "relief-facets", "relief-from-reading", "relief-forms"} <= set(names)
    assert all(calculation(name).name == name for name in names)
    with pytest.raises(KeyError):
        calculation("relief_drop")


def names_for(kind: str, *surfaces: str) -> list[str]:
    return [sheet.name for sheet in calculations_for(kind, surfaces)]


def test_a_kind_is_served_by_its_own_calculations_only_and_its_main_job_comes_first() -> None:
    assert names_for("tap")[:2] == ["lead-over-land", "tap-chamfer"]
    assert "lead-over-land" not in names_for("reamer")
    assert names_for("reamer")[0] == "bevel-lead", "most sharpening of a reamer is that of its lead"


def test_a_known_kind_decides_whatever_the_surfaces_are() -> None:
    assert names_for("tap", "cone") == names_for("tap")


def test_surfaces_decide_in_their_order_where_no_kind_is_known() -> None:
    found = names_for("", "bevel", "land")
    assert found[:2] == ["bevel-lead", "cone-relief"]
    assert found.index("cone-relief") < found.index("reamer-land") < found.index("index-moves")
    assert names_for("", "land", "bevel")[0] == "reamer-land"
    assert names_for("no such kind", "lip") == names_for("", "lip")
    assert "drill-point" not in found


def test_a_tool_of_which_nothing_is_known_has_what_serves_every_tool() -> None:
    found = names_for("")
    assert found == sorted(found)
    assert {"index-moves", "relief-drop", "relief-forms", "relief-from-reading", "wheel-speed"} <= set(found)
    assert not {"cone-relief", "drill-point", "tap-chamfer"} & set(found)
