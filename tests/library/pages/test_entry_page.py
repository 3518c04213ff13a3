"""The page of an entry: a line for each value, and everything else within reach."""

from __future__ import annotations

from statistics import median

import pytest

from geometry.quantities import quantity
from library.book.grades import GRADES, grade
from library.book.model import Book, Citation, Entry, Measure, Value
from library.book.opening import open_book
from library.calc.cautions import cautions_for
from library.calc.citation import cited
from library.pages.as_text import as_text
from library.pages.entry import GUIDE, entry_page
from library.pages.page import Table
from library.pages.reader import Reader

READER = Reader(80)
ARMS_LENGTH = 40
"""Lines that are read at once beside the machine."""


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def told(book: Book, entry: Entry, *, sources: bool = False, cautions: bool = False) -> str:
    return as_text(entry_page(book, entry, sources=sources, cautions=cautions), READER)


def joined(text: str) -> str:
    return " ".join(text.split())


def test_the_median_entry_is_read_at_once(book: Book) -> None:
    assert median(len(told(book, one).splitlines()) for one in book.entries.values()) <= ARMS_LENGTH


def test_every_value_of_every_entry_is_one_line_with_its_numbers_and_a_tag_that_the_foot_explains(
    book: Book,
) -> None:
    for entry in book.entries.values():
        text = told(book, entry)
        foot = joined(text.rpartition("\n\n")[2])
        for key, value in entry.values.items():
            (line,) = [one for one in text.splitlines() if one.startswith(f"{quantity(key).title}  ")]
            numbers = [one.text for one in (value.usual, value.low, value.high) if one is not None]
            assert all(f" {number}" in line for number in numbers), (entry.id, key)
            letter, _, number = line.split()[-1].removesuffix("+").removesuffix("r").partition("[")
            assert letter == grade(value.citation, book.sources), (entry.id, key)
            assert f"{letter[0]} {GRADES[letter[0]]}" in foot.partition("Letters:")[2], (entry.id, key)
            source = book.sources.get(value.citation.document)
            assert bool(number) == (source is not None)
            assert source is None or f"[{number} {source.title}" in foot, (entry.id, key)


def test_what_is_ground_and_what_never_is_told_of_every_entry(book: Book) -> None:
    for entry in book.entries.values():
        labels = [line.split(maxsplit=1)[0] for line in told(book, entry).splitlines() if line[:1].isupper()]
        wanted = [label for label in GUIDE.values() if label != "NOTE" or entry.notes]
        assert [label for label in labels if label in GUIDE.values()] == wanted, entry.id


def test_sources_in_full_leave_no_note_and_no_source_out(book: Book) -> None:
    for entry in book.entries.values():
        text = joined(told(book, entry, sources=True))
        for value in entry.values.values():
            for one in (value, *value.also):
                assert joined(cited(book, one.citation, caveat=False)) in text, (entry.id, value.key)
                source = book.sources.get(one.citation.document)
                assert source is None or joined(source.caveat) in text, (entry.id, value.key)
                assert joined(one.note) in text, (entry.id, value.key)
            assert joined(value.disagreement) in text
        for paragraph in book.families[entry.family].texts.values():
            assert joined(paragraph) in text, entry.id


def test_cautions_in_full_leave_none_out(book: Book) -> None:
    for entry in book.entries.values():
        text = joined(told(book, entry, cautions=True))
        for caution in cautions_for(None, entry, book):
            assert f"{caution.title}: {joined(caution.text)}" in text, (entry.id, caution.id)
            assert joined(cited(book, caution.citation)) in text, (entry.id, caution.id)


def test_the_two_lines_of_cautions_stand_last_and_say_where_all_of_them_are(book: Book) -> None:
    for entry in book.entries.values():
        *_, first, second = told(book, entry).splitlines()
        assert first.startswith("CAUTION  under marked speed | "), entry.id
        assert second.endswith("--cautions"), entry.id


def small(**values: Value) -> tuple[Book, Entry]:
    entry = Entry("one", "tap", "One", values=values)
    return Book({"one": entry}), entry


def table(book: Book, entry: Entry) -> Table:
    return next(
        block
        for section in entry_page(book, entry).sections
        for block in section.blocks
        if isinstance(block, Table)
    )


def test_a_value_of_the_shop_a_document_told_twice_and_an_unreadable_one_have_their_tags() -> None:
    here, there = Citation("published", "Manual", "page 2"), Citation("published", "Manual", "page 9")
    found = table(
        *small(
            flutes=Value("flutes", usual=Measure("4"), citation=here, layer="shop"),
            rake_angle=Value("rake_angle", low=Measure("3 deg"), citation=there, note="At the edge."),
            diameter=Value("diameter", usual=Measure("8 mm"), citation=Citation("shop"), layer="shop"),
            land_width=Value("land_width", unread=True),
        )
    )
    assert found.rows == (
        ("Flutes", "4", "", "", "P -[1]"),
        ("Rake angle", "", "3 deg", "", "-[1]+"),
        ("Diameter", "8 mm", "", "", "P"),
        ("Land width", "not readable", "", "", ""),
    )
