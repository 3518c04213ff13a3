"""Out of the drawer that cam is taken whose relief lies in the range of the book, on the card as in the calculator."""

from __future__ import annotations

import math
from dataclasses import replace
from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import answer
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.model import Card
from library.cards.starting import from_entry
from library.demo import lay_out
from library.pages.card_answers import wanted_answers
from library.pages.page import Said, Values
from library.pages.setting_answers import setting_answers
from library.setup_sheet.sheets import setup_sheet
from library.units.show import say

TAP = "tap-spiral-point-plain-steel"
MEASURED = {
    "tool.thread": "M10",
    "tool.flutes": "3",
    "received.diameter": "9.98 mm",
    "received.land_width": "2.5 mm",
}
# The book has 6 degrees, 4 to 8. Derived: 1 mm from tooth to tooth gives atan(3 / (2 pi 4.99)), the 1.6 mm above the need
# gives atan(4.8 / (2 pi 4.99)).
SMALLER, LARGER = math.atan(3 / (2 * math.pi * 4.99)), math.atan(4.8 / (2 * math.pi * 4.99))


@pytest.fixture(scope="module")
def book(tmp_path_factory: pytest.TempPathFactory) -> Book:
    folder: Path = tmp_path_factory.mktemp("demo") / "yard"
    lay_out(folder)
    return open_book(folder)


@pytest.fixture
def card(book: Book) -> Card:
    found = replace(from_entry(book, book.entries[TAP]), id="2026-12-01-01", machine="grey-grinder")
    for place, text in MEASURED.items():
        found = edited(found, place, text)
    return found


def relief(job: Job) -> float:
    assert job.by_cam is not None
    return job.by_cam.given


def test_the_card_and_the_calculator_take_the_same_cam_within_the_range_of_the_book(
    book: Book, card: Card
) -> None:
    value = book.entries[TAP].values["chamfer_relief_angle"]
    assert value.low is not None
    assert value.high is not None
    assert value.low.number < SMALLER < value.high.number < LARGER
    job = work_out(card, book)
    assert job.by_cam is not None
    assert job.by_cam.throw == "1 mm"
    assert relief(job) == pytest.approx(SMALLER)
    step = job.step("cam-choice")
    typed = {
        "diameter": "9.98",
        "chamfer_angle": "7 deg",
        "flutes": "3",
        "throw_per": "tooth",
        "cam_throws": "0.5 mm, 1 mm, 1.6 mm, 2.5 mm",
    }
    alone = answer(calculation("cam-choice"), typed, entry=book.entries[TAP], book=book)
    assert step is not None
    for found in (step.answer, alone):
        assert found.result is not None
        assert found.result.outputs["chosen_throw"] == 1.0
        assert found.inputs["relief_lower_limit"].origin == "entry"
        assert found.inputs["relief_lower_limit"].text == value.low.text


def test_a_relief_that_a_person_chose_has_no_range_of_the_book_round_it(book: Book, card: Card) -> None:
    # Wanted as the book has it, but not from it: the cam above the need.
    assert relief(work_out(edited(card, "wanted.chamfer_relief_angle", "5.9 deg"), book)) == pytest.approx(
        LARGER
    )


def test_a_cam_past_the_range_of_the_book_names_its_end_too(book: Book, card: Card) -> None:
    # 1.6 mm in a third of a turn give atan(4.8 / (2 pi 4.99)) = 8.70 degrees; the book has 4 to 8.
    assert round(math.degrees(LARGER), 2) == 8.7
    job = work_out(edited(card, "settings.relief-drop.chosen_throw", "1.6 mm"), book)
    step = job.step("relief-drop")
    assert step is not None
    typed = {"diameter": "9.98", "land_width": "2.5", "chosen_throw": "1.6", "throw_per": "tooth", "flutes": "3",
             "surface": "chamfer", "chamfer_angle": "7 deg"}  # fmt: skip
    alone = answer(calculation("relief-drop"), typed, entry=book.entries[TAP], book=book)
    assert alone.result is not None
    # The calculator knows no drawer, and advises the very throw; the card advises nothing that does not lie there.
    for found, then in (
        (step.checks, "Of the drawer, 1.000 mm gives"),
        (alone.result.checks, "Take a throw of"),
    ):
        said = [say(one.sentence) for one in found if one.state == "watch"]
        assert any(
            f"The cam gives 8.70 deg on the chamfer, not the 6.00 deg wanted, and more than the 8 deg of the book. {then}"
            in one
            for one in said
        )
    beside = " ".join(str(part) for part in wanted_answers(job, "chamfer_relief_angle"))
    assert "not 6.00 deg, and more than the 8 deg of the book." in beside


