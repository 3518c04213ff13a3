"""What is never ground on a tool is told where somebody is about to grind it: on the card, and on its sheet."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Card, Tool, Wanted
from library.pages.as_text import as_text
from library.pages.card_answers import settings_answers
from library.pages.page import Page, Section
from library.setup_sheet.sheets import setup_sheet

SAID = "The flanks, crests and roots of the full thread: they are the size."


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


@pytest.mark.parametrize(("surface", "is_told"), [("thread-land", True), ("chamfer", False)])
def test_the_thread_of_a_tap_is_told_to_be_never_ground_where_its_land_is_the_surface_of_the_job(
    shipped: Book, surface: str, is_told: bool
) -> None:
    card = Card(family="tap", tool=Tool("T-8", thread="M8", flutes="3"), wanted={"surface": Wanted(surface)})
    job = work_out(card, shipped)
    blocks = [one for part in settings_answers(job, "") for one in part if one]
    on_card = " ".join(as_text(Page("", (Section("", tuple(blocks)),))).split())
    assert (SAID in on_card) is is_told
    assert (f"Never: {SAID}" in " ".join(setup_sheet(job).split())) is is_told
