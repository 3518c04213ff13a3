"""A sheet without a wheel has a line for it, and says what the book would have cut in it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def card_of(book: Book, entry: str) -> Card:
    return from_entry(book, book.entries[entry])


def told(card: Card, book: Book) -> str:
    return " ".join(setup_sheet(work_out(card, book)).split())


def test_a_carbide_tool_without_a_wheel_is_told_to_want_diamond(book: Book) -> None:
    assert "Wheel: ________, of diamond or silicon carbide" in told(
        card_of(book, "carbide-drill-plain-steel"), book
    )


def test_one_of_high_speed_steel_is_not(book: Book) -> None:
    sheet = told(card_of(book, "tap-hand-plain-steel"), book)
    assert "Wheel: ________, of aluminium oxide or boron nitride" in sheet


def test_a_wheel_that_is_chosen_stands_there_alone(book: Book) -> None:
    sheet = told(replace(card_of(book, "carbide-drill-plain-steel"), wheel="the blue cup"), book)
    assert "Wheel: the blue cup" in sheet
    assert "of diamond or" not in sheet


def test_a_record_asks_for_no_wheel(book: Book) -> None:
    card = Card(family="carbide-drill", entry="carbide-drill-plain-steel")
    assert "________, of" not in told(finished(work_out(card, book), date(2026, 11, 26)), book)
    assert "________, of" in told(card, book)