def test_a_cam_within_the_range_of_the_book_names_no_end(book: Book, card: Card) -> None:
    step = work_out(card, book).step("relief-drop")
    assert step is not None
    assert not any("of the book" in say(one.sentence) for one in step.checks)


def test_a_cam_within_the_range_of_the_book_passes_on_the_card_as_in_the_calculator(
    book: Book, card: Card
) -> None:
    # 1 mm from tooth to tooth give atan(3 / (2 pi 4.99)) = 5.47 degrees; the book has 6, 4 to 8.
    assert round(math.degrees(SMALLER), 2) == 5.47
    job = work_out(card, book)
    step = job.step("relief-drop")
    assert step is not None
    said = (
        "The cam gives 5.47 deg on the chamfer where 6.00 deg was wanted: within the book's 4 deg to 8 deg."
    )
    assert [one.state for one in step.checks if say(one.sentence) == said] == ["pass"]
    assert not any("wanted" in say(one.sentence) for one in step.checks if one.state == "watch")
    beside = " ".join(str(part) for part in wanted_answers(job, "chamfer_relief_angle"))
    assert "not 6.00 deg: within the book's 4 deg to 8 deg." in beside


def test_a_relief_that_a_person_narrowed_is_still_watched(book: Book, card: Card) -> None:
    own = edited(card, "wanted.chamfer_relief_angle", "5.9 deg")
    step = work_out(edited(own, "settings.relief-drop.chosen_throw", "1 mm"), book).step("relief-drop")
    assert step is not None
    assert any("not the 5.90 deg wanted" in say(one.sentence) for one in step.checks if one.state == "watch")
    typed = {"diameter": "9.98", "land_width": "2.5", "chosen_throw": "1", "throw_per": "tooth", "flutes": "3",
             "surface": "chamfer", "chamfer_angle": "7 deg", "relief_angle": "5.9"}  # fmt: skip
    alone = answer(calculation("relief-drop"), typed, entry=book.entries[TAP], book=book)
    assert alone.result is not None
    assert any("not the 5.90" in say(one.sentence) for one in alone.result.checks if one.state == "watch")


def test_what_the_cam_gives_and_what_the_wanted_relief_asks_for_stand_apart(book: Book, card: Card) -> None:
    job = work_out(edited(card, "settings.relief-drop.chosen_throw", "1.6 mm"), book)
    parts = [
        part for part in setting_answers(job, "relief-drop") if any(isinstance(one, Values) for one in part)
    ]
    told = {
        str(part[0].texts[0]): [(one.title, one.value) for one in part[1].values]
        for part in parts
        if len(part) == 2 and isinstance(part[0], Said) and isinstance(part[1], Values)
    }
    # 2 pi 4.99 tan 6 is 3.295 mm in a turn and a third of it from tooth to tooth.
    assert told["For the 6.00 deg wanted:"] == [
        ("Throw per turn", "3.295 mm"),
        ("Throw per tooth", "1.098 mm"),
    ]
    assert ("Relief of the chamfer, square to the axis", "8.70 deg") in told["By the cam of 1.6 mm:"]
    assert not any("Throw" in title for title, _ in told["By the cam of 1.6 mm:"])


def test_without_a_cam_what_comes_out_stands_in_one_list(book: Book, card: Card) -> None:
    parts = [str(part) for part in setting_answers(work_out(replace(card, machine=""), book), "relief-drop")]
    assert not any("By the cam" in part or "wanted:" in part for part in parts)
    assert any("Throw per turn" in part for part in parts)


def test_the_sheet_says_in_the_line_of_the_cam_and_where_it_judges_by_it_that_it_is_within_the_book(
    book: Book, card: Card
) -> None:
    sheet = " ".join(setup_sheet(work_out(card, book)).split())
    given = f"{math.degrees(SMALLER):.2f} deg"
    assert f"per tooth; gives {given}, within the book's 4 deg to 8 deg; 6.00 deg was wanted" in sheet
    assert f"it gives {given}, within the book's 4 deg to 8 deg, and reads" in sheet


def test_the_sheet_says_of_a_cam_past_the_book_past_which_end_it_is(book: Book, card: Card) -> None:
    larger = edited(card, "settings.relief-drop.chosen_throw", "1.6 mm")
    sheet = " ".join(setup_sheet(work_out(larger, book)).split())
    given = f"{math.degrees(LARGER):.2f} deg"
    assert f"it gives {given}, more than the 8 deg of the book, and reads" in sheet
    assert "within the book" not in sheet
