"""What a sheet has no room for is said on it; where no paper bounds it, nothing is left out."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import Job, work_out
from library.setup_sheet.composing import compose
from library.setup_sheet.sheets import setup_sheet
from tests.library.setup_sheet.cards_on_paper import other
from tui.screens.cards.sheet import SheetScreen
from tui.session import Session
from tui.view.lines import text_of

LEFT_OUT = "Left out for want of room: how it is ground, what it means, as received; the card has them."


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


@pytest.fixture(scope="module")
def crowded(book: Book) -> Job:
    """A drill of two diameters, whose readings and settings fill the paper."""
    return work_out(other(book, "subland-drill-countersink-plain-steel"), book)


@pytest.mark.parametrize("form", ["text", "html"])
def test_a_sheet_without_room_says_what_it_goes_without_and_where_that_stands(
    crowded: Job, form: str
) -> None:
    sheet = setup_sheet(crowded, form)
    assert "As received" not in sheet
    assert LEFT_OUT in " ".join(sheet.split())


def test_a_sheet_with_room_for_all_says_nothing_of_it(book: Book) -> None:
    sheet = setup_sheet(work_out(other(book, "counterbore-plain-steel"), book))
    assert "As received --" in sheet
    assert "Left out" not in sheet


def test_as_markdown_and_on_the_screen_nothing_is_left_out(crowded: Job) -> None:
    screen = "\n".join(map(text_of, SheetScreen(Session(), crowded).text(80)))
    for sheet in (setup_sheet(crowded, "markdown"), screen):
        assert "Left out" not in sheet
        assert all(part in sheet for part in ("How it is ground", "What it means", "As received"))


def test_what_is_left_out_of_a_job_without_readings_as_received_does_not_name_them(
    crowded: Job, book: Book, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("library.setup_sheet.composing.ONE_PAGE", 0)
    bare = work_out(replace(crowded.card, received={}), book)
    texts = [
        text
        for part in compose(bare, bare.display).sections
        for block in part.blocks
        for text in getattr(block, "texts", ())
    ]
    (said,) = [one for one in texts if one.startswith("Left out")]
    assert "as received" not in said
