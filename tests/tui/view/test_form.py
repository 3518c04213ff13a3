"""A calculation being filled in: whose value counts, and where the reader is."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Citation, Entry, Measure, Value
from library.calc.answer import answer
from library.units.system import METRIC, Display
from tui.view.calculator_fields import mark
from tui.view.form import Form
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


def test_moving_stops_at_the_ends_and_goes_only_over_fields_that_are_asked_for(make: Make) -> None:
    form = make(sheet="setting-height")
    keys = [field.key for field in form.fields]
    assert "diameter" not in keys  # a straight wheel asks for the wheel's diameter
    form.focus = keys[-1]
    form.move(1)
    assert form.focus == keys[-1]
    form.go_round()
    assert form.focus == keys[0]
    form.move(-1)
    assert form.focus == keys[0]


def test_a_field_that_is_no_longer_asked_for_is_left(make: Make, book: Book) -> None:
    form = make(sheet="setting-height")
    form.focus = "wheel_diameter"
    form.typed["wheel_shape"] = TextLine.ending("type-6-straight-cup")
    compute(form, book)
    assert form.focus in [field.key for field in form.fields]


def test_of_two_ways_to_say_a_thing_that_is_asked_for_first_which_the_book_has(
    make: Make, book: Book
) -> None:
    mill = Entry(
        "mill",
        "end-mill",
        "Mill",
        values={
            "dish_depth": Value(
                "dish_depth",
                Measure("0.02 mm", 0.02),
                high=Measure("0.05 mm", 0.05),
                citation=Citation("shop"),
            )
        },
    )
    for entry, first, second in ((mill, "dish_depth", "dish_angle"), (None, "dish_angle", "dish_depth")):
        form = Form(calculation("end-teeth"), entry, {"diameter": TextLine.ending("20 mm"), "relief_angle": TextLine.ending("2 deg")})  # fmt: skip
        compute(form, book)
        assert form.focus == first
        assert [mark(form, form.sheet_field(one)) for one in (first, second)] == ["needed", "or this"]
        form.focus = "diameter"
        form.to_wanted()
        assert form.focus == first
        form.to_wanted()
        assert form.focus == second
