"""Where one turns the crank stands for which head the moves are, while nobody named it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.model import Card, Setting, Tool
from tui.keys import no_keys
from tui.view.card_form import CardForm
from tui.view.card_set_table import set_lines
from tui.view.lines import text_of

ASSUMED = "For an assumed head of 40 to 1."


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def set_table(book: Book, typed: dict[str, str]) -> list[str]:
    card = Card(family="countersink", tool=Tool("C-1", "12 mm", flutes="3"))
    form = CardForm(book, replace(card, settings={"index-moves": Setting(typed)} if typed else {}))
    form.go_to("settings.index-moves")
    return [text_of(one).rstrip() for one in set_lines(form, no_keys, 80)[0]]


def test_under_the_moves_stands_the_head_that_is_assumed(book: Book) -> None:
    lines = set_table(book, {})
    (at,) = [place for place, one in enumerate(lines) if " Index " in one]
    assert "13 turns" in lines[at]
    assert lines[at + 1].endswith(ASSUMED)


def test_a_head_that_was_named_is_no_assumption(book: Book) -> None:
    lines = set_table(book, {"index_ratio": "60"})
    assert any(" Index " in one and "20 turns" in one for one in lines)
    assert ASSUMED not in "\n".join(lines)
