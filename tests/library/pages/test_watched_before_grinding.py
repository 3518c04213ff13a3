"""The end of a card tells no fault of the tool as it came that was measured again after grinding."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted
from library.pages.as_text import as_text
from library.pages.card_end import end_answers
from library.pages.page import Page, Section

DRILL = Card(
    family="twist-drill",
    tool=Tool("D-8", size="8 mm", flutes="2"),
    received={"lip_height_difference": ("0.1 mm",)},
    wanted={"point_angle": Wanted("118 deg"), "lip_relief_angle": Wanted("12 deg")},
)
UNLIKE = "One lip is 0.100 mm higher than the other"


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    return open_book(tmp_path_factory.mktemp("shop"))


def at_the_end(card: Card, book: Book) -> str:
    parts = end_answers(work_out(card, book), "")
    blocks = tuple(Section("", (block,)) for part in parts for block in part if block is not None)
    return " ".join(as_text(Page("", blocks)).split())


def test_unlike_lips_stay_on_watch_until_they_are_measured_again(book: Book) -> None:
    diameter = {"diameter": Inspection(("8 mm",))}
    assert UNLIKE in at_the_end(replace(DRILL, after=diameter), book)
    ground = diameter | {"lip_height_difference": Inspection(("0.02 mm",), "at most 0.02 mm")}
    assert UNLIKE not in at_the_end(replace(DRILL, after=ground), book)
    # An empty line of the inspection is no reading.
    untold = diameter | {"lip_height_difference": Inspection(("",), "at most 0.02 mm")}
    assert UNLIKE in at_the_end(replace(DRILL, after=untold), book)
