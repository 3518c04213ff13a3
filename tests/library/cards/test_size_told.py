"""A size that tells no diameter, or one that no tool has, is told at its line; words may stay."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.issues import issues_of, keeps_open
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from tui.view.card_form import CardForm


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def job_of(book: Book, size: str, family: str = "twist-drill") -> Job:
    return work_out(Card(family=family, tool=Tool("D-1", size, flutes="2")), book)


def hint_of(book: Book, size: str, family: str = "twist-drill") -> str:
    (row,) = (one for one in CardForm(book, job_of(book, size, family).card).rows if one.way == "tool.size")
    return row.hint


@pytest.mark.parametrize("size", ["nan", "abc", "5 deg", "1/0", "MT2", "12 mm shank"])
def test_a_size_of_words_is_told_to_be_no_diameter_and_may_stay(book: Book, size: str) -> None:
    assert f"{size!r} tells no diameter; as words, such as MT2, it may stay." in hint_of(book, size)
    assert not [one for one in keeps_open(job_of(book, size)) if one.way == "tool.size"]


@pytest.mark.parametrize("size", ["1/2", "\u00bd", "1 1/2", "1\u00bd"])
def test_a_fraction_is_told_to_want_its_unit(book: Book, size: str) -> None:
    assert f"tells no diameter without its unit: write {size} in." in hint_of(book, size)
    assert job_of(book, f"{size} in").known_text("diameter") == f"{size} in"


@pytest.mark.parametrize(
    "size", ["", "12 mm", "12", "5/8 in", "#30", "letter Q", "6, 8, 10 mm", "6/8/10 mm", "1/4, 3/8 in"]
)
def test_a_size_that_tells_a_diameter_has_its_usual_hint(book: Book, size: str) -> None:
    assert "tells no diameter" not in hint_of(book, size)
    assert not [one for one in issues_of(job_of(book, size)) if one.way == "tool.size"]


def test_a_thread_as_the_size_of_a_tap_tells_its_diameter(book: Book) -> None:
    assert "tells no diameter" not in hint_of(book, "M12", "tap")


@pytest.mark.parametrize("size", ["-1", "0", "0 mm", "1e9", "6, 0, 10 mm"])
def test_a_diameter_that_no_tool_has_is_on_watch_at_its_line(book: Book, size: str) -> None:
    (found,) = (one for one in issues_of(job_of(book, size)) if one.way == "tool.size")
    assert found.state == "watch"
    assert found.text.startswith("Size: It is ")
    assert "it can be from 0.050 mm to 500.00 mm." in found.text


def test_what_may_be_two_steps_is_told_so(book: Book) -> None:
    assert "for steps write 8, 12 mm" in hint_of(book, "8/12", "step-drill")
