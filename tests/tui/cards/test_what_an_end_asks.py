"""The card of teeth on the end of a tool: which land is meant, and what is measured after them."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.issues import keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from library.pages.card_end import end_answers
from library.setup_sheet.sheets import setup_sheet
from tui.figure.alphabet import ALPHABETS
from tui.view.card_form import CardForm
from tui.view.card_side import Drawn, side_lines
from tui.view.lines import text_of


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def form_of(book: Book, surface: str, dish: str = "") -> CardForm:
    card = Card(
        family="end-mill",
        tool=Tool("E-1", "12 mm", flutes="4"),
        wanted={"surface": Wanted(surface), "end_relief_angle": Wanted("7 deg")},
        settings={"end-teeth": Setting({"dish_angle": dish})} if dish else {},
    )
    return CardForm(book, card)


def labels(form: CardForm, section: str) -> list[str]:
    form.go_to(section)
    return [row.label for row in form.rows if row.section == section]


def picture_of_the_land(form: CardForm) -> list[str]:
    form.go_to("received.land_width")
    drawn = side_lines(form.job, form.row, (), None, 60, 20, Drawn(ALPHABETS["ascii"]))
    return [text_of(one) for one in drawn]


def test_the_land_of_end_teeth_is_called_so_and_pictured_on_the_end(book: Book) -> None:
    end, outside = form_of(book, "end"), form_of(book, "land")
    assert "Land width, end teeth" in labels(end, "received")
    assert "Land width" in labels(outside, "received")
    assert picture_of_the_land(end)[0].strip() == "Land width, end teeth"
    assert picture_of_the_land(end) != picture_of_the_land(outside)


def test_a_dish_that_is_set_is_asked_for_after_grinding(book: Book) -> None:
    assert "Dish of the end" in labels(form_of(book, "end", "2 deg"), "after")
    assert "Dish of the end" not in labels(form_of(book, "end", "0 deg"), "after")
    assert "Dish of the end" not in labels(form_of(book, "land"), "after")


def test_of_an_end_with_two_facets_the_line_of_the_heel_says_on_which_it_lies_and_that_no_reading_is_told(
    book: Book,
) -> None:
    form = form_of(book, "end", "2 deg")
    form.go_to("after.drop")
    assert "no reading is told" not in form.row.hint
    assert form.row.label == "Indicator drop at the heel"
    form.take(
        book, replace(form.card, wanted={**form.card.wanted, "second_end_relief_angle": Wanted("15 deg")})
    )
    form.go_to("after.drop")
    assert form.row.hint.startswith("The heel lies on facet 2 (15.00 deg); no reading is told there.")
    assert form.row.label == "Indicator drop at the heel, facet 2"
    assert "Indicator drop at the heel, facet 2" in setup_sheet(
        work_out(replace(form.card, after={"drop": Inspection(("0.1 mm",))}), book)
    )


def test_a_heel_whose_reading_nobody_can_tell_is_not_asked_for(book: Book) -> None:
    one = form_of(book, "end", "2 deg").card
    two = replace(one, wanted={**one.wanted, "second_end_relief_angle": Wanted("15 deg")})
    read = replace(two, after={"drop": Inspection(("0.1 mm",))})
    assert "Indicator drop at the heel" in labels(CardForm(book, one), "after")
    assert labels(CardForm(book, two), "after")[0] == "Diameter"
    assert "Indicator drop at the heel, facet 2" in labels(CardForm(book, read), "after")
    told = {
        card.wanted == two.wanted: " ".join(f"{part}" for part in end_answers(work_out(card, book), ""))
        for card in (one, two)
    }
    assert "indicator drop at the heel" in told[False]
    assert "indicator drop at the heel" not in told[True]
    assert "Still to be measured on the page After: diameter." in told[True]


@pytest.mark.parametrize("way", ["notes", "minutes", "result", "remarks"])
def test_a_line_of_the_end_behind_which_nothing_is_left_says_that_enter_closes_the_card(
    book: Book, way: str
) -> None:
    form = form_of(book, "land")
    form.take(book, replace(form.card, notes="New wheel.", minutes="25", result="good"))
    form.go_to(way)
    assert "{go-on} then asks whether to close the card." in form.row.hint
    assert "goes on" not in form.row.hint
    assert not form.go_on()


@pytest.mark.parametrize("way", ["notes", "minutes", "result", "remarks"])
def test_a_line_of_the_end_says_that_enter_goes_to_what_keeps_the_card_open(book: Book, way: str) -> None:
    form = form_of(book, "land")
    form.take(
        book,
        replace(
            form.card,
            notes="New wheel.",
            minutes="25",
            result="good",
            after={"diameter": Inspection(("9 mm",), wanted="12 mm", tolerance="0.05 mm")},
        ),
    )
    assert keeps_open(form.job)
    form.go_to(way)
    assert "{go-on} then goes to what keeps the card open." in form.row.hint
    assert "asks whether to close" not in form.row.hint


async def test_enter_at_the_end_does_as_its_line_says(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>")
        form = hands.app.screen.form
        form.go_to("tool.flutes")
        await hands.do("x3")
        form.go_to("minutes")
        await hands.do("5", "<enter>", "g")
        said = " ".join(hands.shown().split())
        assert "Enter then goes to what keeps the card open." in said
        await hands.do("<enter>")
        assert form.row.way == "tool.flutes"


def test_a_line_of_the_end_with_lines_left_behind_it_says_that_enter_goes_on(book: Book) -> None:
    form = form_of(book, "land")
    form.go_to("notes")
    assert form.row.hint.endswith("{go-on} goes on.")
    assert form.go_on()


async def test_who_closes_a_card_without_a_result_is_told_so(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>", *["<ctrl+n>"] * 5)
        hands.app.screen.form.go_to("result")
        assert "It has no result. Nothing was measured after grinding." in await hands.do("<enter>")
        await hands.do("<enter>", "g")
        assert "It has no result." not in await hands.do("<enter>")
