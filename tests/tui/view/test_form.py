"""A calculation being filled in: whose value counts, where the reader is, and what a change of units means."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.calculations import calculation
from library.book.model import Book
from library.calc.answer import answer
from library.calc.inputs import reading_of
from library.units.system import INCH, METRIC, Display
from tui.view.form import Form, with_unit
from tui.view.text_line import TextLine

Make = Callable[..., Form]


@pytest.fixture
def make(book: Book) -> Make:
    def form(sheet: str = "lead-over-land", entry: str = "tap-three-quarter", **typed: str) -> Form:
        made = Form(
            calculation(sheet), book.entries[entry], {k: TextLine.ending(v) for k, v in typed.items()}
        )
        compute(made, book)
        return made

    return form


def compute(form: Form, book: Book, display: Display = METRIC) -> None:
    form.take(answer(form.sheet, form.texts(), entry=form.entry, book=book, display=display))


def read(text: str, key: str, display: Display) -> float:
    return reading_of(text, key, display).number


def test_the_first_field_in_hand_is_the_first_that_is_still_needed(make: Make) -> None:
    assert make().focus == "land_width"
    assert make(entry="tap-brass").focus == "diameter"


def test_alternatives_are_needed_together_until_one_is_given(make: Make, book: Book) -> None:
    form = make(entry="tap-brass")
    assert {"pitch", "threads_per_inch"} <= set(form.needed())
    form.typed["pitch"] = TextLine.ending("1.75")
    compute(form, book)
    assert not {"pitch", "threads_per_inch"} & set(form.needed())


def test_typing_replaces_what_the_book_gave_and_emptying_restores_it(make: Make, book: Book) -> None:
    form = make()
    form.focus = "diameter"
    form.type("1")
    compute(form, book)
    value = form.value("diameter")
    assert value is not None
    assert (value.text, value.origin) == ("1", "given")
    form.edit("backspace")
    compute(form, book)
    value = form.value("diameter")
    assert value is not None
    assert (value.text, value.origin) == ("3/4 in", "entry")


def test_an_arrow_takes_the_books_value_over_to_change_a_part_of_it(make: Make) -> None:
    form = make()
    form.focus = "diameter"
    form.edit("left")
    assert form.typed["diameter"].text == "3/4 in"


def test_a_share_of_the_diameter_is_not_taken_over_as_a_length(make: Make, book: Book) -> None:
    form = make()
    form.focus = "land_width"
    form.edit("left")
    assert "land_width" not in form.typed


def test_a_choice_turns_both_ways_and_comes_round(make: Make, book: Book) -> None:
    form = make(land_width="5.08")
    form.focus = "land_measured_as"
    seen = []
    for key in ("right", "right", "left"):
        form.edit(key)
        compute(form, book)
        seen.append(form.typed["land_measured_as"].text)
    assert seen == ["chord", "arc", "chord"]


def test_a_letter_that_begins_no_choice_changes_nothing(make: Make) -> None:
    form = make()
    form.focus = "hand"
    form.type("x")
    form.type(" ")
    assert "hand" not in form.typed


def test_moving_goes_round_and_only_over_fields_that_are_asked_for(make: Make) -> None:
    form = make(sheet="setting-height")
    keys = [field.key for field in form.fields]
    assert "diameter" not in keys  # a straight wheel asks for the wheel's diameter
    form.focus = keys[-1]
    form.move(1)
    assert form.focus == keys[0]


def test_a_field_that_is_no_longer_asked_for_is_left(make: Make, book: Book) -> None:
    form = make(sheet="setting-height")
    form.focus = "wheel_diameter"
    form.typed["wheel_shape"] = TextLine.ending("type-6-straight-cup")
    compute(form, book)
    assert form.focus in [field.key for field in form.fields]


@pytest.mark.parametrize("text", ["3.2", ".2", "12", "3.2 +/- 0.05", "0.1±0.01"])
def test_changing_units_keeps_the_meaning_of_a_number_without_a_unit(make: Make, text: str) -> None:
    form = make(land_width=text)
    before = read(text, "land_width", METRIC)
    form.switch(METRIC, INCH, read)
    assert read(form.typed["land_width"].text, "land_width", INCH) == before


@pytest.mark.parametrize("text", ["3.2 mm", "1/8 in", "40 thou", "wide", ""])
def test_changing_units_leaves_what_has_a_unit_or_no_meaning_as_it_was_typed(make: Make, text: str) -> None:
    form = make(land_width=text)

    def read_or_nothing(typed: str, key: str, display: Display) -> float | None:
        from library.units.read import UnitError

        try:
            return read(typed, key, display)
        except UnitError:
            return None

    form.switch(METRIC, INCH, read_or_nothing)
    assert form.typed["land_width"].text == text


def test_angles_and_counts_are_the_same_in_both_units(make: Make) -> None:
    form = make(sheet="relief-drop", relief_angle="8", diameter="12")
    form.switch(METRIC, INCH, read)
    assert form.typed["relief_angle"].text == "8"
    assert math.isclose(read("8", "relief_angle", INCH), math.radians(8))


@given(st.decimals(0, 1000, places=3))
def test_there_and_back_again_the_number_is_the_same(number: object) -> None:
    text = f"{number}"
    named = with_unit(text, "mm")
    assert read(named, "diameter", INCH) == read(text, "diameter", METRIC)
