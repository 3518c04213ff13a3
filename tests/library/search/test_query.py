"""Finding entries by words, by quantities and by ranges."""

from __future__ import annotations

import math
import time

import pytest

from library.book.model import Entry, Measure, Value
from library.search.comparing import compare
from library.search.query import parse, quantities_named
from library.units.system import INCH


def degrees(number: float) -> Measure:
    return Measure(f"{number} deg", math.radians(number))


STEEP = Entry(
    "steep",
    "tap",
    "Steep",
    values={
        "rake_angle": Value("rake_angle", low=degrees(5), high=degrees(12)),
        "land_width": Value("land_width", usual=Measure("2 mm", 2.0)),
        "relief_style": Value("relief_style", usual=Measure("progressive", word="progressive")),
    },
)
SHALLOW = Entry(
    "shallow",
    "tap",
    "Shallow",
    values={
        "rake_angle": Value("rake_angle", usual=degrees(4), also=(Value("rake_angle", usual=degrees(9)),)),
        "land_width": Value("land_width", usual=Measure("0.25 D", 0.25, per_diameter=True)),
        "relief_style": Value("relief_style", usual=Measure("flat", word="flat")),
    },
)


@pytest.mark.parametrize(
    ("text", "steep", "shallow"),
    [
        ("rake>8", True, True),
        ("rake>10", True, False),
        ("rake > 10 deg", True, False),
        ("rake<=4", False, True),
        ("rake=9", False, True),
        ("land>1.5mm", True, False),
        ("land_width=2", True, False),
        ("style=prog", True, False),
        ("relief_style=flat", False, True),
        ("rake>8 land>1", True, False),
        ("flutes>2", False, False),
    ],
)
def test_a_condition_looks_at_every_recommended_value(text: str, steep: bool, shallow: bool) -> None:
    query = parse(text)
    assert not query.troubles
    assert not query.words
    assert (query.fits("", STEEP), query.fits("", SHALLOW)) == (steep, shallow)


def test_words_and_conditions_are_both_asked_for() -> None:
    query = parse("Gun TAP rake>10")
    assert query.words == ("gun", "tap")
    assert query.fits("a gun tap for bronze", STEEP)
    assert not query.fits("a hand tap", STEEP)


def test_a_length_without_a_unit_is_in_the_unit_that_is_worked_in() -> None:
    assert parse("land<0.1", INCH).fits("", STEEP)
    assert not parse("land<0.1").fits("", STEEP)


@pytest.mark.parametrize("text", ["rake>", "rake", "rake >= "])
def test_a_half_typed_condition_is_no_mistake(text: str) -> None:
    assert not parse(text).troubles


def test_a_half_typed_condition_is_kept_apart_from_the_words() -> None:
    found = parse("gun tap rake >= ")
    assert (found.words, found.conditions, found.unfinished) == (("gun", "tap"), (), "rake >=")
    assert parse("gun tap rake >= 8").unfinished == ""


@pytest.mark.parametrize(
    ("text", "needle"),
    [("wobble>3", "wobble"), ("rake>3mm", "angle"), ("rake>3,5", "comma"), ("rake>9**9", "9**9")],
)
def test_what_cannot_be_understood_is_told_in_a_sentence(text: str, needle: str) -> None:
    (trouble,) = parse(text).troubles
    assert needle in trouble


def test_a_name_means_the_closest_quantities() -> None:
    assert [row.key for row in quantities_named("land_width")] == ["land_width"]
    assert {row.key for row in quantities_named("relief")} >= {"relief_angle", "relief_style"}
    assert quantities_named("nonsense") == ()


def test_entries_stand_side_by_side_and_equal_values_are_told() -> None:
    lines = {line.key: line for line in compare([STEEP, SHALLOW])}
    assert set(lines) == {"rake_angle", "land_width", "relief_style"}
    assert not any(line.same for line in lines.values())
    assert all(line.same for line in compare([STEEP, STEEP]))


def test_the_same_length_written_in_two_ways_is_the_same() -> None:
    inch = Entry("i", "tap", "I", values={"land_width": Value("land_width", usual=Measure("1/8 in", 3.175))})
    thou = Entry(
        "t", "tap", "T", values={"land_width": Value("land_width", usual=Measure("125 thou", 3.175))}
    )
    assert compare([inch, thou])[0].same


@pytest.mark.parametrize("text", ["x" * 100_000, "a-" * 50_000, "a" + " " * 100_000, "-" * 100_000])
def test_a_text_pasted_by_mistake_is_taken_apart_at_once(text: str) -> None:
    begin = time.process_time()
    assert parse(text).conditions == ()
    assert time.process_time() - begin < 1
