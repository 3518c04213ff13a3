"""Drills by number and by letter."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest

from library.search.drill_numbers import CALLED, DIAMETERS, inches_of
from library.threads.reading import all_threads


def test_numbers_get_smaller_and_letters_larger_and_no_number_reaches_a() -> None:
    numbers = [float(DIAMETERS[str(number)]) for number in range(1, 81)]
    letters = [float(DIAMETERS[letter]) for letter in "abcdefghijklmnopqrstuvwxyz"]
    assert all(one > next_one for one, next_one in pairwise(numbers))
    assert all(one < next_one for one, next_one in pairwise(letters))
    assert numbers[0] < letters[0]


@pytest.mark.parametrize(
    ("name", "drill"),
    # The usual tap drills of American charts: three quarters of a thread. Common practice.
    [("1/4-20 UNC", "7"), ("#10-32 UNF", "21"), ("#8-32 UNC", "29"), ("#6-32 UNC", "36"), ("#4-40 UNC", "43"), ("5/16-18 UNC", "f"), ("3/8-24 UNF", "q"), ("7/16-14 UNC", "u")],
)  # fmt: skip
def test_the_tap_drill_of_a_thread_leaves_about_three_quarters_of_it(name: str, drill: str) -> None:
    threads = {one.title.replace("No. ", "#"): one for one in all_threads().values()}
    thread = threads[name]
    outside = float(Fraction(thread.diameter.split()[0]))
    pitch = 1 / float(thread.threads_per_inch.split()[0])
    # Derived: a full thread is 0.6495 pitches high in the bolt on either side.
    left = (outside - float(DIAMETERS[drill])) / (2 * 0.6495 * pitch)
    assert 0.68 < left < 0.83


def test_e_is_a_quarter_of_an_inch() -> None:
    assert float(DIAMETERS["e"]) == 1 / 4


@pytest.mark.parametrize("text", ["no 10 tap", "centre drill #3", "#8", "#99 drill", "letter f tap", "b tap"])
def test_what_is_no_drill_has_no_diameter(text: str) -> None:
    called = CALLED.search(text)
    assert called is None or inches_of(called, text) == ""


@pytest.mark.parametrize(
    ("text", "inches"),
    [("#30", ".1285"), ("#7", ".2010"), ("letter f", ".257"), ("f drill", ".257"), ("no 30 drill", ".1285")],
)
def test_a_number_or_letter_that_only_drills_have_names_one_without_its_word(text: str, inches: str) -> None:
    # From memory, as the table is: the wire gauge and the letters of drills.
    called = CALLED.search(text)
    assert called is not None
    assert inches_of(called, text) == inches
