"""What a new tool that was measured tells the book."""

from __future__ import annotations

from datetime import date

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.calc.answer import answer
from library.calc.measured import SHEET, measured_values
from library.units.system import INCH, METRIC, Display


@pytest.mark.parametrize(
    ("typed", "display", "told"),
    [("12", METRIC, "12 mm"), (".5", INCH, ".5 in"), ("1/2 in", METRIC, "1/2 in"), ("12 mm", INCH, "12 mm")],
)
def test_the_note_says_the_size_of_the_tool_with_its_unit(typed: str, display: Display, told: str) -> None:
    texts = {
        "surface": "land",
        "diameter": typed,
        "land_width": "3 mm",
        "drop": "0.33 mm",
        "second_land_width": "1.5 mm",
        "second_drop": "0.165 mm",
    }
    found = answer(calculation(SHEET), texts, book=Book({}), display=display)
    lessons = measured_values(found, "t-12", display, lambda: date(2026, 11, 26))
    assert lessons
    assert {one.note for one in lessons} == {f"A new tool of {told}."}
