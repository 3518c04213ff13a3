"""A number out of a range of the book is no change of it: nothing is to be said, nothing is learned."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.learn import lessons
from library.cards.model import Card, Tool, Wanted
from library.setup_sheet.wanted import wanted as wanted_on_paper
from library.units.system import METRIC
from tui.view.card_quantity_rows import wanted_rows
from tui.view.card_row import Opened


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def counterbore(value: str, book: str = "6 to 8 deg", key: str = "end_relief_angle") -> Card:
    return Card(
        entry="counterbore-m8",
        family="counterbore",
        tool=Tool("C-8", "15 mm", flutes="3"),
        wanted={key: Wanted(value, book, "a user guide")},
    )


def called_for(card: Card, book: Book) -> bool:
    """Whether a reason is asked for: by a watch, and by a line for it."""
    job = work_out(card, book)
    watched = any("Say why" in one.text for one in issues_of(job))
    assert watched == any(row.way.endswith(".reason") for row in wanted_rows(job, Opened()))
    return watched


@pytest.mark.parametrize("value", ["6 deg", "7 deg", "8 deg", "420 min"])
def test_a_number_within_the_range_wants_no_reason_and_teaches_nothing(shipped: Book, value: str) -> None:
    card = counterbore(value)
    assert not called_for(card, shipped)
    assert lessons(card) == ()


@pytest.mark.parametrize(
    ("value", "book"), [("9 deg", "6 to 8 deg"), ("5.9 deg", "6 to 8 deg"), ("7 deg", "6 deg")]
)
def test_a_number_outside_it_or_beside_a_usual_value_is_a_change(
    shipped: Book, value: str, book: str
) -> None:
    card = counterbore(value, book)
    assert called_for(card, shipped)
    assert [one.value for one in lessons(card)] == [value]


def test_a_limit_and_a_share_of_the_diameter_are_ranges_too(shipped: Book) -> None:
    # A tenth to a fifth of 15 mm are 1.5 to 3 mm.
    assert not called_for(counterbore("12 deg", "at most 18 deg"), shipped)
    assert called_for(counterbore("19 deg", "at most 18 deg"), shipped)
    assert not called_for(counterbore("2 mm", "0.1 D to 0.2 D", "land_width"), shipped)
    assert called_for(counterbore("3.2 mm", "0.1 D to 0.2 D", "land_width"), shipped)
    assert lessons(counterbore("2 mm", "0.1 D to 0.2 D", "land_width")) == ()


def test_the_sheet_says_that_it_was_taken_out_of_the_range(shipped: Book) -> None:
    facts = str(list(wanted_on_paper(work_out(counterbore("7 deg"), shipped), METRIC)))
    assert "7 deg, along the axis" in facts
    assert "within the book's 6 to 8 deg" in facts
