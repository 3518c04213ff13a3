"""The first jobs of a new hand: each number they name is found a second way, and each opens what it says."""

from __future__ import annotations

import math
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from geometry.calculations import calculation
from geometry.role import HEEL
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs
from library.cards.job import work_out
from library.cards.starting import from_entry
from tui.first_jobs import FIRST_JOBS, FirstJob
from tui.session import Session
from tui.view.lines import wrap

Program = Callable[..., AbstractAsyncContextManager[Any]]


def worked(job: FirstJob, **others: str) -> str:
    """All that the calculator says of a job, filled in as the screen fills it, in one line."""
    book = open_book()
    entry, sheet = book.entries[job.entry], calculation(job.sheet)
    session = Session(book=book)
    session.calculators.fill(entry, {**job.typed, **others})
    found = session.calculators.looked_at(entry, sheet).answer
    assert found is not None
    assert found.result is not None, found.issues
    stations = [value for one in found.result.stations for value in one.readings.values()]
    numbers = [*found.result.outputs.values(), *stations]
    return " ".join([*(str(one.sentence) for one in found.result.checks), *(f"{one:.6f}" for one in numbers)])


def job(name: str) -> FirstJob:
    return next(one for one in FIRST_JOBS if one.id == name)


@pytest.mark.parametrize("one", FIRST_JOBS, ids=lambda one: one.id)
def test_each_job_is_about_a_tool_of_the_book_and_says_how_to_know_that_it_is_right(one: FirstJob) -> None:
    assert one.entry in open_book().entries
    assert one.right.endswith(".")
    if one.sheet:
        assert worked(one)


@pytest.mark.parametrize(
    ("name", "number", "said"),
    [
        ("speed", math.pi * 150 * 2800 / 60, "22.0 m/s"),
        ("eccentric", 6 * math.tan(math.radians(8)) / 3, "0.281 mm"),
        ("height", 6 * math.sin(math.radians(8)), "0.835 mm"),
        ("face", 5 * math.sin(math.radians(15)), "1.294 mm"),
        ("reading", math.atan(0.281 / (12 * math.asin(2 / 12))), "7.96 degrees"),
        ("cone", math.atan(math.tan(math.radians(8)) / math.cos(math.radians(45))), "11.24 degrees"),
        ("cone", 4 * math.tan(math.radians(8)) / math.cos(math.radians(45)), "0.795 mm"),
        ("cone", 4 * math.tan(math.radians(8)), "0.562 mm"),
        ("life", 2 * 0.2 * math.tan(math.radians(4)), "0.028 mm"),
    ],
)
def test_the_numbers_of_a_job_come_out_and_are_those_worked_out_by_hand(
    name: str, number: float, said: str
) -> None:
    one = job(name)
    shown = float(said.split(maxsplit=1)[0])
    scale = math.degrees(1) if "degrees" in said else 1 / 1000 if "m/s" in said else 1.0
    assert number * scale == pytest.approx(shown, abs=0.01 if scale != 1 else 0.0006)
    assert said in one.right
    assert f"{number:.3f}"[:-1] in worked(one)


def test_the_card_of_the_last_job_says_what_it_promises() -> None:
    one, book = job("card"), open_book()
    card = from_entry(book, book.entries[one.entry])
    for key, text in one.card.items():
        card = edited(card, key, text)
    worked_out = work_out(card, book)
    (found,) = received_reliefs(worked_out)
    # By hand: the land turns 2 asin(1.6 / 6) = 0.539858 rad; 0.20 / (6 * 0.539858) is the tangent of 3.5334 degrees, and
    # 6 degrees fall 6 * 0.539858 * tan 6 = 0.3404 mm.
    turned = 2 * math.asin(1.6 / 6)
    assert math.degrees(math.atan(0.20 / (6 * turned))) == pytest.approx(3.53, abs=0.005)
    assert 6 * turned * math.tan(math.radians(6)) == pytest.approx(0.34, abs=0.0005)
    assert "3.53 degrees" in one.look
    assert "0.34 mm" in one.right
    assert found.angles["eccentric"] == pytest.approx(math.atan(0.20 / (6 * turned)))
    heel = worked_out.doing(HEEL)
    assert heel is not None
    assert heel.answer.result is not None
    assert heel.answer.result.outputs["heel_drop"] == pytest.approx(0.3404, abs=1e-4)


def test_the_tags_of_the_first_tool_are_as_the_job_tells() -> None:
    values = open_book().entries[job("entry").entry].values
    labels = {key: value.citation.label for key, value in values.items()}
    assert {key for key, label in labels.items() if label == "common practice"} == {"relief_form"}
    assert {key for key, label in labels.items() if label == "from memory"} == {"chamfer_relief_angle"}
    assert set(labels.values()) == {"common practice", "from memory", "published"}


def test_what_a_job_tells_finds_room_under_it_on_a_narrow_screen() -> None:
    assert [one.id for one in FIRST_JOBS if len(wrap(one.guide, 80)) > 4] == []


def test_what_a_job_says_to_change_does_what_it_says() -> None:
    assert "rub" in worked(job("eccentric"), relief_form="flat")
    assert "flat" in worked(job("reading"), second_drop="0.226 mm")
    assert "4456" in job("speed").right
    assert 35_000 / (math.pi * 150) * 60 == pytest.approx(4456, abs=1)


async def test_a_job_opens_filled_in_and_what_was_typed_for_its_tool_is_not_lost_unasked(
    program: Program,
) -> None:
    async with program(other=open_book()) as hands:
        await hands.do("<f8>", "first jobs", "<enter>", "heel that clears", "<enter>")
        assert "Right when: The cam gives 0.281 mm" in hands.words()
        await hands.do("<f9>", "heel that clears", "<enter>")
        assert "Right when: The cam gives 0.281 mm" in hands.words()  # nobody typed anything
        assert " 0.281 " in hands.shown()
        await hands.do("3", "<f9>", "heel that clears", "<enter>")
        assert "Put the numbers of the job in place of what was typed" in hands.words()
        await hands.press("enter")
        assert "First jobs" in hands.lines()[0]
