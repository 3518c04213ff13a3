"""While a calculation of the cam has a fault, the page After says on what the reading at the heel rests."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import Job
from library.cards.rests_on import rests_on
from library.cards.shall_be import wanted_number
from library.cards.starting import from_entry
from library.demo import BOOK
from library.equipment.model import machines, wheels
from library.pages.card_answers import after_answers
from library.pages.page import Said
from tui.view.card_form import CardForm

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


def form_of(book: Book, **more: str) -> CardForm:
    card = from_entry(book, book.entries["step-drill-spiral-flute-plain-steel"])
    card = replace(card, machine=next(iter(machines(book))), wheel=next(iter(wheels(book))))
    for way, text in {**LAID_OUT, **more}.items():
        card = edited(card, way, text)
    return CardForm(book, card)


def beside(job: Job) -> list[str]:
    return [
        text
        for part in after_answers(job, "drop")
        for one in part
        if isinstance(one, Said)
        for text in one.texts
    ]


def test_a_feed_that_cannot_be_says_on_what_the_reading_rests(yard_book: Book) -> None:
    well = form_of(yard_book, **{"settings.step-relief.feed": "0.15 mm"}).job
    wrong = form_of(yard_book, **{"settings.step-relief.feed": "150 mm"}).job
    assert wanted_number(wrong, "drop") != wanted_number(well, "drop")
    assert STANDS in beside(wrong)
    assert rests_on(well) == ""


def test_what_a_person_said_that_it_shall_be_rests_on_nothing(yard_book: Book) -> None:
    job = form_of(
        yard_book,
        **{"settings.step-relief.feed": "150 mm", "after.drop": "0.5 mm", "after.drop.wanted": "0.5 mm"},
    ).job
    assert rests_on(job) == ""


def test_one_feed_is_one_line_and_what_is_wrong_with_it_is_told_once_there(yard_book: Book) -> None:
    for feed in ("", "0.15 mm", "150 mm"):
        form = form_of(yard_book, **{"settings.step-relief.feed": feed})
        form.go_to("settings.step-relief.feed")
        assert [row.way for row in form.rows if row.quantity == "feed"] == ["settings.step-relief.feed"]
    told = [one.way for one in issues_of(form.job) if "Feed per turn is" in one.text]
    assert told == ["settings.step-relief.feed"]
    form.put("0.15 mm")
    assert all(
        step.answer.inputs["feed"].text == "0.15 mm"
        for step in form.job.steps
        if "feed" in step.answer.inputs
    )


def test_a_feed_typed_for_one_calculation_alone_keeps_its_line(yard_book: Book) -> None:
    form = form_of(
        yard_book,
        **{"settings.step-relief.feed": "0.15 mm", "settings.feed-clearance.feed": "0.2 mm"},
    )
    form.go_to("settings.feed-clearance.feed")
    assert form.row.text == "0.2 mm"


def test_where_the_first_calculation_is_left_out_the_feed_has_its_line_in_the_next(yard_book: Book) -> None:
    form = form_of(yard_book, **{"settings.step-relief": "skip"})
    form.go_to("settings.feed-clearance.feed")
    assert form.row.way == "settings.feed-clearance.feed"
