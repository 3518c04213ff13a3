"""The angle of a chamfer that is set, beside one that was measured or typed: which of them all is counted with."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.starting import from_entry
from library.demo import BOOK
from library.units.show import say
from tui.view.card_form import CardForm

MEASURED = {
    "tool.thread": "M10",
    "tool.flutes": "3",
    "received.diameter": "9.98 mm",
    "received.land_width": "2.5 mm",
    "received.land_measured_as": "chord",
    "received.drop": ".2, .2, .2 mm",
}
NO_ANGLE, WITH_ANGLE = "tap-hand-bronze", "tap-hand-plain-steel"
"""Entries with a range of threads, and no angle or one of 8 degrees."""

# Derived: the external thread of M10 is 17/24 of 1.5 x 0.866 deep, over four pitches.
OF_FOUR = math.degrees(math.atan(17 / 24 * math.sqrt(3) / 2 / 4))


@pytest.fixture(scope="module")
def yard() -> Book:
    return open_book(BOOK)


def tap(book: Book, entry: str, **more: str) -> Job:
    card = replace(from_entry(book, book.entries[entry]), id="2026-12-01-01", machine="grey-grinder")
    for way, text in (MEASURED | more).items():
        card = edited(card, way, text)
    return work_out(card, book)


def told(job: Job, name: str) -> list[tuple[str, str]]:
    step = job.step(name)
    assert step is not None
    said = [(one.state, say(one.sentence)) for one in step.checks]
    return [(state, text) for state, text in said if "set" in text and f"{OF_FOUR:.2f} deg" in text]


def test_for_want_of_the_threads_the_relief_found_names_their_line_and_it_asks_for_them(yard: Book) -> None:
    job = tap(yard, NO_ANGLE)
    assert received_reliefs(job)[0].trouble == (
        "The relief found stands here once the chamfer has its angle, which follows from the threads in the chamfer: on "
        "the page Wanted, in the line Threads in the chamfer."
    )
    form = CardForm(yard, job.card)
    form.go_to("wanted.chamfer_threads")
    assert form.row.wants
    form.put("4")
    assert not received_reliefs(form.job)[0].trouble


def test_where_the_threads_are_asked_for_among_the_settings_that_page_is_named(yard: Book) -> None:
    job = tap(yard, "tap-spiral-flute-left-hand")
    assert "on the page Set, in the line Threads in the chamfer." in received_reliefs(job)[0].trouble
    form = CardForm(yard, job.card)
    form.go_to("settings.tap-chamfer.chamfer_threads")
    assert form.row.way == "settings.tap-chamfer.chamfer_threads"


def test_the_readings_ask_for_no_angle_of_their_own_while_the_chamfer_finds_it(yard: Book) -> None:
    form = CardForm(yard, tap(yard, NO_ANGLE).card)
    form.go_to("settings.relief-drop")
    assert form.row.below == ("for want of chamfer angle, which is found above",)
    assert not [one.way for one in form.rows if one.way.endswith(".chamfer_angle")]
    form.open_calculation("relief-drop")
    form.go_to("settings.relief-drop.chamfer_angle")
    assert form.row.hint.startswith("Left empty, it is the angle that 'Chamfer of a tap' sets.")


def test_another_angle_typed_for_the_readings_than_is_set_is_on_watch_in_its_line(yard: Book) -> None:
    line = "settings.relief-drop.chamfer_angle"
    job = tap(yard, NO_ANGLE, **{"wanted.chamfer_threads": "4", line: "9 deg"})
    ((state, text),) = told(job, "relief-drop")
    assert state == "watch"
    assert text.startswith(
        f"This is counted with the chamfer angle of 9.00 deg typed here, and {OF_FOUR:.2f} deg is what is set."
    )
    form = CardForm(yard, job.card)
    form.go_to(line)
    assert [one.text for one in form.faults_at(form.row)] == [text]
    form.clear()
    assert not told(form.job, "relief-drop")


@pytest.mark.parametrize(("came", "state"), [("9 deg", "note"), ("12 deg", "watch")])
def test_an_angle_that_the_chamfer_came_with_is_told_beside_the_one_that_is_set(
    yard: Book, came: str, state: str
) -> None:
    measured = {"wanted.chamfer_threads": "4", "received.chamfer_angle": came}
    number = f"{float(came.split(maxsplit=1)[0]):.2f} deg"
    # Where the book wants an angle too, the threads are set; else what was measured.
    assert told(tap(yard, WITH_ANGLE, **measured), "tap-chamfer") == [
        (state, f"The chamfer came with {number}; all is set and read by {OF_FOUR:.2f} deg, which follows from the "
                f"threads. If it keeps its angle, want {number}."),
    ]  # fmt: skip
    assert told(tap(yard, NO_ANGLE, **measured), "tap-chamfer") == [
        (state, f"All is set and read by {number}, as the chamfer came; the 4 threads wanted make {OF_FOUR:.2f} deg. For "
                "those empty the line Chamfer angle on the page Received."),
    ]  # fmt: skip


def test_the_line_that_it_names_is_there_and_emptied_the_threads_are_set(yard: Book) -> None:
    job = tap(yard, NO_ANGLE, **{"wanted.chamfer_threads": "4", "received.chamfer_angle": "12 deg"})
    form = CardForm(yard, job.card)
    form.go_to("received.chamfer_angle")
    assert form.row.label.strip() == "Chamfer angle"
    form.clear()
    step = form.job.step("tap-chamfer")
    assert step is not None
    assert step.answer.result is not None
    assert math.degrees(step.answer.result.outputs["chamfer_angle"]) == pytest.approx(OF_FOUR, abs=0.005)
    assert not [one for one in issues_of(form.job) if "as the chamfer came" in one.text]
