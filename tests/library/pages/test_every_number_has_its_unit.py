"""No number stands on the page of a calculation without its unit, in millimetres and in inches."""

from __future__ import annotations

import re

import pytest

from geometry.calculations import calculation, calculation_names
from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import Answer, answer
from library.pages.answer import answer_page
from library.pages.page import Checks, Page, Table, Values
from library.units.show import show_answer
from library.units.system import INCH, METRIC, Display
from tests.each import each

UNIT = re.compile(r" ?(?:mm2|in2|mm|in|deg|m/s|ft/min|rpm|tpi|%|percent|D)(?![a-z0-9])")
"""Units as they are shown, in the words of the README."""

NUMBER = re.compile(r"(?<![\w.])-?\d+(?:\.\d+)?(?![\w.]*\d)")
BARE = frozenset(
    row.title for row in QUANTITIES.values() if row.kind in {Kind.COUNT, Kind.RATIO, Kind.CHOICE}
)
"""What is counted, what is one thing in relation to another, and what is a word have no unit."""

COUNTED = frozenset({"hole circle", "whole turns", "holes", "spaces"})
"""Columns of what is counted."""

IN_WORDS = re.compile(r" (?:full )?threads| turns| times| of what| for each unit of length")
"""What stands in a sentence behind a number that is counted, or one thing in relation to another."""


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def answered(name: str, book: Book, display: Display) -> Answer:
    """The sample of a calculation, typed in millimetres."""
    sheet = calculation(name)
    typed = {
        key: value if isinstance(value, str) else shown(key, value) for key, value in sheet.sample.items()
    }
    found = answer(sheet, typed, book=book, display=display)
    assert found.result is not None, name
    return found


def shown(key: str, value: object) -> str:
    numbers = value if isinstance(value, tuple) else (value,)
    return ", ".join(show_answer(number, quantity(key), METRIC) for number in numbers)


def bare_numbers(page: Page) -> list[str]:
    """Every number of the page that has no unit, neither behind it nor in the heading of its column."""
    found: list[str] = []
    for block in (block for section in page.sections for block in section.blocks):
        match block:
            case Values():
                named = [one for one in block.values if one.title not in BARE]
                found += [f"{one.title}: {one.value}" for one in named if without(one.value)]
            case Table():
                cells = [one for row in block.rows for one in zip(block.heading[1:], row[1:], strict=False)]
                found += [
                    f"{head}: {cell}"
                    for head, cell in cells
                    if head not in COUNTED and without(f"{cell} {head.split()[-1]}") and without(cell)
                ]
            case Checks():
                found += [text for _, text in block.checks if without(text, in_words=True)]
    return found


def without(text: str, *, in_words: bool = False) -> bool:
    """Whether a number of a text has no unit; in a sentence whole things are counted too."""
    numbers = [one.end() for one in NUMBER.finditer(text) if "." in one[0] or not in_words]
    return any(not UNIT.match(text, end) and not (in_words and IN_WORDS.match(text, end)) for end in numbers)


@pytest.mark.parametrize("display", [METRIC, INCH], ids=["mm", "in"])
@each("name", calculation_names())
def test_every_number_of_every_calculation_has_its_unit(name: str, display: Display, book: Book) -> None:
    page = answer_page(answered(name, book, display), book, display)
    assert bare_numbers(page) == []
