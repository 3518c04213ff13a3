"""The calculator's form on a surface: its relief, the ranges of the book, and the way of Enter."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.book.model import Entry
from library.calc.answer import answer
from library.units.system import METRIC
from tests.library.calc.samples import BOOK, degrees, relief_sheet, tool
from tests.tui.view.whole_page import whole
from tui import handing_on
from tui.view.calculator_page import CalculatorPage
from tui.view.form import Form, Typed
from tui.view.lines import text_of
from tui.view.text_line import TextLine

DRILL = tool("twist-drill", degrees("lip_relief_angle", 5, None, 15), degrees("land_relief_angle", usual=10))
LIMIT = tool("countersink", degrees("cone_relief_angle", None, None, 18))


def form_of(entry: Entry, *surfaces: str, typed: Typed | None = None) -> Form:
    form = Form(relief_sheet(*surfaces), entry, {} if typed is None else typed)
    compute(form)
    return form


def compute(form: Form) -> None:
    handing_on.compute(form, BOOK, METRIC)


def press(form: Form, *keys: str) -> str:
    for key in keys:
        form.edit(key)
        compute(form)
    return form.line(form.focus).text


def screen(form: Form, width: int = 200) -> str:
    return "\n".join(text_of(one) for one in whole(CalculatorPage(form, book=BOOK), width, 30))


def test_right_takes_low_middle_and_high_in_turn_and_left_the_other_way() -> None:
    form = form_of(DRILL)
    form.focus = "relief_angle"
    assert [press(form, "right") for _ in range(4)] == ["5 deg", "10 deg", "15 deg", "5 deg"]
    assert press(form, "left") == "15 deg"
    form.clear()
    compute(form)
    assert press(form, "left") == "15 deg"


def test_a_limit_gives_its_one_end() -> None:
    form = form_of(LIMIT)
    form.focus = "relief_angle"
    assert (press(form, "right"), press(form, "right")) == ("18 deg", "18 deg")


def test_a_number_of_ones_own_is_edited_and_not_turned() -> None:
    form = form_of(DRILL)
    form.focus = "relief_angle"
    for letter in "7 deg":
        form.type(letter)
    compute(form)
    assert press(form, "left") == "7 deg"


def test_the_open_field_shows_the_range_of_the_book() -> None:
    form = form_of(DRILL)
    assert form.focus == "relief_angle"
    assert "  5 to 15 deg " in screen(form, 80)
    drawn = screen(form)
    assert "book 5 to 15 deg" in drawn
    assert "needed" in drawn
    assert "Right and Left take low, middle or high of the book's 5 deg to 15 deg." in drawn


def test_the_field_names_the_surface_and_the_plane_of_its_relief() -> None:
    assert "Relief of the lip, along the" in screen(form_of(DRILL))
    form = form_of(DRILL)
    form.focus = "surface"
    press(form, "right")
    assert "Relief of the land, square to" in screen(form)


def test_left_and_right_turn_over_the_surfaces_of_tool_and_calculation_only() -> None:
    form = form_of(DRILL)
    form.focus = "surface"
    assert [press(form, "right") for _ in range(3)] == ["land", "lip", "land"]
    assert form.value("relief_angle").text == "10 deg"  # type: ignore[union-attr]


def test_what_was_typed_for_one_surface_is_not_taken_for_another() -> None:
    typed: Typed = {}
    form = form_of(DRILL, typed=typed)
    form.focus = "relief_angle"
    form.type("7")
    compute(form)
    form.focus = "surface"
    press(form, "right")
    assert form.value("relief_angle").text == "10 deg"  # type: ignore[union-attr]
    press(form, "right")
    assert form.value("relief_angle").text == "7"  # type: ignore[union-attr]
    on_land = form_of(DRILL, "land", typed=typed)
    assert on_land.value("relief_angle").text == "10 deg"  # type: ignore[union-attr]
    assert form.told() == {"surface": "lip", "lip_relief_angle": "7"}


def test_enter_passes_over_filled_fields_and_stays_where_nothing_is_wanted() -> None:
    form = Form(calculation("lead-over-land"), None, {})
    compute(form)
    assert form.focus == "diameter"
    for letter in "m20x1.5":
        form.type(letter)
    compute(form)
    form.to_wanted()
    assert form.focus == "land_width"
    form.type("4.1")
    compute(form)
    assert form.answer is not None
    # 1.5 x 4.1 / (pi x 20), by hand.
    assert form.answer.result is not None
    assert form.answer.result.outputs["lead_over_land"] == pytest.approx(0.09788, abs=5e-6)
    # How the land was measured changes the answer, and nobody chose it: there Enter stops, once.
    form.to_wanted()
    assert form.focus == "land_measured_as"
    form.to_wanted()
    assert form.focus == "land_measured_as"
    form.focus = "land_width"
    form.to_wanted()
    assert form.focus == "land_width"


def test_enter_comes_round_to_what_was_left_out_above() -> None:
    form = Form(calculation("lead-over-land"), None, {})
    compute(form)
    form.focus = "land_width"
    form.to_wanted()
    assert form.focus == "diameter"


def test_enter_comes_back_to_what_could_not_be_read() -> None:
    form = Form(calculation("lead-over-land"), None, {})
    for key, text in (("diameter", "1/2"), ("pitch", "1.5"), ("land_width", "4.1")):
        form.typed[key] = TextLine.ending(text)
    compute(form)
    form.focus = "land_width"
    form.to_wanted()
    assert form.focus == "diameter"


def test_a_relief_of_the_book_in_hand_says_where_it_came_from() -> None:
    form = form_of(tool("tap", degrees("chamfer_relief_angle", 4, 6, 8)))
    form.focus = "relief_angle"
    drawn = " ".join(screen(form).split())
    assert "Relief of the chamfer, square to the axis: 6 deg (4 deg to 8 deg). Source: from memory" in drawn


def test_the_answer_without_a_book_still_stands() -> None:
    form = Form(relief_sheet(), None, {})
    form.take(answer(form.sheet, {"surface": "cone", "relief_angle": "8"}))
    assert form.surface == "cone"


def test_enter_goes_on_to_what_may_be_given_once_nothing_is_needed_and_never_onto_a_filled_field() -> None:
    form = Form(calculation("relief-drop"), None, {})
    form.take(answer(form.sheet, {}))
    for key, text in (("diameter", "12 mm"), ("relief_angle", "8 deg"), ("land_width", "2 mm")):
        assert form.focus == key
        form.type(text)
        form.take(answer(form.sheet, form.texts()))
        form.to_wanted()
    assert form.focus == "land_measured_as"
    form.to_wanted()
    assert form.focus == "flutes"
    form.move(-1)
    form.to_wanted()
    assert form.focus == "flutes"


def test_enter_goes_from_number_to_number_and_only_then_to_a_choice_that_matters() -> None:
    form = Form(calculation("measured-tool"), None, {})
    compute(form)
    form.focus = "diameter"
    for key, text in (
        ("diameter", "12.008"),
        ("land_width", ".9"),
        ("drop", ".125"),
        ("second_land_width", ".45"),
        ("second_drop", ".07"),
    ):
        assert form.focus == key
        form.type(text)
        compute(form)
        form.to_wanted()
    assert form.focus == "land_measured_as"
    form.to_wanted()
    assert form.focus == "face_offset"


def test_the_hint_of_a_land_says_which_land_of_a_drill_it_is() -> None:
    form = Form(calculation("drill-point"), DRILL, {})
    compute(form)
    form.focus = "land_width"
    assert "from the lip at its outer corner back to the heel; not the land of the body" in screen(form)
    over_the_land = Form(calculation("setting-height"), LIMIT, {})
    compute(over_the_land)
    assert "not the land of the body" not in screen(over_the_land)
