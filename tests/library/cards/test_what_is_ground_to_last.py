"""How many sharpenings are left is told with what is ground in them: not the land, though this job may grind one."""

from __future__ import annotations

import pytest

from geometry.quantities import quantity
from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.history import history
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.pages.as_text import as_text
from library.pages.card_end import end_answers
from library.pages.life import life_page
from library.pages.page import Page, Section
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC
from tests.library.cards.test_land_in_facets import REAMER

DRILL = {
    "wanted.surface": "lip",
    "received.diameter": "12 mm",
    "settings.size-loss.usable_length": "4 mm",
    "settings.size-loss.back_taper": "0.05 mm",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def card_of(family: str, values: dict[str, str]) -> Card:
    card = Card("2026-11-26-01", family=family, tool=Tool("X-12", flutes="2"))
    for place, text in {**values, "settings.size-loss.stock_per_sharpening": "0.05 mm"}.items():
        card = edited(card, place, text)
    return card


def end_page(job: Job) -> str:
    blocks = tuple(one for part in end_answers(job, "") for one in part if one)
    return " ".join(as_text(Page("", (Section("", blocks),))).split())


@pytest.mark.parametrize("margin", ["0.2 mm", "0 mm"])
def test_on_a_job_that_grinds_the_land_the_count_is_told_to_be_by_the_faces(book: Book, margin: str) -> None:
    # Off the land by s, the edge of a facet of relief a goes in by s / cos a, twice that of the diameter: 0.1 mm of 0.05.
    # The count is of other stock, by the faces, which costs none on a margin and 2 s tan a, 0.009 mm, behind none.
    job = work_out(card_of("reamer", REAMER | {"wanted.margin_width": margin}), book)
    assert job.choice.surface == "land"
    assert "by grinding the faces" in end_page(job)
    assert "sharpening of the faces" in " ".join(setup_sheet(job).split())


def test_on_a_tool_that_is_ground_on_its_end_the_count_is_told_to_be_by_that(book: Book) -> None:
    job = work_out(card_of("twist-drill", DRILL), book)
    assert "by grinding the end" in end_page(job)
    assert "sharpening of the end" in " ".join(setup_sheet(job).split())


def test_the_life_of_a_tool_sends_to_the_card_that_says_what_is_ground(book: Book) -> None:
    found = history("X-12", [card_of("reamer", REAMER)], book)
    assert "by grinding the faces or the end as that card says" in " ".join(
        as_text(life_page(found, METRIC)).split()
    )


def test_the_line_in_which_the_stock_is_typed_says_that_none_off_a_land_counts() -> None:
    line = quantity("stock_per_sharpening")
    assert "off face or end" in line.title
    assert "off a land does not count" in line.definition
