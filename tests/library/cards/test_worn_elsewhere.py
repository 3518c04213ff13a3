"""Wear at the corner of a reamer is answered where the lead is ground, and on a job of the land it is said where."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def worn(book: Book, surface: str) -> Job:
    card = Card(family="reamer", tool=Tool("R-16", size="16 mm", flutes="8"))
    card = edited(card, "wanted.surface", surface)
    card = edited(card, "wanted.bevel_angle", "45 deg")
    return work_out(edited(card, "received.corner_wear", "0.15 mm"), book)


def told(job: Job) -> list[str]:
    return [one.text for one in issues_of(job) if one.way == "received.corner_wear"]


def test_wear_at_the_corner_says_on_a_job_of_the_land_where_it_is_ground_off(book: Book) -> None:
    (said,) = told(worn(book, "land"))
    assert said == (
        "Wear at the corner: it is ground off on the bevel lead, and this job grinds the land. Choose bevel in the line Surface "
        "of the page Wanted, and Set says what comes off."
    )


def test_where_the_lead_is_ground_the_stock_says_it(book: Book) -> None:
    # 0.15 mm on the radius are 0.15 mm along a lead of 45 degrees.
    job = worn(book, "bevel")
    assert told(job) == []
    step = job.step("bevel-lead")
    assert step is not None
    assert step.answer.result is not None
    assert step.answer.result.outputs["axial_stock"] == pytest.approx(0.15)
