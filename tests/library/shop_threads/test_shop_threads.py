"""A shop's own threads go before the standard ones, and a mistake in one never lets a standard number pass for the shop's."""

from __future__ import annotations

from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import Answer, answer
from library.cards.job import work_out
from library.cards.model import Card, Tool
from library.cards.thread_names import of_thread
from library.shop_threads.laying import own_threads
from library.threads import NotChosen, choose, find_threads

OWN = """schema = 1

[[thread]]
id = "m8-sti"
title = "M8 x 1.25 STI"
synonyms = ["EG M8"]
diameter = "9.62 mm"
pitch = "1.25 mm"
tap_drill = "8.3 mm"
source = "shop"

[[thread]]
id = "m12"
tap_drill = "10.4 mm"
source = "shop"

[[thread]]
id = "ram"
title = "Ram 30"
diameter = "30 mm"
threads_per_inch = "4 tpi"
starts = 2
hand = "left"
thread_form = "whitworth"
source = "shop"
"""


def book_of(folder: Path, text: str = OWN) -> Book:
    (folder / "threads.toml").write_text(text)
    return open_book(folder)


@pytest.fixture
def book(tmp_path: Path) -> Book:
    return book_of(tmp_path)


def lead(book: Book, **typed: str) -> Answer:
    return answer(calculation("lead-over-land"), {"land_width": "2 mm", **typed}, book=book)


def test_the_book_is_good(book: Book) -> None:
    assert book.findings == ()


@pytest.mark.parametrize("name", ["M8 x 1.25 STI", "m8x1.25 sti", "EG M8"])
def test_a_thread_of_its_own_fills_a_calculation_by_each_of_its_names(book: Book, name: str) -> None:
    inputs = lead(book, diameter=name).inputs
    assert (inputs["diameter"].value, inputs["pitch"].value) == (9.62, 1.25)


def test_without_the_book_nobody_knows_it() -> None:
    assert find_threads("EG M8") == ()


def test_over_a_standard_thread_only_what_is_said_changes(book: Book) -> None:
    ours, standard = choose("M12", own_threads(book)), choose("M12")
    assert (ours.tap_drill, standard.tap_drill) == ("10.4 mm", "10.2 mm")
    assert (ours.diameter, ours.pitch, ours.title) == (standard.diameter, standard.pitch, standard.title)
    assert find_threads("m12x1.75", own_threads(book)) == (ours,)
    assert find_threads("M10", own_threads(book)) == find_threads("M10")


def test_a_thread_of_the_same_name_goes_before_the_standard_one(tmp_path: Path) -> None:
    text = 'schema = 1\n[[thread]]\nid = "our-m10"\ntitle = "M10"\ndiameter = "10 mm"\npitch = "1.6 mm"\nsource = "shop"\n'
    assert lead(book_of(tmp_path, text), diameter="M10").inputs["pitch"].value == 1.6


def test_starts_hand_and_form_come_along(book: Book) -> None:
    found = lead(book, diameter="Ram 30")
    assert found.inputs["hand"].value == "left"
    assert found.result is not None
    # Two starts of a quarter inch.
    assert found.result.outputs["lead"] == pytest.approx(12.7)
    assert choose("Ram 30", own_threads(book)).fills()["thread_form"] == "whitworth"


def test_a_card_takes_it_from_the_name_of_the_thread(book: Book) -> None:
    assert of_thread("EG M8", book)["diameter"] == "9.62 mm"
    job = work_out(Card(family="insert-tap", tool=Tool(thread="EG M8")), book)
    step = job.step("lead-over-land")
    assert step is not None
    assert step.answer.inputs["diameter"].value == 9.62


def test_a_name_with_lh_is_left_whatever_the_table_says(book: Book) -> None:
    assert of_thread("M12 LH", book) == {**of_thread("M12", book), "hand": "left"}


@pytest.mark.parametrize(
    "wrong", ['diameter = "wide"', 'diameter = "12"', "diameter = 12,5", 'pitch = "2 deg"']
)
def test_a_number_that_cannot_be_read_hides_the_standard_one(tmp_path: Path, wrong: str) -> None:
    book = book_of(tmp_path, f'schema = 1\n[[thread]]\nid = "m12"\n{wrong}\nsource = "shop"\n')
    assert [one.severity for one in book.findings] == ["error"]
    with pytest.raises(NotChosen, match=r"What the book says of the thread M12 x 1.75 cannot be used"):
        choose("M12", own_threads(book))
    assert of_thread("M12", book) == {}
    assert lead(book, diameter="M12").result is None


def test_a_pitch_of_the_other_sort_takes_the_place_of_the_standard_one(tmp_path: Path) -> None:
    text = 'schema = 1\n[[thread]]\nid = "m12"\nthreads_per_inch = "16 tpi"\nsource = "shop"\n'
    found = choose("M12", own_threads(book_of(tmp_path, text)))
    assert (found.pitch, found.threads_per_inch) == ("", "16 tpi")


def test_a_mistyped_name_is_answered_with_the_nearest_also_of_ones_own(book: Book) -> None:
    with pytest.raises(NotChosen, match=r"Did you mean M8 x 1.25 STI"):
        choose("M8 STU", own_threads(book))


def test_a_taper_is_told_by_its_word(tmp_path: Path) -> None:
    text = (
        'schema = 1\n[[thread]]\nid = "hose"\ntitle = "Hose 20"\ndiameter = "20 mm"\npitch = "1.5 mm"\n'
        'thread_taper = "bspt"\nsource = "shop"\n'
    )
    found = choose("Hose 20", own_threads(book_of(tmp_path, text)))
    assert (found.fills()["thread_form"], found.fills()["thread_taper"]) == ("whitworth", "bspt")


def test_with_another_diameter_or_pitch_nothing_is_left_that_followed_from_the_standard_one(
    tmp_path: Path,
) -> None:
    text = 'schema = 1\n[[thread]]\nid = "m12"\ndiameter = "12.2 mm"\npitch_diameter = "11 mm"\nsource = "shop"\n'
    found = choose("M12", own_threads(book_of(tmp_path, text)))
    assert (found.pitch, found.pitch_diameter) == ("1.75 mm", "11 mm")
    assert (found.minor_diameter, found.tap_drill, found.other_tap_drills) == ("", "", ())
