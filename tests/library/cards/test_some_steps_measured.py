"""A tool with steps of which only some were measured: what serves for the others, and what is said of it."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.close import finished
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.starting import from_entry
from library.demo import BOOK

READ = {"tool.flutes": "2", "received.land_width": "1.6 mm", "received.land_measured_as": "arc", "received.drop": "0.20 mm",
        "settings.step-relief.included_angle": "90, 90 deg"}  # fmt: skip


@pytest.fixture(scope="module")
def yard_book() -> Book:
    return open_book(BOOK)


def step_drill(book: Book, size: str, diameter: str) -> Job:
    card = replace(from_entry(book, book.entries["step-drill-spiral-flute-plain-steel"]), id="2026-11-27-01",
                   started=date(2026, 11, 27))  # fmt: skip
    for way, text in {"tool.size": size, **READ, "received.diameter": diameter}.items():
        card = edited(card, way, text)
    return work_out(card, book)


def diameters(job: Job) -> tuple[float, ...]:
    step = job.step("step-relief")
    assert step is not None
    value = step.answer.inputs["diameter"].value
    assert isinstance(value, tuple)
    return value


def said(job: Job) -> list[str]:
    return [one.text for one in issues_of(job) if one.way == "received.diameter"]


def test_one_diameter_of_a_drill_of_two_steps_is_told_of_with_what_follows(yard_book: Book) -> None:
    job = step_drill(yard_book, "8, 10 mm", "9.98 mm")
    assert said(job) == [
        "Diameter: there is 1 reading, and the tool has 2 steps (8.000, 10.000 mm). Give one for each step, the smallest "
        "first. Until then it counts for the step nearest to it, and the others count as they are marked."
    ]
    assert said(step_drill(yard_book, "8, 10 mm", "7.99 mm, 9.98 mm")) == []
    assert said(step_drill(yard_book, "8, 10 mm", "")) == []


@pytest.mark.parametrize(
    ("measured", "counted"),
    [("9.98 mm", (6, 8, 9.98)), ("5.97 mm", (5.97, 8, 10)), ("5.97 mm, 9.98 mm", (5.97, 8, 9.98))],
)
def test_the_marked_sizes_serve_for_the_steps_that_nobody_measured(
    yard_book: Book, measured: str, counted: tuple[float, ...]
) -> None:
    assert diameters(step_drill(yard_book, "6, 8, 10 mm", measured)) == pytest.approx(counted)


def test_a_size_in_inches_serves_beside_a_reading_in_millimetres(yard_book: Book) -> None:
    found = diameters(step_drill(yard_book, "1/2, 3/4 in", "19.02 mm"))
    assert found == pytest.approx((12.7, 19.02))


def test_the_relief_found_is_that_on_the_largest_step_whichever_was_measured(yard_book: Book) -> None:
    (whole,) = received_reliefs(step_drill(yard_book, "6, 8, 10 mm", ""))
    (some,) = received_reliefs(step_drill(yard_book, "6, 8, 10 mm", "6 mm"))
    assert whole.angles
    assert some.angles == pytest.approx(whole.angles)


def test_more_readings_than_steps_are_told_of_and_none_is_put_in_the_place_of_another(
    yard_book: Book,
) -> None:
    (text,) = said(step_drill(yard_book, "8, 10 mm", "8 mm, 9 mm, 10 mm"))
    assert text == (
        "Diameter: there are 3 readings, and the tool has 2 steps (8.000, 10.000 mm). Give one for each step, the smallest first."
    )


def test_a_record_counts_ever_after_with_the_steps_that_it_was_closed_with(yard_book: Book) -> None:
    job = step_drill(yard_book, "6, 8, 10 mm", "5.97 mm")
    record = finished(job, date(2026, 11, 27))
    again = work_out(record, yard_book)
    assert diameters(again) == pytest.approx(diameters(job))
    assert received_reliefs(again) == received_reliefs(job)
    marked_otherwise = work_out(edited(replace(record, status="done"), "tool.size", "6, 8, 11 mm"), yard_book)
    assert diameters(marked_otherwise) == pytest.approx(diameters(job))
