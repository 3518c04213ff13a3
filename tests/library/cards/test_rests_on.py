"""While a calculation of the cam has a fault, the page After says on what the reading at the heel rests."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import Job, work_out
from library.cards.rests_on import rests_on
from library.cards.shall_be import wanted_number
from library.demo import BOOK
from library.pages.card_answers import after_answers
from library.pages.page import Said
from tests.begun_cards import begun

LAID_OUT = {
    "tool.size": "6, 8, 10 mm", "tool.flutes": "2", "received.land_width": "1.6 mm",
    "received.land_measured_as": "arc", "settings.step-relief.included_angle": "90, 90 deg",
    "settings.step-relief.axial_throw": "0.5 mm",
}  # fmt: skip
STANDS = (
    "On Set, 'Relief of all steps under one cam' has a fault and gives no answer: until it does, what the heel shall read "
    "rests on the cam of 5 mm in 'Indicator drop of the heel for a relief' alone."
)


@pytest.fixture(scope="module")
def yard_book() -> Book:
    return open_book(BOOK)


def job_of(book: Book, **more: str) -> Job:
    return work_out(begun(book, "step-drill-spiral-flute-plain-steel", **{**LAID_OUT, **more}), book)


def beside(job: Job) -> list[str]:
    return [
        text
        for part in after_answers(job, "drop")
        for one in part
        if isinstance(one, Said)
        for text in one.texts
    ]


def test_a_feed_that_cannot_be_says_on_what_the_reading_rests(yard_book: Book) -> None:
    well = job_of(yard_book, **{"settings.step-relief.feed": "0.15 mm"})
    wrong = job_of(yard_book, **{"settings.step-relief.feed": "150 mm"})
    assert wanted_number(wrong, "drop") != wanted_number(well, "drop")
    assert STANDS in beside(wrong)
    assert rests_on(well) == ""


def test_what_a_person_said_that_it_shall_be_rests_on_nothing(yard_book: Book) -> None:
    job = job_of(
        yard_book,
        **{"settings.step-relief.feed": "150 mm", "after.drop": "0.5 mm", "after.drop.wanted": "0.5 mm"},
    )
    assert rests_on(job) == ""
