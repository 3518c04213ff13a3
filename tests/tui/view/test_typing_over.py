"""What was not typed into a field in this visit gives way to the first character: calculator, forms and card alike."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.calc.answer import answer
from library.cards.model import Card, Tool
from library.units.system import METRIC
from tui.view.calculator_fields import columns, field_lines
from tui.view.card_form import CardForm
from tui.view.fields import Fields
from tui.view.form import Form
from tui.view.lines import Piece, text_of
from tui.view.table_blanks import blanks_for
from tui.view.text_form import GIVES_WAY, TextForm
from tui.view.text_line import TextLine


def in_the_calculator() -> Fields:
    """As a size that stood in the find line goes along."""
    form = Form(calculation("relief-drop"), None, {"diameter": TextLine.ending("5/8 in")})
    form.take(answer(form.sheet, form.texts(), display=METRIC))
    form.focus = "diameter"
    return form


def in_a_form() -> Fields:
    form = TextForm(blanks_for("wheel", None), {"title": "White cup", "diameter": "5/8 in"})
    form.focus = "diameter"
    return form


def on_a_card() -> Fields:
    form = CardForm(Book({}), Card(family="tap", tool=Tool(name="T-1", size="5/8 in")))
    form.go_to("tool.size")
    return form


EVERYWHERE = pytest.mark.parametrize("begin", [in_the_calculator, in_a_form, on_a_card])


@EVERYWHERE
def test_what_stands_there_gives_way_to_what_is_typed_letter_by_letter(begin: Callable[[], Fields]) -> None:
    form = begin()
    for letter in "16.2 mm":
        form.type(letter)
    assert form.in_hand.text == "16.2 mm"


@EVERYWHERE
def test_what_was_typed_gives_way_too_when_it_is_come_back_to(begin: Callable[[], Fields]) -> None:
    form = begin()
    form.type("16.2 mm")
    form.move(1)
    form.move(-1)
    assert form.in_hand.text == "16.2 mm"
    form.type("1")
    form.type("7")
    assert form.in_hand.text == "17"


@pytest.mark.parametrize("typed", ["6 mm", "6 deg"])
def test_what_was_typed_gives_way_after_enter_whether_it_is_right_or_faulty(typed: str) -> None:
    form = in_the_calculator()
    assert isinstance(form, Form)
    others = {"surface": "land", "land_relief_angle": "8", "land_width": "2", "relief_form": "eccentric"}
    form.typed |= {key: TextLine.ending(text) for key, text in others.items()}
    form.type(typed)
    form.take(answer(form.sheet, form.texts(), display=METRIC))
    form.to_wanted()
    # What is faulty wants something and stays in hand; a good one is left, and come back to.
    assert (form.focus == "diameter") is (typed == "6 deg")
    form.focus = "diameter"
    form.type("2 mm")
    assert form.in_hand.text == "2 mm"


def test_a_faulty_text_is_changed_by_backspace_after_enter() -> None:
    form = in_the_calculator()
    assert isinstance(form, Form)
    form.type("6 deg")
    form.take(answer(form.sheet, form.texts(), display=METRIC))
    form.leave()
    form.edit("backspace")
    form.type("m")
    assert form.in_hand.text == "6 dem"


@EVERYWHERE
@pytest.mark.parametrize("key", ["left", "right", "end"])
def test_a_key_goes_behind_it_to_change_a_part_of_it(begin: Callable[[], Fields], key: str) -> None:
    form = begin()
    form.edit(key)
    assert form.in_hand == TextLine.ending("5/8 in")
    for _ in range(2):
        form.edit("backspace")
    form.type("mm")
    assert form.in_hand.text == "5/8 mm"


@EVERYWHERE
def test_home_and_delete_change_its_beginning_and_backspace_its_end(begin: Callable[[], Fields]) -> None:
    form = begin()
    form.edit("home")
    form.type("1-")
    assert form.in_hand.text == "1-5/8 in"
    form = begin()
    form.edit("delete")
    assert form.in_hand.text == "/8 in"
    form = begin()
    form.edit("backspace")
    assert form.in_hand.text == "5/8 i"


@EVERYWHERE
def test_a_comma_goes_on_with_a_list(begin: Callable[[], Fields]) -> None:
    form = begin()
    form.type(",")
    form.type(" 3/4 in")
    assert form.in_hand.text == "5/8 in, 3/4 in"


@EVERYWHERE
@pytest.mark.parametrize("typed", [[" ", "m", "m"], [" mm"]])
def test_a_blank_goes_on_with_the_unit(begin: Callable[[], Fields], typed: list[str]) -> None:
    form = begin()
    for text in typed:
        form.type(text)
    assert form.in_hand.text == "5/8 in mm"


@EVERYWHERE
def test_a_number_that_is_pasted_with_a_blank_before_it_takes_the_place_of_what_stood_there(
    begin: Callable[[], Fields],
) -> None:
    form = begin()
    form.type(" 16.2 mm")
    assert form.in_hand.text.strip() == "16.2 mm"


def test_a_faulty_line_that_is_come_back_to_says_how_it_is_gone_on_with() -> None:
    form = in_a_form()
    assert isinstance(form, TextForm)
    form.wrong = {"diameter": "It has no unit."}
    assert GIVES_WAY in " ".join(text_of(one).strip() for one in form.draw(200))
    form.edit("end")
    assert GIVES_WAY not in " ".join(text_of(one).strip() for one in form.draw(200))


@EVERYWHERE
def test_the_cursor_stands_on_the_first_character_of_what_gives_way(begin: Callable[[], Fields]) -> None:
    form = begin()
    assert form.drawn == TextLine("5/8 in")
    form.edit("end")
    assert form.drawn == TextLine.ending("5/8 in")


def test_the_calculator_draws_it_so() -> None:
    form = in_the_calculator()
    assert isinstance(form, Form)
    drawn = field_lines(form, form.sheet_field("diameter"), columns(80))[0]
    assert Piece("5", "cursor") in drawn


def test_what_the_program_puts_in_place_of_what_is_being_typed_gives_way() -> None:
    form = in_the_calculator()
    assert isinstance(form, Form)
    form.type("16")
    form.take_thread("M12")
    form.type("8")
    assert form.in_hand.text == "8"


@pytest.mark.parametrize("way", ["tool.name", "notes", "wrong", "remarks"])
def test_words_of_a_card_are_gone_on_with(way: str) -> None:
    card = Card(family="tap", tool=Tool(name="T"), notes="T", wrong="T", remarks="T")
    form = CardForm(Book({}), card)
    form.go_to(way)
    form.type("12")
    assert form.in_hand.text == "T12"
    form.move(-1)
    form.go_to(way)
    form.type("a")
    assert form.in_hand.text == "T12a"


@pytest.mark.parametrize(
    ("way", "key"), [("received.land_width", "land_width"), ("wanted.rake_angle", "rake_angle")]
)
def test_a_number_that_somebody_typed_on_a_card_gives_way_when_it_is_come_back_to(way: str, key: str) -> None:
    form = CardForm(Book({}), Card(family="tap"))
    form.open(*way.split("."))
    form.type("3")
    form.type("1")
    assert form.in_hand.text == "31"
    form.move(1)
    form.move(-1)
    form.type("4")
    assert form.in_hand.text == "4"


def test_words_of_a_form_are_gone_on_with() -> None:
    form = in_a_form()
    form.focus = "title"
    form.type("!")
    assert form.in_hand.text == "White cup!"
