"""Threads and angle of a tap's chamfer are one cone: one is set, the other follows, and both numbers are told.

The external depth of an ISO thread is 17/24 of the fundamental triangle height, 0.61343 of the pitch (ISO 68-1), so
three threads rise at atan(0.61343 / 3), 11.56 degrees, and 8 degrees take 4.36 threads, whatever the pitch. Derived.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool, Wanted
from library.cards.settings_lines import setting_lines
from library.cards.step import Step
from library.issue import Issue
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC

DEPTH = 17 / 24 * math.sqrt(3) / 2
OF_THREE = math.atan(DEPTH / 3)


def tap(threads: str = "3", angle: str = "8 deg") -> Card:
    """A tap whose entry wants both."""
    wanted = {"chamfer_threads": threads, "chamfer_angle": angle, "chamfer_relief_angle": "6 deg"}
    return Card(
        family="tap",
        tool=Tool("T-1", thread="M12 x 1.75", flutes="3"),
        received={"land_width": ("3 mm",), "land_measured_as": ("arc",)},
        wanted={
            "relief_form": Wanted("eccentric"),
            **{key: Wanted(text, text, "a book") for key, text in wanted.items() if text},
        },
    )


def step_of(job: Job, name: str) -> Step:
    step = job.step(name)
    assert step is not None
    assert step.answer.result is not None
    return step


def told(job: Job) -> list[Issue]:
    return [one for one in issues_of(job) if one.way in {"wanted.chamfer_angle", "wanted.chamfer_threads"}]


def set_to(job: Job) -> list[str]:
    return [line.value for line in setting_lines(job, METRIC) if line.key == "chamfer_angle"]


def read_by(job: Job) -> object:
    return step_of(job, "relief-drop").answer.inputs["chamfer_angle"].value


def test_the_count_of_threads_is_set_and_the_readings_go_by_the_angle_that_follows(book: Book) -> None:
    job = work_out(tap(), book)
    assert set_to(job) == ["11.56 deg"]
    assert read_by(job) == pytest.approx(OF_THREE)
    assert step_of(job, "relief-drop").provenance["chamfer_angle"] == "worked"
    # Square to the chamfer the relief of 6 degrees looks smaller by the cosine of the angle that is set.
    square = step_of(job, "relief-drop").answer.result
    assert square is not None
    assert math.tan(square.outputs["normal_relief_angle"]) == pytest.approx(
        math.tan(math.radians(6)) * math.cos(OF_THREE)
    )


def test_a_watch_names_both_numbers_and_which_of_them_is_set(book: Book) -> None:
    job = work_out(tap(), book)
    (one,) = told(job)
    assert (one.way, one.state) == ("wanted.chamfer_angle", "watch")
    assert one.text == (
        "Chamfer angle: 8 deg wanted, but 3 threads of chamfer make 11.56 deg on this tap. The threads are set and the "
        "angle follows: write 11.56 deg for the angle, or other threads."
    )
    for form in ("text", "markdown", "html"):
        page = " ".join(setup_sheet(job, form).split())
        assert "8 deg wanted, but 3 threads of chamfer make 11.56 deg on this tap." in page
        # No other angle of the chamfer stands anywhere on the page.
        assert "Chamfer angle: 8 deg," not in page.replace("Chamfer angle: 8 deg wanted", "")


def test_doing_what_the_watch_says_removes_it(book: Book) -> None:
    job = work_out(edited(tap(), "wanted.chamfer_angle", "11.56 deg"), book)
    assert told(job) == []
    assert set_to(job) == ["11.56 deg"]
    threads = work_out(edited(tap(), "wanted.chamfer_threads", "4.36"), book)
    assert told(threads) == []
    assert set_to(threads) == ["8.01 deg"]


def typed(card: Card, **texts: str) -> Card:
    for key, text in texts.items():
        card = edited(card, f"wanted.{key}", text)
    return card


@pytest.mark.parametrize(
    "card",
    [
        typed(tap("", "8 deg"), chamfer_threads="3"),
        typed(tap("4", "8 deg"), chamfer_threads="3", chamfer_angle="9 deg"),
    ],
    ids=["typed beside the book", "both changed"],
)
def test_to_empty_the_threads_is_offered_where_the_angle_is_set_then(book: Book, card: Card) -> None:
    (one,) = told(work_out(card, book))
    assert one.text.endswith("for the angle, or other threads, or empty the threads.")
    emptied = work_out(edited(card, "wanted.chamfer_threads", ""), book)
    assert not any(issue.key == "chamfer_angle" for issue in told(emptied))
    assert set_to(emptied) == [f"{float(card.wanted['chamfer_angle'].value.split()[0]):.2f} deg"]


def test_to_empty_the_threads_is_not_offered_where_those_of_the_book_would_come_back(book: Book) -> None:
    (one,) = told(work_out(tap(), book))
    assert "empty" not in one.text
    again = edited(tap(), "wanted.chamfer_threads", "")
    assert told(work_out(again, book)) == [one]


@pytest.mark.parametrize("angle", ["12 deg", "11.6 deg", "11.56 deg", "11 deg 33 min"])
def test_what_differs_only_by_rounding_is_told_nowhere(book: Book, angle: str) -> None:
    job = work_out(tap(angle=angle), book)
    assert told(job) == []
    assert read_by(job) == pytest.approx(OF_THREE)


@pytest.mark.parametrize("angle", ["11 deg", "11.5 deg", "11.57 deg", "11 deg 30 min"])
def test_what_differs_by_more_than_rounding_is_told(book: Book, angle: str) -> None:
    assert [one.way for one in told(work_out(tap(angle=angle), book))] == ["wanted.chamfer_angle"]


def test_a_person_who_changes_the_angle_alone_means_the_angle(book: Book) -> None:
    job = work_out(edited(tap(), "wanted.chamfer_angle", "20 deg"), book)
    assert set_to(job) == ["20.00 deg"]
    assert read_by(job) == pytest.approx(math.radians(20))
    (one,) = [one for one in told(job) if not one.way.endswith("reason") and "wanted, but" in one.text]
    # 0.61343 / tan 20 is 1.685 threads.
    assert (one.way, one.state) == ("wanted.chamfer_threads", "watch")
    assert "3 wanted, but an angle of 20 deg makes 1.685 threads on this tap. The angle is set" in one.text


def test_threads_typed_at_the_chamfer_bring_the_readings_with_them(book: Book) -> None:
    card = edited(tap(threads="3 to 5"), "settings.tap-chamfer.chamfer_threads", "5")
    job = work_out(card, book)
    assert read_by(job) == pytest.approx(math.atan(DEPTH / 5))
    assert set_to(job) == ["6.99 deg"]
    assert [one.way for one in told(job)] == ["wanted.chamfer_angle"]


@pytest.mark.parametrize(
    ("threads", "ways"), [("3 to 5", []), ("7 to 10", ["wanted.chamfer_threads"]), ("", [])]
)
def test_an_angle_alone_is_set_and_its_threads_are_held_against_the_range(
    book: Book, threads: str, ways: list[str]
) -> None:
    job = work_out(tap(threads=threads), book)
    assert set_to(job) == ["8.00 deg"]
    assert read_by(job) == pytest.approx(math.radians(8))
    assert [one.way for one in told(job)] == ways


def test_without_the_chamfer_in_the_job_the_readings_go_by_the_wanted_angle(book: Book) -> None:
    job = work_out(edited(tap(), "settings.tap-chamfer", "skip"), book)
    assert told(job) == []
    assert set_to(job) == []
    assert read_by(job) == pytest.approx(math.radians(8))


def test_a_taper_pipe_tap_takes_the_chamfer_of_its_own_kind(book: Book) -> None:
    pipe = tap(threads="2.5", angle="")
    pipe = replace(
        pipe,
        tool=Tool("T-9", thread="1/2 NPT", flutes="4"),
        received={**pipe.received, "gauge_projection": ("14.5 mm",)},
    )
    job = work_out(pipe, book)
    assert [one.sheet.name for one in job.steps if one.in_use and "chamfer_angle" in one.sheet.role.sets] == [
        "pipe-tap"
    ]
    # Derived: 0.8 of the pitch over 2.5 threads, and the thread's own 1 in 32 on each side.
    result = step_of(job, "pipe-tap").answer.result
    assert result is not None
    assert math.tan(result.outputs["chamfer_angle"]) == pytest.approx(0.8 / 2.5 + 1 / 32)
    assert set_to(job) == ["19.35 deg"]
    assert read_by(job) == pytest.approx(math.atan(0.8 / 2.5 + 1 / 32))
    plain = work_out(tap(), book)
    assert [
        one.sheet.name for one in plain.steps if one.in_use and "chamfer_angle" in one.sheet.role.sets
    ] == ["tap-chamfer"]
