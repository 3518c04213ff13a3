"""A letter goes to the next choice that begins with it after the one that stands there, chosen or not, on every kind of line."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Entry
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.model import Card
from library.units.system import METRIC
from tui.handing_on import compute
from tui.view.card_form import CardForm
from tui.view.form import Form
from tui.view.text_form import Blank, TextForm


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def drill(book: Book, way: str) -> CardForm:
    card = edited(Card(family="twist-drill"), "wanted.lip_relief_angle", "12 deg")
    form = CardForm(book, card)
    form.go_to(way)
    return form


def test_on_a_card_the_next_one_after_the_surface_that_follows_by_itself(shipped: Book) -> None:
    form = drill(shipped, "wanted.surface")
    assert (form.row.text, form.row.default) == ("", "lip")
    form.type("l")
    assert form.row.text == "land"
    form.type("l")
    assert form.row.text == "lip"


def test_a_whole_word_still_takes_the_one_that_it_names(shipped: Book) -> None:
    for word in ("lip", "land"):
        form = drill(shipped, "wanted.surface")
        for letter in word:
            form.type(letter)
        assert form.row.text == word


def test_an_arrow_goes_on_from_what_follows_by_itself_too(shipped: Book) -> None:
    form = drill(shipped, "wanted.surface")
    form.edit("right")
    assert form.row.text == "land"


def test_in_the_calculator_the_next_one_after_the_default(shipped: Book) -> None:
    entry = Entry("d", "twist-drill", "Drill")
    form = Form(calculation("relief-from-reading"), entry, {})
    compute(form, shipped, METRIC)
    form.focus = "surface"
    first = form.chosen()
    letters = [one for one in form.choices() if one[0] == first[0]]
    assert len(letters) > 1
    form.type(first[0])
    compute(form, shipped, METRIC)
    assert form.chosen() == letters[(letters.index(first) + 1) % len(letters)]


def test_in_a_form_of_the_book_the_next_one_after_what_stands_there() -> None:
    form = TextForm((Blank("one", "One", choices=("", "lip", "chamfer", "land")),), {"one": "lip"})
    form.type("l")
    assert form.in_hand.text == "land"
    form.type("l")
    assert form.in_hand.text == "lip"
