"""What a new tool that was measured tells the book."""

from __future__ import annotations

from datetime import date

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Citation, Entry, Measure, Value
from library.calc.answer import answer
from library.calc.measured import SHEET, measured_values, share
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


@pytest.mark.parametrize(
    ("land", "diameter", "told"),
    [
        # .9 / 12.008 is .07495; of .075 D the land is .9006 again, of .07 D it would be .8406; derived.
        (0.9, 12.008, "0.075 D"),
        (3.0, 12.0, "0.25 D"),
        (1.0, 50.0, "0.02 D"),
        (2.2, 64.0, "0.0344 D"),
        (0.0, 12.0, "0.00 D"),
    ],
)
def test_a_land_as_a_share_of_the_diameter_gives_the_measured_land_back(
    land: float, diameter: float, told: str
) -> None:
    assert share(land, diameter) == told
    # An indicator shows hundredths of a millimetre.
    assert float(told.split(maxsplit=1)[0]) * diameter == pytest.approx(land, abs=0.005)


def test_flutes_of_the_book_are_not_learned_as_if_somebody_had_counted_them() -> None:
    flutes = Value("flutes", usual=Measure("6", 6.0), citation=Citation("from memory"))
    entry = Entry("r", "reamer", "Reamer", values={"flutes": flutes})
    texts = {"surface": "land", "diameter": "12", "land_width": "3", "drop": "0.33",
             "second_land_width": "1.5", "second_drop": "0.165"}  # fmt: skip
    for typed, learned in (({}, False), ({"flutes": "6"}, True)):
        found = answer(calculation(SHEET), texts | typed, entry=entry, book=Book({"r": entry}))
        assert ("flutes" in [one.key for one in measured_values(found, "r")]) is learned
