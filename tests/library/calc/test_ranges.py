"""A range of the book fills nothing until a person takes its low, its middle or its high."""

from __future__ import annotations

import math

import pytest

from library.book.model import Citation, Entry, Measure, Value
from library.calc.answer import answer
from library.calc.ranges import read_range, said
from library.calc.report import as_data
from library.units.system import INCH
from tests.library.calc.samples import BOOK, degrees, relief_sheet, tool

SHEET = relief_sheet()
RANGE = tool("countersink", degrees("cone_relief_angle", 5, None, 15))
AT_MOST = tool("countersink", degrees("cone_relief_angle", None, None, 18))
AT_LEAST = tool("countersink", degrees("cone_relief_angle", 8))


@pytest.mark.parametrize(
    ("entry", "words"), [(RANGE, "5 to 15 deg"), (AT_MOST, "at most 18 deg"), (AT_LEAST, "at least 8 deg")]
)
def test_a_range_or_a_limit_leaves_the_input_open_and_the_sentence_says_what_the_book_has(
    entry: Entry, words: str
) -> None:
    found = answer(SHEET, {}, entry=entry, book=BOOK)
    assert "relief_angle" not in found.inputs
    assert said(found.offers["relief_angle"]) == words
    (issue,) = found.issues
    assert issue.text == f"Give relief_angle, such as 8 deg; the book has {words} (from memory)."


@pytest.mark.parametrize(("word", "degree"), [("low", 5), ("middle", 10), ("HIGH", 15)])
def test_a_word_takes_that_end_of_the_range(word: str, degree: float) -> None:
    found = answer(SHEET, {"relief_angle": word}, entry=RANGE, book=BOOK)
    one = found.inputs["relief_angle"]
    assert one.value == pytest.approx(math.radians(degree))
    assert (one.text, one.origin, one.surface) == (f"{degree} deg", "given", "cone")
    assert one.recommended is not None
    assert found.offers == {}
    assert found.result is not None


def test_a_relief_may_be_taken_by_the_key_of_its_surface() -> None:
    found = answer(SHEET, {"cone_relief_angle": "middle"}, entry=RANGE, book=BOOK)
    assert found.inputs["relief_angle"].value == pytest.approx(math.radians(10))


@pytest.mark.parametrize("letter", ["l", "m", "h", "lo", "mid"])
def test_the_words_are_not_shortened(letter: str) -> None:
    found = answer(SHEET, {"relief_angle": letter}, entry=RANGE, book=BOOK)
    assert [one.key for one in found.issues] == ["relief_angle"]
    assert not found.issues[0].missing


def test_a_limit_has_one_end_only() -> None:
    for word in ("low", "middle"):
        (issue,) = answer(SHEET, {"relief_angle": word}, entry=AT_MOST, book=BOOK).issues
        assert (
            issue.text
            == f"relief_angle: the book has at most 18 deg, which has no {word}; give high or a number."
        )
    assert answer(SHEET, {"relief_angle": "high"}, entry=AT_MOST, book=BOOK).result is not None


def test_a_word_without_a_book_is_told_to_be_a_number() -> None:
    texts = [one.text for one in answer(SHEET, {"surface": "cone", "relief_angle": "low"}).issues]
    assert (
        "relief_angle: low takes the low of the book's range, and the book has nothing for it; give a number."
        in texts
    )


def test_a_middle_of_a_whole_count_must_be_whole() -> None:
    even = Value("flutes", low=Measure("3", 3), high=Measure("5", 5))
    odd = Value("flutes", low=Measure("2", 2), high=Measure("3", 3))
    typed = {"surface": "cone", "relief_angle": "8", "flutes": "middle"}
    assert answer(SHEET, typed, entry=tool("countersink", even), book=BOOK).inputs["flutes"].value == 4
    (issue,) = answer(SHEET, typed, entry=tool("countersink", odd), book=BOOK).issues
    assert "cannot be taken here" in issue.text


def test_a_share_of_the_diameter_is_taken_with_the_diameter() -> None:
    share = Value(
        "primary_land",
        low=Measure("0.02 D", 0.02, per_diameter=True),
        high=Measure("0.04 D", 0.04, per_diameter=True),
    )
    typed = {"surface": "cone", "relief_angle": "8", "primary_land": "middle", "diameter": "1 in"}
    found = answer(SHEET, typed, entry=tool("countersink", share), book=BOOK, display=INCH)
    # 0.03 of an inch, by hand.
    assert found.inputs["primary_land"].value == pytest.approx(0.03 * 25.4)
    del typed["diameter"]
    assert answer(SHEET, typed, entry=tool("countersink", share), book=BOOK).result is None


def test_a_value_with_a_usual_one_fills_it_and_still_gives_its_ends() -> None:
    usual = tool("countersink", degrees("cone_relief_angle", 6, 8, 10))
    assert answer(SHEET, {}, entry=usual, book=BOOK).inputs["relief_angle"].text == "8 deg"
    assert (
        answer(SHEET, {"relief_angle": "high"}, entry=usual, book=BOOK).inputs["relief_angle"].text
        == "10 deg"
    )


def test_what_the_book_offers_is_in_the_data() -> None:
    data = as_data(answer(SHEET, {}, entry=RANGE, book=BOOK), BOOK)
    assert data["offers"] == {"relief_angle": {"book": "5 to 15 deg", "source": "from memory", "note": ""}}
    assert "relief_angle" not in data["inputs"]


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        ("5 deg", "15 deg", "5 to 15 deg"),
        ("0.02 D", "0.04 D", "0.02 to 0.04 D"),
        ("7 deg 30 min", "9 deg", "7 deg 30 min to 9 deg"),
        ("1/64 in", "0.5 mm", "1/64 in to 0.5 mm"),
        ("2", "4", "2 to 4"),
    ],
)
def test_a_range_in_words_names_the_unit_once_where_it_is_the_same(low: str, high: str, words: str) -> None:
    key = "flutes" if low == "2" else "primary_land" if "deg" not in low else "relief_angle"
    value = Value(key, low=Measure(low), high=Measure(high), citation=Citation("shop"))
    assert said(value) == words
    back = read_range(key, words)
    assert back is not None
    assert back.low is not None
    assert back.high is not None
    assert (back.low.text, back.high.text) == (low, high)


@pytest.mark.parametrize("text", ["8 deg", "eccentric", "5 mm to 15 mm", "at least", "low to high", ""])
def test_what_is_no_range_of_the_quantity_is_none(text: str) -> None:
    assert read_range("relief_angle", text) is None
