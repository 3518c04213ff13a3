"""The page of each family as it was last read by a person.

A stored page holds no number that is not checked by hand elsewhere; it shows when words, order or layout change.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from library.book.model import Book
from library.cards.job import work_out
from library.cards.model import Card
from library.setup_sheet.sheets import setup_sheet
from library.units.system import INCH, METRIC

ONE_PAGE = 78
"""Lines of a page of A4 in nine points, ten to the line, with a finger's breadth of margin."""


def same(text: str, file: Path) -> None:
    if os.environ.get("HEELCLEAR_REWRITE_PAGES"):
        file.write_text(text, encoding="utf-8", newline="\n")
    assert text == file.read_text(encoding="utf-8")


def test_the_text_of_each_family(family: str, family_card: Card, sheet_book: Book, stored: Path) -> None:
    same(setup_sheet(work_out(family_card, sheet_book)), stored / f"{family}.txt")


@pytest.mark.parametrize(("form", "ending"), [("markdown", "md"), ("html", "html")])
def test_the_other_forms(form: str, ending: str, tap_card: Card, sheet_book: Book, stored: Path) -> None:
    same(setup_sheet(work_out(tap_card, sheet_book), form), stored / f"tap.{ending}")


def test_the_same_in_inches(tap_card: Card, sheet_book: Book, stored: Path) -> None:
    same(setup_sheet(work_out(tap_card, sheet_book), "text", INCH), stored / "tap-inch.txt")


def test_every_text_prints_on_one_page_of_eighty_ascii_columns(family_card: Card, sheet_book: Book) -> None:
    for display in (METRIC, INCH):
        text = setup_sheet(work_out(family_card, sheet_book), "text", display)
        lines = text.splitlines()
        assert text.isascii()
        assert max(map(len, lines)) <= 80
        assert len(lines) <= ONE_PAGE
        assert not any(line != line.rstrip() for line in lines)
