"""A tolerance as large as the number beside it is doubted at its line, and no reading passes by it. By hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.cards.inspecting import verdicts
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted


def countersink(key: str, *readings: str, within: str, wanted: str = "") -> Card:
    return Card(
        family="countersink",
        units="in",
        tool=Tool("C-1", "3/4 in", flutes="3"),
        wanted={"included_angle": Wanted("82 deg"), "cone_relief_angle": Wanted("8 deg")},
        after={key: Inspection(readings, wanted, within)},
    )


def doubts(card: Card, book: Book, key: str) -> list[tuple[str, str]]:
    found = issues_of(work_out(card, book))
    return [(one.state, one.text) for one in found if one.way == f"after.{key}.tolerance"]


def marks(card: Card, book: Book, key: str) -> list[str]:
    found = verdicts(work_out(card, book))
    return [mark.state for one in found if one.key == key for mark in one.marks]


def test_no_drop_passes_within_the_drop_itself_typed_once_more(book: Book) -> None:
    card = countersink("drop", "1 thou", "1 thou", "1 thou", within="26 thou", wanted="25.8 thou")
    assert all(one.may_be is None for one in verdicts(work_out(card, book)))
    assert marks(card, book, "drop") == ["watch"] * 3
    assert doubts(card, book, "drop") == [
        (
            "watch",
            "Tolerance of the indicator drop: 26 thou is about as much as the 25.8 thou wanted, or more: by it nothing is judged. "
            "The line within says how far off a reading may be; what it shall be has a line of its own.",
        )
    ]


def test_no_diameter_passes_within_the_diameter_itself_though_a_little_off(book: Book) -> None:
    card = countersink("diameter", ".7489 in", within=".7503 in", wanted=".7505 in")
    assert marks(card, book, "diameter") == ["watch"]
    ((state, text),) = doubts(card, book, "diameter")
    assert state == "watch"
    assert text.startswith(
        "Tolerance of the diameter: .7503 in is about as much as the 0.7505 in wanted, or more"
    )


@pytest.mark.parametrize(("reading", "state"), [("7 deg", "pass"), ("9 deg", "stop")])
def test_a_range_judges_alone_beside_a_tolerance_as_large_as_itself(
    book: Book, reading: str, state: str
) -> None:
    card = countersink("cone_relief_angle", *[reading] * 3, within="8 deg", wanted="6 to 8 deg")
    assert set(marks(card, book, "cone_relief_angle")) == {state}
    assert len(doubts(card, book, "cone_relief_angle")) == 1


@pytest.mark.parametrize(
    ("key", "wanted", "within", "said"),
    [
        ("drop", "26 thou", "13 thou", "is half of the 26 thou wanted, or more"),
        ("drop", "26 thou", "+12 -2 thou", ""),
        ("drop", "26 thou", "2 thou", ""),
        ("diameter", ".75 in", "0.1 in", "is more than a tenth of the 0.7500 in wanted"),
        ("diameter", ".75 in", "+0 -5 thou", ""),
        ("cone_relief_angle", "8 deg", "5 deg", "is half of the 8.00 deg wanted, or more"),
        ("cone_relief_angle", "6 to 8 deg", "1 deg", ""),
        # A rake of a degree within two is a rake that may be none.
        ("rake_angle", "1 deg", "2 deg", ""),
        ("rake_angle", "0 deg", "2 deg", ""),
    ],
)
def test_a_tolerance_is_doubted_from_half_a_drop_and_a_tenth_of_a_diameter_on_and_judges_all_the_same(
    book: Book, key: str, wanted: str, within: str, said: str
) -> None:
    first, *_, unit = wanted.split()
    reading = f"{first} {unit}"
    card = countersink(key, *[reading] * (1 if key == "diameter" else 3), within=within, wanted=wanted)
    found = doubts(card, book, key)
    assert [said in text and state == "watch" for state, text in found] == ([True] if said else [])
    assert set(marks(card, book, key)) == {"pass"}


def test_a_tolerance_alone_is_held_against_what_the_setting_gives(book: Book) -> None:
    land = {"diameter": (".75 in",), "land_width": (".14 in",)}
    card = replace(countersink("drop", "26 thou", within="30 thou"), received=land)
    assert "thou wanted, or more" in doubts(card, book, "drop")[0][1]
