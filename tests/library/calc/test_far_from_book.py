"""A reading far outside what the book has for a tool is told as one, and one that a tool may have is not."""

from __future__ import annotations

import math

import pytest

from geometry.calculations import calculation
from library.book.model import Book, Citation, Entry, Measure, Value
from library.calc.answer import Answer, answer

LOW, USUAL, HIGH = (Measure(f"{one} deg", math.radians(one)) for one in (3, 5, 7))
GUESS = Citation("from memory")
REAMER = Entry(
    "r",
    "reamer",
    "Reamer",
    values={
        "land_relief_angle": Value("land_relief_angle", LOW, USUAL, HIGH, GUESS),
        "rake_angle": Value("rake_angle", usual=Measure("0 deg", 0.0), citation=GUESS),
    },
)


def read(relief: float, name: str = "measured-tool", rake: float = 0.0) -> Answer:
    """The readings of an even cam on a tool of 12 mm; derived."""
    fall = math.tan(math.radians(relief))
    texts = {
        "surface": "land",
        "diameter": "12 mm",
        "land_width": "2 mm",
        "drop": f"{2 * fall:.6f} mm",
        "second_land_width": "1 mm",
        "second_drop": f"{fall:.6f} mm",
        "face_offset": f"{6 * math.sin(math.radians(rake)):.6f} mm",
    }
    sheet = calculation(name)
    asked = {key: text for key, text in texts.items() if sheet.field(key) is not None}
    return answer(sheet, asked, entry=REAMER, book=Book({"r": REAMER}))


def watched(found: Answer) -> list[str]:
    assert found.result is not None
    return [str(one.sentence) for one in found.result.checks if one.state == "watch"]


@pytest.mark.parametrize("name", ["measured-tool", "relief-from-reading"])
@pytest.mark.parametrize(
    ("relief", "is_far"), [(5, False), (9.9, False), (10.1, True), (26.57, True), (1, False)]
)
def test_a_relief_far_outside_the_book_is_a_watch_that_comes_first(
    name: str, relief: float, is_far: bool
) -> None:
    found = read(relief, name)
    told = [one for one in watched(found) if "that the book has for this tool" in one]
    assert bool(told) is is_far
    if is_far:
        assert found.result is not None
        assert "far outside" in str(found.result.checks[0].sentence)


def test_the_range_of_the_book_and_what_was_read_stand_in_the_sentence() -> None:
    found = read(26.57)
    assert found.result is not None
    parts = found.result.checks[0].sentence.parts
    told = {key: round(math.degrees(one.value), 1) for key, one in parts.items() if not isinstance(one, str)}
    assert told == {"read": 26.6, "low": 3.0, "high": 7.0}


@pytest.mark.parametrize(("rake", "is_far"), [(2.5, False), (-8, True)])
def test_so_is_a_rake(rake: float, is_far: bool) -> None:
    assert bool([one for one in watched(read(5, rake=rake)) if "The rake" in one]) is is_far


def test_where_the_form_stays_open_one_of_the_two_within_the_range_is_enough() -> None:
    texts = {"surface": "land", "diameter": "12 mm", "land_width": "2 mm", "drop": "0.175 mm"}
    # As an even cam it is 5 deg, as one flat 14.8 deg; derived.
    found = answer(calculation("relief-from-reading"), texts, entry=REAMER, book=Book({"r": REAMER}))
    assert not watched(found)


MILL = Entry(
    "m",
    "end-mill",
    "Mill",
    values={
        "dish_depth": Value(
            "dish_depth", Measure("0.001 in", 0.0254), high=Measure("0.002 in", 0.0508), citation=GUESS
        )
    },
)


@pytest.mark.parametrize(
    ("dish", "is_far"),
    # Derived: 10 mm x tan of the angle; .0254 mm is .1455 deg, .0508 mm is .2911 deg.
    [("1.5 deg", True), ("0.2 deg", False), ("0.145 deg", True), ("0.147 deg", False), ("0.295 deg", True)],
)
def test_a_dish_typed_as_an_angle_is_held_against_the_depth_that_the_book_has(
    dish: str, is_far: bool
) -> None:
    texts = {"diameter": "20 mm", "relief_angle": "2 deg", "dish_angle": dish}
    found = answer(calculation("end-teeth"), texts, entry=MILL, book=Book({"m": MILL}))
    told = [one for one in watched(found) if "both are one measure" in one]
    assert bool(told) is is_far


def test_the_depth_that_the_book_has_is_not_doubted() -> None:
    texts = {"diameter": "20 mm", "relief_angle": "2 deg", "dish_depth": "0.04 mm"}
    assert not watched(answer(calculation("end-teeth"), texts, entry=MILL, book=Book({"m": MILL})))
