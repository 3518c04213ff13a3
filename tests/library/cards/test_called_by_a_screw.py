"""A tool without a thread that is called by the screw it is for has another diameter than that screw."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import answer
from library.cards.editing import edited
from library.cards.issues import issues_of
from library.cards.job import Job, work_out
from library.cards.starting import found_with, from_entry
from library.search.along import Along
from library.search.sizes import Size
from library.units.system import METRIC


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def begun(book: Book, entry: str, **texts: str) -> Job:
    card = from_entry(book, book.entries[entry])
    for way, text in texts.items():
        card = edited(card, way, text)
    return work_out(card, book)


def told(job: Job) -> list[str]:
    return [one.text for one in issues_of(job) if "is the screw or its thread" in one.text]


@pytest.mark.parametrize("line", ["tool.size", "tool.thread"])
def test_a_screw_as_the_size_of_a_counterbore_sets_nothing_and_is_told(shipped: Book, line: str) -> None:
    job = begun(shipped, "counterbore-plain-steel", **{line: "M8"})
    assert job.known_text("diameter") == ""
    (said,) = told(job)
    assert said.startswith("M8 is the screw")


def test_once_the_diameter_is_measured_or_in_the_book_nothing_is_left_to_tell(shipped: Book) -> None:
    measured = begun(
        shipped, "counterbore-plain-steel", **{"tool.size": "M8", "received.diameter": "14.98 mm"}
    )
    assert (measured.known_text("diameter"), told(measured)) == ("14.98 mm", [])
    # Nor is it held against the 8 mm of the screw.
    assert [one for one in issues_of(measured) if "believed" in one.text] == []
    of_book = begun(shipped, "counterbore-m8", **{"tool.size": "M8"})
    step = of_book.step("end-teeth")
    assert step is not None
    assert told(of_book) == []
    assert step.answer.inputs["diameter"].text == "15 mm"  # as the book has it for the head of M8


def test_the_thread_of_a_tap_and_the_number_of_a_drill_are_their_sizes(shipped: Book) -> None:
    tap = begun(shipped, "tap-hand-plain-steel", **{"tool.thread": "M8"})
    drill = begun(shipped, "twist-drill-ground-down", **{"tool.size": "#7"})
    assert tap.known_text("diameter") == "8 mm"
    assert drill.known_text("diameter") == "0.2010 in"
    assert told(tap) == told(drill) == []


def test_a_value_by_size_is_not_taken_by_the_screw(shipped: Book) -> None:
    entry, size = shipped.entries["twist-drill-type-n"], Size("M8", True)
    card = found_with(from_entry(shipped, entry, "mm", size), Along(size))
    assert (card.tool.thread, card.wanted) == ("M8", from_entry(shipped, entry).wanted)


def test_the_calculator_asks_for_the_diameter_of_the_cutter(shipped: Book) -> None:
    entry = shipped.entries["counterbore-plain-steel"]
    found = answer(calculation("end-teeth"), {"diameter": "M8"}, entry=entry, book=shipped, display=METRIC)
    assert found.result is None
    assert any("M8 is the screw" in one.text for one in found.issues)
    tap = shipped.entries["tap-hand-plain-steel"]
    found = answer(calculation("relief-drop"), {"diameter": "M8"}, entry=tap, book=shipped, display=METRIC)
    assert found.inputs["diameter"].value == 8.0
    # A calculation of the thread itself is about M8, whatever drill is chosen.
    drill = shipped.entries["twist-drill-ground-down"]
    found = answer(calculation("screw-thread"), {"diameter": "M8"}, entry=drill, book=shipped, display=METRIC)
    assert found.inputs["diameter"].value == 8.0


def test_nothing_of_the_screw_stands_beside_the_tool(shipped: Book) -> None:
    from library.pages.card_answers import tool_answers

    job = begun(shipped, "counterbore-plain-steel", **{"tool.thread": "M8"})
    shown = repr(list(tool_answers(job, "thread")))
    assert "8 mm" not in shown
