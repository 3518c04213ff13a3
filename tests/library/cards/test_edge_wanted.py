"""Where the angle of an edge is wanted for the relief behind a reading, a card says in which line that is given."""

from __future__ import annotations

import math
from datetime import date

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs
from library.cards.job import Job, work_out
from library.cards.model import Card, Wanted
from tui.view.card_form import CardForm

READ = {"received.land_width": "1.6 mm", "received.land_measured_as": "arc", "received.drop": "0.20 mm"}


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def step_drill(book: Book, **more: str) -> Job:
    card = Card(
        id="2026-11-26-01",
        started=date(2026, 11, 26),
        family="step-drill",
        wanted={
            "surface": Wanted("shoulder"),
            "relief_method": Wanted("cam"),
            "relief_form": Wanted("eccentric"),
        },
    )
    texts = {"tool.size": "6, 8, 10 mm", "tool.flutes": "2", **READ, **more}
    for way, text in texts.items():
        card = edited(card, way, text)
    return work_out(card, book)


def test_the_sentence_names_the_page_the_line_and_how_many_angles(shipped: Book) -> None:
    (found,) = received_reliefs(step_drill(shipped))
    assert found.trouble == (
        "The relief found stands here once each shoulder has its angle: on the page Set, in the line "
        "Shoulder angles, one for each of the 2 shoulders from the point up."
    )


def test_the_line_that_it_names_is_there_and_says_the_same(shipped: Book) -> None:
    form = CardForm(shipped, step_drill(shipped).card)
    form.go_to("settings.step-relief.included_angle")
    assert form.row.label.strip() == "Shoulder angles"
    assert form.row.hint.startswith(
        "One for each of the 2 shoulders from the point up, such as 90, 90 deg; or one"
    )


def test_with_the_angles_there_the_relief_stands_in_its_place(shipped: Book) -> None:
    alike, two = "90, 90 deg", "90, 118 deg"
    (found,) = received_reliefs(step_drill(shipped, **{"settings.step-relief.included_angle": alike}))
    # Derived: 0.20 mm over an arc of 1.6 mm, read square to the axis, is 0.7071 of that square to a cone of 90 deg.
    assert math.degrees(found.angles["eccentric"]) == pytest.approx(
        math.degrees(math.atan(0.2 / 1.6 * math.cos(math.radians(45)))), abs=0.01
    )
    (found,) = received_reliefs(step_drill(shipped, **{"settings.step-relief.included_angle": two}))
    assert found.trouble == (
        "Not every shoulder lies at the same angle, so no one relief stands behind a reading."
    )
