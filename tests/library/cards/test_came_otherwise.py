"""A tool that came with another angle of its shape than the wanted one: what is ground anew is told before the wheel turns."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.issues import issues_of, keeps_open
from library.cards.job import work_out
from library.cards.model import Card, Wanted


def told(card: Card, book: Book, key: str) -> list[str]:
    return [
        one.text
        for one in issues_of(work_out(card, book))
        if one.way == f"wanted.{key}" and "came" in one.text
    ]


@pytest.mark.parametrize(
    ("family", "key", "what"),
    [
        ("countersink", "included_angle", "cone"),
        ("twist-drill", "point_angle", "point"),
        ("reamer", "bevel_angle", "bevel lead"),
    ],
)
def test_a_shape_that_is_not_the_wanted_one_is_a_watch_at_the_wanted_line(
    book: Book, family: str, key: str, what: str
) -> None:
    card = Card(family=family, wanted={key: Wanted("45 deg", "45 deg")})
    came = edited(card, f"received.{key}", "41 deg")
    (one,) = told(came, book, key)
    assert f"it came with 41.00 deg, 45.00 deg is wanted: the whole {what} is ground anew." in one
    assert "want 41.00 deg" in one
    assert not any("came" in issue.text for issue in keeps_open(work_out(came, book)))


@pytest.mark.parametrize("reading", ["82 deg", "82.5 deg", "81.5 deg", "82 deg, 118 deg"])
def test_a_shape_within_half_a_degree_or_with_the_cone_among_several_is_believed(
    book: Book, reading: str
) -> None:
    card = Card(family="countersink", wanted={"included_angle": Wanted("82 deg", "82 deg")})
    assert told(edited(card, "received.included_angle", reading), book, "included_angle") == []


def test_a_wanted_angle_that_a_person_made_the_measured_one_is_told_no_more(book: Book) -> None:
    card = Card(family="countersink", wanted={"included_angle": Wanted("90 deg", "90 deg")})
    came = edited(card, "received.included_angle", "82 deg")
    assert told(came, book, "included_angle")
    kept = replace(came, wanted={"included_angle": Wanted("82 deg", "90 deg")})
    assert told(kept, book, "included_angle") == []
