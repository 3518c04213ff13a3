"""A tool that is measured smaller than it must be after grinding is told of on Received, not only when it was ground.

ISO 286: a hole 10 H7 is 10.000 to 10.015 mm; a worn reamer serves it down to 10.000 mm.
"""

from __future__ import annotations

from datetime import date

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.issues import issues_of, keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Setting, Tool
from library.cards.starting import again


def reamer(came: str, hole: str = "", **asked: str) -> Card:
    return Card(
        id="2026-11-25-01",
        started=date(2026, 11, 25),
        family="reamer",
        units="in",
        tool=Tool("R-1", "3/4 in" if not hole else "10 mm", flutes="6"),
        received={"diameter": (came,)} if came else {},
        settings={"reamer-size": Setting({"hole_tolerance": hole})} if hole else {},
        after={"diameter": Inspection((), **asked)} if asked else {},
    )


def told(card: Card, book: Book) -> list[str]:
    found = issues_of(work_out(card, book))
    return [one.text for one in found if one.way == "received.diameter" and "under size" in one.text]


def test_the_same_job_again_says_that_the_reamer_came_smaller_than_the_first_card_asked(book: Book) -> None:
    first = reamer(".7506 in", wanted=".7505 in", tolerance=".0002 in")
    second = edited(again(first, book), "received.diameter", ".7489 in")
    assert told(second, book) == [
        "Diameter: it came under size: 0.7489 in is less than the 0.7503 in that it must have after grinding, as card "
        "2026-11-25-01 had it. Measure it again; if it is so, say on After what it shall be now, or in the result what becomes "
        "of it."
    ]
    # It is no slip that keeps the card: what becomes of the tool is said at its end.
    assert not [one for one in keeps_open(work_out(second, book)) if one.way == "received.diameter"]


@pytest.mark.parametrize(("came", "is_under"), [(".7503 in", False), (".7506 in", False), (".7502 in", True)])
def test_a_diameter_counts_as_under_size_below_its_tolerance_only(
    book: Book, came: str, is_under: bool
) -> None:
    assert bool(told(reamer(came, wanted=".7505 in", tolerance=".0002 in"), book)) == is_under


@pytest.mark.parametrize(("came", "is_under"), [(".7489 in", True), (".7496 in", False)])
def test_a_range_counts_with_the_tolerance_beside_it(book: Book, came: str, is_under: bool) -> None:
    asked = reamer(came, wanted=".75 to .7505 in", tolerance=".0005 in")
    assert bool(told(asked, book)) == is_under


def test_without_a_limit_nothing_is_under_size(book: Book) -> None:
    assert told(reamer(".7489 in", wanted=".7505 in"), book) == []
    assert told(reamer(".7489 in", wanted=".7505 in", tolerance=".7503 in"), book) == []


@pytest.mark.parametrize(("came", "is_under"), [("9.998 mm", True), ("10.001 mm", False)])
def test_a_hole_that_was_named_limits_it_down_to_where_a_worn_reamer_serves(
    book: Book, came: str, is_under: bool
) -> None:
    assert bool(told(reamer(came, "H7"), book)) == is_under
