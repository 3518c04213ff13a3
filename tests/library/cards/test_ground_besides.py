"""What is ground on a tool on its own, beside the relief that the settings of its card make, is told on the card."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.how_ground import ground_besides
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.starting import from_entry
from library.pages.as_text import as_text
from library.pages.card_answers import settings_answers
from library.pages.page import Page, Section
from library.pages.reader import Reader

STAINLESS = "tap-spiral-point-stainless-austenitic"


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def card_of(book: Book, entry: str) -> Card:
    return from_entry(book, book.entries[entry])


def test_the_gash_of_a_gun_tap_is_told_where_no_setting_of_the_card_makes_it(book: Book) -> None:
    job = work_out(card_of(book, STAINLESS), book)
    page = Page(
        "",
        tuple(
            Section("", tuple(one for one in part if one)) for part in settings_answers(job, "tap-chamfer")
        ),
    )
    text = " ".join(as_text(page, Reader(80)).split())
    assert "Gash of a gun tap: ground on its own, beside what stands here." in text
    assert "Spiral point of a gun tap, among the other calculations, tells how it is set." in text


def test_nothing_is_told_of_a_tool_without_such_a_part_and_once_its_calculation_is_in_the_job(
    book: Book,
) -> None:
    assert ground_besides(work_out(card_of(book, "tap-hand-plain-steel"), book)) == ""
    assert ground_besides(work_out(Card(), book)) == ""
    card = card_of(book, STAINLESS)
    assert ground_besides(work_out(card, book))
    wanted = edited(card, "wanted.spiral_point_angle", "10 deg")
    assert ground_besides(work_out(wanted, book)) == ""


def test_every_gun_tap_of_the_book_says_how_far_its_gash_runs_and_by_whom(book: Book) -> None:
    # A tool supplier's answer on spiral-point taps: about two threads past the chamfer.
    for entry in book.entries.values():
        if entry.family == "tap" and entry.title.startswith("Spiral-point tap"):
            value = entry.values["threads_beyond"]
            assert value.citation.label == "published", entry.id
            own = 1 if entry.id == "tap-spiral-point-aluminium-wrought" else 2
            assert value.usual is not None
            assert value.usual.number == own, entry.id
