"""What of a search counts for nothing is told, while it is typed too, and names what was sought."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.book.rows import Rows
from library.search.finding import by_condition
from library.search.query import parse
from library.search.ranked import Ranked
from library.units.system import METRIC


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


@pytest.mark.parametrize("typed", ["rake>abc", "rake >=x"])
def test_a_condition_with_a_word_for_its_number_is_told_to_count_for_nothing(book: Book, typed: str) -> None:
    rows = book.rows if isinstance(book.rows, Rows) else Rows.of(book.rows)
    found = by_condition(rows, typed, METRIC)
    assert len(found.numbers) == len(rows)
    assert f"{typed!r} has nothing to compare with; write it such as 'rake>8'." in found.told


@pytest.mark.parametrize(
    "typed", ["rake>", "rake >=", "rake>8", "land<=2m", "land<=2mm", "style=fl", "rake>-1"]
)
def test_of_one_that_has_a_number_or_is_getting_it_nothing_is_said(book: Book, typed: str) -> None:
    rows = book.rows if isinstance(book.rows, Rows) else Rows.of(book.rows)
    assert "has nothing to compare" not in by_condition(rows, typed, METRIC).told


def test_a_condition_with_a_word_that_is_no_number_is_refused_once_it_is_typed() -> None:
    (said,) = parse("rake>abc").told
    assert said.startswith("'rake>abc': ")


def test_a_word_by_which_nothing_is_called_is_told_in_a_whole_sentence() -> None:
    told = Ranked([1], left_out=("%s", "{}")).told
    assert told == "No tool here is called '%s' or '{}'; these were found without those words."
