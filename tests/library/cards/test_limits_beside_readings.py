"""What a reading is held against stands in the unit that the reading was typed in, that of the card beside it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.inspecting import verdicts
from library.cards.job import work_out
from library.cards.model import Card, Inspection
from library.pages.card_answers import after_answers
from library.pages.page import Named, Values


def told(card: Card, book: Book) -> dict[str, Named]:
    blocks = [block for part in after_answers(work_out(card, book), "drop") for block in part]
    return {one.title.strip(): one for block in blocks if isinstance(block, Values) for one in block.values}


@pytest.fixture
def in_thou(job: Card) -> Card:
    # 0.8 mm with 0.025 mm either way, in thou: 0.775 / 0.0254 = 30.512 and 0.825 / 0.0254 = 32.480, each to the side that passes.
    return replace(
        job,
        units="mm",
        after={"drop": Inspection(("31 thou", "31 thou", "34 thou", "32 thou"), "0.8 mm", "0.025 mm")},
    )


def test_limits_of_a_metric_card_stand_in_thou_over_readings_in_thou(in_thou: Card, book: Book) -> None:
    found = told(in_thou, book)
    assert (found["may be"].value, found["may be"].below) == (
        "30.52 thou to 32.48 thou",
        ("0.775 mm to 0.825 mm",),
    )
    assert (found["shall be"].value, found["shall be"].below[0]) == ("31.5 thou", "0.800 mm")
    assert found["spread"].value == "3 thou"


def test_how_far_a_reading_is_off_stands_in_its_own_unit(in_thou: Card, book: Book) -> None:
    (verdict,) = (one for one in verdicts(work_out(in_thou, book)) if one.key == "drop")
    assert [one.text_off for one in verdict.marks] == ["", "", "1.52 thou over the tolerance", ""]


def test_readings_in_the_unit_of_the_card_have_their_limits_once(job: Card, book: Book) -> None:
    found = told(replace(job, after={"drop": Inspection(("0.80 mm",), "0.8 mm", "0.025 mm")}), book)
    assert (found["may be"].value, found["may be"].below) == ("0.775 mm to 0.825 mm", ())
