"""Where no relief stands behind the drops that were read, a card says why and what is missing to have it."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.inspecting import received_reliefs
from library.cards.job import work_out
from library.cards.model import Card, Tool, Wanted
from library.cards.untold_relief import why_untold
from library.pages.as_text import as_text
from library.pages.card_answers import received_answers
from library.pages.page import Page, Section
from library.setup_sheet.sheets import setup_sheet


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def drill(**received: str) -> Card:
    """A drill of 10 mm whose lips are ground flat on a work head."""
    wanted = {
        "surface": "lip",
        "relief_method": "work-head",
        "point_angle": "118 deg",
        "lip_relief_angle": "12 deg",
    }
    measured = {"land_width": "2.6 mm", "land_measured_as": "arc", "web_thickness": "1.5 mm", **received}
    return Card(
        family="twist-drill",
        tool=Tool("D-1", "10 mm", flutes="2"),
        received={key: (text,) for key, text in measured.items() if text},
        wanted={key: Wanted(text) for key, text in wanted.items()},
    )


def beside(card: Card, book: Book) -> str:
    blocks = [
        one for part in received_answers(work_out(card, book), "drop") for one in part if one is not None
    ]
    return " ".join(as_text(Page("", (Section("", tuple(blocks)),))).split())


def test_a_drop_on_a_flat_lip_says_why_no_relief_is_told_and_what_to_give(shipped: Book) -> None:
    said = beside(drill(drop="0.3 mm"), shipped)
    assert "No relief is told from the drop: the lip is counted as flat facets" in said
    assert "give the line Relief form as eccentric on the page Received" in said
    paper = " ".join(setup_sheet(work_out(drill(drop="0.3 mm"), shipped)).split())
    assert "Relief found: not told, flat facets" in paper


def test_what_it_asks_for_tells_the_relief(shipped: Book) -> None:
    job = work_out(drill(drop="0.3 mm", relief_form="eccentric"), shipped)
    assert why_untold(job) == ""
    (found,) = received_reliefs(job)
    # By hand: it fell evenly over an arc of 2.6 mm.
    assert math.tan(found.angles["eccentric"]) == pytest.approx(0.3 / 2.6)


def test_nothing_is_said_where_no_drop_was_read(shipped: Book) -> None:
    assert why_untold(work_out(drill(), shipped)) == ""
    assert "No relief" not in beside(drill(), shipped)


def test_a_land_behind_a_margin_is_said_to_be_one_and_asks_for_nothing_that_would_not_help(
    shipped: Book,
) -> None:
    card = Card(
        family="reamer",
        tool=Tool("R-1", "20 mm", flutes="6"),
        received={"land_width": ("2 mm",), "drop": ("0.2 mm",)},
        wanted={key: Wanted(text) for key, text in {
            "surface": "land", "relief_method": "tooth-rest-height", "land_relief_angle": "8 deg", "margin_width": "0.3 mm",
        }.items()},
    )  # fmt: skip
    said = why_untold(work_out(card, shipped))
    assert said.startswith(
        "No relief is told from the drop: behind the edge of the land lies a margin or a second facet"
    )
    assert "If it fell evenly" not in said
    even = replace(card, received={**card.received, "relief_form": ("eccentric",)})
    assert not received_reliefs(work_out(even, shipped))
