"""Entries side by side tell how much the source of each value carries, and what the letters mean."""

from __future__ import annotations

from library.book.model import Book, Citation, Entry, Measure, Source, Value
from library.pages.comparison import legends, side_by_side

BOOK = Book({}, sources={"manual": Source("manual", "A manual", grade="M")})


def _entry(name: str, citation: Citation, note: str = "") -> Entry:
    flutes = Value("flutes", usual=Measure("4", 4.0), citation=citation, note=note)
    return Entry(name, "tap", name, values={"flutes": flutes})


PAIR = (
    _entry("one", Citation("published", "manual", "table 2")),
    _entry("other", Citation("from memory"), "Count them."),
)


def test_each_column_has_the_letter_of_its_source_and_no_number_of_a_document() -> None:
    (row,) = (one for one in side_by_side(BOOK, PAIR).rows if one.title == "Flutes")
    assert row.cells == ("4  M", "4  ?+")
    assert row.mark == "="


def test_the_letters_that_stand_there_are_explained_and_no_others() -> None:
    assert legends(BOOK, PAIR)[1] == "M manual, ? guess, + more"
