"""A heel that was read higher than its edge is told at once, as it came and after grinding, with or without a tolerance."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted

CARD = Card(
    family="countersink",
    tool=Tool("C-1", "12 mm", flutes="3"),
    wanted={"cone_relief_angle": Wanted("8 deg"), "included_angle": Wanted("90 deg")},
    received={"diameter": ("12 mm",), "land_width": ("3 mm",)},
)
PROUD = ("-.5 mm", ".5 mm", ".5 mm")


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def told(card: Card, book: Book, way: str) -> list[tuple[str, str]]:
    return [(one.state, one.text) for one in issues_of(work_out(card, book)) if one.way == way]


def test_as_received_it_is_on_watch(book: Book) -> None:
    ((state, text),) = told(replace(CARD, received={**CARD.received, "drop": PROUD}), book, "received.drop")
    assert state == "watch"
    assert "flute 1: the heel stands 0.500 mm higher than the edge" in text


def test_after_grinding_it_stops_also_where_nothing_is_judged_yet(book: Book) -> None:
    ((state, text),) = told(replace(CARD, after={"drop": Inspection(PROUD)}), book, "after.drop")
    assert state == "stop"
    assert "flute 1: the heel stands 0.500 mm higher than the edge" in text


def test_a_tool_that_ended_as_another_one_is_kept_open_by_none(book: Book) -> None:
    card = replace(CARD, after={"drop": Inspection(PROUD)}, result="scrapped")
    assert [state for state, _ in told(card, book, "after.drop")] == ["watch"]


def test_where_the_tolerance_tells_how_far_off_it_is_nothing_is_said_twice(book: Book) -> None:
    found = told(replace(CARD, after={"drop": Inspection(PROUD, tolerance="0.1 mm")}), book, "after.drop")
    assert sum("flute 1" in text for _, text in found) == 1


@pytest.mark.parametrize("drop", ["0 mm", "0.5 mm", "x"])
def test_a_heel_that_does_not_stand_higher_is_not_told_so(book: Book, drop: str) -> None:
    card = replace(CARD, received={**CARD.received, "drop": (drop,)}, after={"drop": Inspection((drop,))})
    said = " ".join(text for way in ("received.drop", "after.drop") for _, text in told(card, book, way))
    assert "higher than the edge" not in said
