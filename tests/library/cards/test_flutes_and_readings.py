"""Readings of another number than the flutes, counted on the tool or only of the book, are said where they stand. By hand."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.inspecting import received_reliefs
from library.cards.issues import issues_of, keeps_open
from library.cards.job import Job, work_out
from library.cards.model import Card
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet

TAP = "left-hand-tap-plain-steel"
THREE, FOUR = "2.4 mm, 2.4 mm, 2.5 mm", "2.4 mm, 2.4 mm, 2.5 mm, 2.5 mm"


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


@pytest.fixture(scope="module")
def card(book: Book) -> Card:
    """A tap on which nobody counted flutes; the book has four for such a tool."""
    flutes = book.entries[TAP].values["flutes"].usual
    assert flutes is not None
    assert flutes.number == 4
    found = replace(from_entry(book, book.entries[TAP]), id="2026-12-01-01")
    for place, text in {"tool.thread": "M10", "tool.flutes": "", "received.diameter": "9.98 mm",
                        "received.land_measured_as": "chord"}.items():  # fmt: skip
        found = edited(found, place, text)
    return found


def told(card: Card, book: Book, **places: str) -> Job:
    for place, text in places.items():
        card = edited(card, place.replace("__", "."), text)
    return work_out(card, book)


def said_of(job: Job) -> dict[str, tuple[str, str]]:
    """State and sentence of what is said of the number of readings, by the way to them."""
    return {one.way: (one.state, one.text) for one in issues_of(job) if "readings, and" in one.text}


def test_readings_of_another_number_than_the_flutes_of_the_book_are_watched(card: Card, book: Book) -> None:
    job = told(
        card,
        book,
        received__land_width=THREE,
        received__drop="0.2 mm, 0.2 mm",
        after__drop="0.3 mm, 0.3 mm, 0.3 mm",
    )
    what = (
        "Give one for all or one for each, or count the flutes of the tool and write them in the line Flutes."
    )
    assert said_of(job) == {
        "received.land_width": (
            "watch",
            f"Land width: there are 3 readings, and the book has 4 flutes. {what}",
        ),
        "received.drop": (
            "watch",
            f"Indicator drop: there are 2 readings, and the book has 4 flutes. {what}",
        ),
        "after.drop": ("watch", f"Indicator drop: there are 3 readings, and the book has 4 flutes. {what}"),
    }
    assert not any("readings, and" in one.text for one in keeps_open(job))


def test_the_sheet_says_it_and_has_a_box_for_each_flute_of_the_book(card: Card, book: Book) -> None:
    text = " ".join(
        setup_sheet(
            told(card, book, received__land_width=THREE, after__drop="0.3 mm, 0.3 mm, 0.3 mm")
        ).split()
    )
    assert "WATCH Land width: there are 3 readings, and the book has 4 flutes." in text
    assert "3 0.3 mm 4 [________]" in text


@pytest.mark.parametrize("lands", ["2.4 mm", FOUR])
def test_one_for_all_and_one_for_each_are_taken_without_a_word(card: Card, book: Book, lands: str) -> None:
    assert not said_of(told(card, book, received__land_width=lands, after__drop=lands))


def test_a_number_that_the_card_wants_is_not_called_the_books(card: Card, book: Book) -> None:
    job = told(card, book, wanted__flutes="5", received__land_width=THREE)
    assert "3 readings, and the card counts with 5 flutes." in said_of(job)["received.land_width"][1]


def test_flutes_that_were_counted_keep_the_card_open_until_each_has_its_land(card: Card, book: Book) -> None:
    job = told(card, book, tool__flutes="4", received__land_width=THREE)
    assert [one.text for one in keeps_open(job) if one.way == "received.land_width"] == [
        "Land width: flute 4 of 4 has no reading. Measure it, such as 3.2 mm, 1/8 in or 40 thou. Or give one for all."
    ]
    assert not said_of(told(card, book, tool__flutes="3", received__land_width=THREE))


def test_where_nobody_knows_the_flutes_readings_go_with_the_lands(book: Book) -> None:
    card = Card(family="tap")
    job = told(card, book, received__land_width=THREE, after__drop="0.3 mm, 0.3 mm")
    assert "there are 2 readings, and 3 lands." in said_of(job)["after.drop"][1]
    assert not said_of(told(card, book, received__land_width=THREE, after__drop="0.3 mm, 0.3 mm, 0.3 mm"))


def test_one_reading_of_eight_flutes_is_one_stop_that_says_how_it_stands_for_all(
    card: Card, book: Book
) -> None:
    job = told(card, book, tool__flutes="8", after__drop=".154 mm")
    assert [one.text for one in keeps_open(job) if one.way == "after.drop"] == [
        "Indicator drop: there is 1 reading of 8, one for each flute. Measure the other 7 too. Or write 8x .154 mm, if all were "
        "found alike."
    ]
    some = told(card, book, tool__flutes="8", after__drop=".154 mm, , .15 mm")
    assert [one.text for one in keeps_open(some) if one.way == "after.drop"] == [
        "Indicator drop: there are 3 readings of 8, one for each flute. Measure the other 5 too.",
        "Indicator drop: flute 2 of 8 has no reading. Measure it, such as 3.2 mm, 1/8 in or 40 thou.",
    ]


@pytest.mark.parametrize("typed", ["8x .154 mm", "8x.154 mm", "7x .154 mm, .154 mm", "8X  .154 mm"])
def test_a_reading_behind_its_number_stands_for_so_many_flutes(card: Card, book: Book, typed: str) -> None:
    job = told(card, book, tool__flutes="8", after__drop=typed)
    assert job.card.after["drop"].readings == (".154 mm",) * 8
    assert not [one for one in keeps_open(job) if one.way == "after.drop"]


@pytest.mark.parametrize("typed", ["8x1", "0x 1 mm", "x 1 mm"])
def test_what_is_no_number_of_readings_stays_as_it_was_typed(card: Card, typed: str) -> None:
    assert edited(card, "received.drop", typed).received["drop"] == (typed,)


def test_readings_with_bare_commas_are_told_with_both_meanings_in_every_place_and_never_taken_for_one_of_all(
    card: Card, book: Book
) -> None:
    read = {"tool__flutes": "3", "received__land_width": "2.4 mm", "received__drop": "26,26,25,5 thou"}
    job = told(card, book, **read)
    both = (
        "'26,26,25,5 thou' has commas without a blank; write 26, 26, 25, 5 thou for several numbers, and a decimal with a "
        "point, such as 26, 26, 25.5 thou."
    )
    assert [one.trouble for one in received_reliefs(job)] == [both]
    issues = [one.text for one in issues_of(job) if one.way == "received.drop"]
    assert issues[0] == f"Indicator drop: {both}"
    assert not any("3x" in one for one in issues)
