"""What a card says in passing: how it may be closed, and where a size belongs."""

from __future__ import annotations

from typing import Any

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.issues import issues_of, keeps_open
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


MEASURED = {"diameter": Inspection(("10.01 mm",), "10.01 mm", "0.02 mm")}
"""A card on which something was measured after grinding."""


def reamer() -> Card:
    """A reamer that was measured over the upper limit of its hole, which is a watch and keeps no card open."""
    typed = {"nominal_diameter": "10 mm", "measured_diameter": "10.02 mm", "hole_tolerance": "H8"}
    return Card(family="reamer", tool=Tool("R-10", size="10 mm", flutes="6"), after=MEASURED,
                settings={"reamer-size": Setting(typed)})  # fmt: skip


def end(book: Book, card: Card) -> str:
    form = CardForm(book, card)
    form.go_to("result")
    return " ".join(" ".join(text_of(one)[49:] for one in CardPage(form).draw(80, 24)).split())


def test_a_card_with_something_to_look_at_and_lines_still_empty_does_not_say_that_everything_adds_up(
    book: Book,
) -> None:
    said = end(book, reamer())
    assert "Everything adds up" not in said
    assert "Nothing keeps the card open." in said
    assert "Look once more before you close it: The reamer measures 10.020 mm, over its upper limit" in said
    assert "Still empty on this page: notes, time spent, result." in said


def test_a_card_on_which_nothing_is_left_says_so(book: Book) -> None:
    card = Card(
        family="reamer", tool=Tool("R-10", size="10 mm", flutes="6"), notes="-", minutes="5", result="good",
        after=MEASURED,
    )  # fmt: skip
    assert "Everything adds up; the card can be closed." in end(book, card)


@pytest.mark.parametrize("family", ["twist-drill", "step-drill", "reamer", "countersink", "end-mill"])
def test_a_tool_without_a_thread_is_not_asked_for_one(book: Book, family: str) -> None:
    assert "tool.thread" not in [row.way for row in CardForm(book, Card(family=family)).rows]


def test_a_tap_is_asked_for_its_thread_and_told_where_a_bare_size_belongs(book: Book) -> None:
    (row,) = (row for row in CardForm(book, Card(family="tap")).rows if row.way == "tool.thread")
    assert "belongs into the line Size" in row.hint


@pytest.mark.parametrize("text", ["8.7 mm", "8.7", "3/8 in"])
def test_a_size_on_the_line_of_the_thread_is_sent_to_the_line_of_the_size(book: Book, text: str) -> None:
    form = CardForm(book, Card(family="twist-drill", tool=Tool("D-1", thread=text, flutes="2")))
    (said,) = (one.text for one in issues_of(form.job) if one.way == "tool.thread")
    assert said.startswith(f"{text!r} is a size and no thread; write it in the line Size.")
    assert not [one for one in keeps_open(form.job) if one.way == "tool.thread"]


@pytest.mark.parametrize("text", ["M8", "5/8-11 UNC", "5/8", "M20 x 2.5 LH", "Tr 20 x 8 P4", "G 1/2", "#7"])
def test_a_thread_and_one_that_is_only_begun_are_left_alone(book: Book, text: str) -> None:
    form = CardForm(book, Card(family="tap", tool=Tool("T-1", thread=text, flutes="4")))
    assert not [one for one in issues_of(form.job) if one.way == "tool.thread"]


async def test_what_f6_says_of_a_line_of_settings_is_what_the_keys_do_there(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        await hands.type("dowel")
        await hands.press("ctrl+f")
        form = hands.app.screen.form
        form.go_to("settings.wheel-speed.rotational_speed")
        shown = " ".join((await hands.press("f6")).split())
        assert "2800 rpm" in shown  # what the machine has is listed
        assert "Right leaves it out" not in shown
        await hands.press("f9")
        await hands.press("right")
        assert form.row.text == "2800 rpm"  # as the machine has it
        assert not form.card.settings.get("wheel-speed", Setting()).skipped
        form.go_to("settings.wheel-speed")
        shown = " ".join((await hands.press("f6")).split())
        assert "matter; Right leaves it out of the job." in shown
        await hands.press("right")
        assert form.card.settings["wheel-speed"].skipped
        shown = " ".join((await hands.press("f6")).split())
        assert "Right takes it into the job again" in shown


@pytest.mark.parametrize(("flutes", "shown"), [("3", "3"), ("", "4")])
def test_flutes_counted_on_the_tool_stand_where_the_book_has_another_number(
    book: Book, flutes: str, shown: str
) -> None:
    card = Card(
        family="tap",
        tool=Tool("T-8", thread="M8", flutes=flutes),
        wanted={"flutes": Wanted("4", "4", "a book")},
    )
    form = CardForm(book, card)
    form.go_to("wanted.flutes")
    (line,) = (text_of(one) for one in CardPage(form).draw(80, 24) if text_of(one).startswith(">"))
    assert line.split()[:3] == [">", "Flutes", shown]
