"""What is wanted now says nothing of how a tool was ground before: the form that it came with."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs, reliefs_after
from library.cards.job import work_out
from library.cards.model import Card
from tests.begun_cards import begun_bare

SIX = {
    "tool.size": "1 in", "tool.flutes": "6", "wanted.included_angle": "82 deg",
    "received.land_width": "1/8 in", "received.land_measured_as": "arc",
    "received.drop": ", ".join(["18 thou"] * 6),
}  # fmt: skip


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def countersink(book: Book, **more: str) -> Card:
    return begun_bare(book, "countersink-multi-flute-90-plain-steel", **{**SIX, **more})


def forms(card: Card, book: Book) -> set[str]:
    return {form for one in received_reliefs(work_out(card, book)) for form in one.angles}


def test_another_wanted_form_leaves_the_relief_that_was_found(shipped: Book) -> None:
    before = received_reliefs(work_out(countersink(shipped), shipped))
    after = received_reliefs(work_out(countersink(shipped, **{"wanted.relief_form": "flat"}), shipped))
    assert [one.angles for one in before] == [one.angles for one in after]
    # 18 thou in 1/8 in along the circle of 1 in, by hand: the cone of 82 degrees leans by its cosine of 41 degrees.
    behind = 2 * 3.175 / 25.4
    fall = math.degrees(math.atan(0.4572 / 12.7 / behind * math.cos(math.radians(41))))
    assert [round(math.degrees(one.angles["eccentric"]), 1) for one in after] == [round(fall, 1)] * 6


def test_what_was_found_on_the_tool_says_its_form(shipped: Book) -> None:
    assert forms(countersink(shipped, **{"received.relief_form": "flat"}), shipped) == {"flat"}


def test_a_way_that_was_chosen_for_now_says_nothing_of_before(shipped: Book) -> None:
    card = countersink(shipped, **{"wanted.relief_method": "wheel-head-height"})
    assert forms(card, shipped) == {"eccentric"}


def test_of_the_same_job_again_with_another_form_than_the_books_both_are_told(shipped: Book) -> None:
    card = replace(countersink(shipped, **{"wanted.relief_form": "flat"}), again="2026-01-01-01")
    assert forms(card, shipped) == {"eccentric", "flat"}


def test_where_no_book_has_a_usual_form_both_are_told(shipped: Book) -> None:
    card = replace(countersink(shipped), entry="")
    bare = replace(card, wanted={key: one for key, one in card.wanted.items() if key != "relief_form"})
    assert forms(edited(bare, "wanted.relief_form", "flat"), shipped) == {"eccentric", "flat"}


def test_after_grinding_the_form_that_was_ground_counts(shipped: Book) -> None:
    card = countersink(
        shipped,
        **{"wanted.relief_form": "flat", "received.relief_form": "eccentric", "after.drop": "18 thou"},
    )
    job = work_out(card, shipped)
    assert {form for one in reliefs_after(job) for form in one.angles} == {"flat"}
    assert {form for one in received_reliefs(job) for form in one.angles} == {"eccentric"}
