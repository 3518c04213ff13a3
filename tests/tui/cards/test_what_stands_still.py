"""The right half of a card on a screen of 80 columns: a picture or what the tool came with, where nothing follows yet."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.starting import from_entry
from tests.begun_cards import begun
from tests.tui.cards.conftest import form_at
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of

CAME = {
    "tool.thread": "M12", "received.diameter": "11.98 mm", "received.land_width": "3.2 mm",
    "received.land_measured_as": "chord", "received.drop": "0.2 mm",
}  # fmt: skip


def right_half(form: CardForm, width: int = 80, height: int = 22) -> list[str]:
    lines = (text_of(one) for one in CardPage(form).draw(width, height))
    return [one.partition("│")[2].rstrip() for one in lines if "│" in one]


@pytest.mark.parametrize(
    ("entry", "title"),
    [("tap-spiral-point-aluminium-bronze", "Indicator drop"),
     ("twist-drill-jobber-plain-steel", "Indicator drop along the axis"),
     ("reamer-hand-plain-steel", "Indicator drop")],
)  # fmt: skip
def test_before_a_reading_how_it_is_read_stands_drawn_in_the_empty_half(
    yard_book: Book, entry: str, title: str
) -> None:
    half = right_half(form_at(yard_book, begun(yard_book, entry), "received.diameter"))
    assert half.count(f" {title}") == 1
    assert any("edge" in one for one in half)


def test_neither_another_line_nor_a_digit_moves_it(yard_book: Book) -> None:
    form = form_at(yard_book, begun(yard_book, "tap-spiral-point-aluminium-bronze"), "received.diameter")
    halves = []
    for way in ("received.diameter", "received.land_width", "received.land_measured_as", "received.drop"):
        form.go_to(way)
        halves.append(right_half(form)[:14])
    form.go_to("received.diameter")
    for digit in "11.98":
        form.type(digit)
        halves.append(right_half(form)[:14])
    assert all(one == halves[0] for one in halves)


def test_it_gives_way_to_what_follows(yard_book: Book) -> None:
    squeals = {**CAME, "received.drop": "0.2, 0.21, 0.2 mm", "wrong": "squeals"}
    card = begun(yard_book, "tap-spiral-point-aluminium-bronze", **squeals)
    form = form_at(yard_book, card, "received.drop")
    half = right_half(form)
    assert any("Relief found" in one for one in half)
    assert " Indicator drop" not in half


def test_after_grinding_without_a_reading_stands_what_it_came_with(yard_book: Book) -> None:
    form = form_at(yard_book, begun(yard_book, "tap-spiral-point-aluminium-bronze", **CAME), "after.drop")
    half = right_half(form)
    assert " CAME WITH" in half
    assert " Diameter        11.98 mm" in half
    before = right_half(form)
    form.go_to("after.diameter")
    assert right_half(form)[: len(before) - 1] == before[: len(before) - 1]


def test_a_wide_screen_has_it_once_at_its_side(yard_book: Book) -> None:
    form = form_at(yard_book, begun(yard_book, "tap-spiral-point-aluminium-bronze", **CAME), "after.drop")
    shown = "\n".join(text_of(one) for one in CardPage(form).draw(120, 34))
    assert shown.count("CAME WITH") == 1


async def test_on_the_screen_a_new_card_shows_the_picture_beside_received(at_the_yard: Any) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("bronze spi", "<ctrl+f>", "<ctrl+n>")
        assert "│ Indicator drop" in shown
        assert "heel" in shown


def test_what_it_came_with_is_told_for_each_form_where_nobody_knows_which(yard_book: Book) -> None:
    card = from_entry(yard_book, yard_book.entries["tap-spiral-point-aluminium-bronze"])
    card = replace(
        card, entry="", wanted={key: one for key, one in card.wanted.items() if key != "relief_form"}
    )
    for one, text in {**CAME, "wanted.surface": "thread-land"}.items():
        card = edited(card, one, text)
    form = CardForm(yard_book, card)
    form.go_to("after.drop")
    half = "\n".join(right_half(form))
    assert "Relief, if" in half
    assert half.index("eccentric") < half.index("flat")
