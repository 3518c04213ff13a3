"""The numbers of the shipped book, as the program reads them."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from geometry.quantities import QUANTITIES
from library.book.model import Book, Measure, Value
from library.book.opening import open_book


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def every_value(book: Book) -> Iterator[tuple[str, Value]]:
    for entry in book.entries.values():
        for key, value in entry.values.items():
            yield f"{entry.id}.{key}", value
            for other in value.also:
                yield f"{entry.id}.{key}.also", other


def comparable(value: Value) -> list[Measure]:
    """The ends of a range, where all are lengths or angles and not shares of the diameter."""
    ends = [end for end in (value.low, value.usual, value.high) if end is not None]
    return [] if any(end.per_diameter or end.word for end in ends) else ends


def span(value: Value) -> tuple[float, float]:
    """The range that a source allows; an end it leaves open is open."""
    numbers = [end.number for end in comparable(value)]
    low = numbers[0] if value.low or value.usual else float("-inf")
    high = numbers[-1] if value.high or value.usual else float("inf")
    return low, high


def test_the_program_finds_nothing_to_say_about_its_own_book(book: Book) -> None:
    assert [str(finding) for finding in book.findings] == []


def test_a_range_runs_upward(book: Book) -> None:
    for where, value in every_value(book):
        numbers = [end.number for end in comparable(value)]
        assert numbers == sorted(numbers), where


def test_every_number_lies_where_its_quantity_makes_sense(book: Book) -> None:
    for where, value in every_value(book):
        row = QUANTITIES[where.split(".")[1]]
        for end in comparable(value):
            assert row.low <= end.number <= row.high, where


def test_where_another_source_lies_wholly_apart_one_sentence_says_so(book: Book) -> None:
    silent = []
    for entry in book.entries.values():
        for key, value in entry.values.items():
            low, high = span(value) if comparable(value) else (float("-inf"), float("inf"))
            for other in filter(comparable, value.also):
                apart = span(other)[0] > high + 1e-12 or span(other)[1] < low - 1e-12
                if apart and not (value.disagreement or "By size" in value.note):
                    silent.append(f"{entry.id}.{key}")
    assert silent == []


def test_there_are_more_than_two_hundred_and_fifty_values_and_most_are_published(book: Book) -> None:
    values = [value for where, value in every_value(book) if ".also" not in where]
    labels = [value.citation.label for value in values]
    assert len(values) >= 250
    assert labels.count("published") >= len(values) / 2
    assert set(labels) <= {"published", "common practice", "from memory"}


@pytest.mark.parametrize("degrees", [60, 82, 90, 100, 120])
def test_the_countersinks_of_the_trade_are_all_there(book: Book, degrees: int) -> None:
    angles = {
        entry.values["included_angle"].usual
        for entry in book.entries.values()
        if entry.family == "countersink" and "included_angle" in entry.values
    }
    assert f"{degrees} deg" in {angle.text for angle in angles if angle}


@pytest.mark.parametrize(
    "tool",
    [
        "tap-hand-taper-plain-steel",
        "tap-hand-plain-steel",
        "tap-hand-bottoming-plain-steel",
        "tap-spiral-point-plain-steel",
        "tap-spiral-flute-plain-steel",
        "tap-pipe-taper-american",
        "tap-forming",
        "countersink-single-flute-90-plain-steel",
        "countersink-zero-flute-90-aluminium-wrought",
        "deburring-cone-any",
        "twist-drill-split-point",
        "twist-drill-web-thinned",
        "twist-drill-ground-down",
        "twist-drill-ground-down-shank",
        "twist-drill-sheet-metal",
        "reamer-taper-pin",
        "spotfacer-grey-iron",
    ],
)
def test_the_tools_a_newcomer_asks_about_are_there(book: Book, tool: str) -> None:
    assert tool in book.entries


def test_a_forming_tap_is_said_not_to_be_sharpened_this_way(book: Book) -> None:
    assert "Not sharpened this way" in book.entries["tap-forming"].notes
    assert not [key for key in book.entries["tap-forming"].values if key.endswith("relief_angle")]


def test_no_number_for_a_step_or_a_zero_flute_countersink_pretends_to_be_published(book: Book) -> None:
    """No published relief was found for these, and the book must not look as if there were."""
    for entry in book.entries.values():
        zero_flute = entry.id.startswith("countersink-zero-flute")
        if entry.family == "step-drill" or zero_flute:
            for key in ("land_relief_angle", "cone_relief_angle", "shoulder_relief_angle"):
                if key in entry.values:
                    assert entry.values[key].citation.label == "from memory", entry.id
