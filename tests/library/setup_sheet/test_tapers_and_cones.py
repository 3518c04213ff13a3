"""Of a tool whose diameter changes along its edge the sheet says which way, how that is proved, and where the drop holds."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card
from library.setup_sheet.sheets import FORMATS, setup_sheet
from tests.begun_cards import begun_bare
from tests.library.setup_sheet.test_on_paper import words_of

TAPER = {
    "tool.size": "6 mm",
    "tool.flutes": "6",
    "received.land_width": "1 mm",
    "wanted.relief_form": "eccentric",
    "settings.back-taper.taper_ratio": "1/50",
    "settings.back-taper.distance_from_front": "100 mm",
}

SAID = "so that the tool grows toward its shank, and prove it: an indicator along the side rises 1.000 mm over 100.000 mm."
"""A fiftieth on the diameter is a hundredth on a side: 1 mm over 100 mm. By hand."""


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book()


def card_of(book: Book, entry: str, typed: dict[str, str]) -> Card:
    return replace(begun_bare(book, entry, **typed), id="2026-11-25-01")


def plain(text: str, form: str) -> str:
    return " ".join(words_of(text) if form == "html" else text.replace("*", "").replace("\\", "").split())


@pytest.mark.parametrize("form", sorted(FORMATS))
def test_a_taper_says_which_way_it_grows_and_what_proves_it_with_the_settings_and_once(
    book: Book, form: str
) -> None:
    told = plain(setup_sheet(work_out(card_of(book, "reamer-taper-pin", TAPER), book), form), form)
    assert told.count(SAID) == 1
    assert told.index("Swivel angle") < told.index(SAID) < told.index("After grinding")


def test_it_gives_way_to_nothing_on_a_full_paper(book: Book) -> None:
    card = edited(card_of(book, "reamer-taper-pin", TAPER), "notes", "one more line of notes. " * 60)
    assert SAID in " ".join(setup_sheet(work_out(card, book)).split())


def test_the_readings_of_a_taper_and_of_a_cone_say_at_which_diameter_they_hold(book: Book) -> None:
    taper = setup_sheet(work_out(card_of(book, "reamer-taper-pin", TAPER), book))
    assert "Read at 6.000 mm diameter, zero at the edge; drop: indicator at the axis" in taper
    sunk = {"tool.size": "20 mm", "tool.flutes": "3", "received.land_width": "3 mm"}
    cone = setup_sheet(work_out(card_of(book, "countersink-multi-flute-90-plain-steel", sunk), book))
    assert "Read at 20.000 mm diameter, zero at the edge" in cone


def test_those_of_a_parallel_tool_are_the_same_all_along_it(book: Book) -> None:
    straight = {"tool.size": "12 mm", "tool.flutes": "6", "received.land_width": "1 mm"}
    card = card_of(
        book,
        "reamer-machine-plain-steel",
        {**straight, "wanted.surface": "land", "wanted.relief_form": "eccentric"},
    )
    assert "Read on the way, zero at the edge" in setup_sheet(work_out(card, book))


@pytest.mark.parametrize("form", sorted(FORMATS))
def test_over_readings_of_lands_that_differ_on_a_cone_it_is_told_to_the_end_where_the_indicator_points(
    book: Book, form: str
) -> None:
    sunk = {"tool.size": "3/4 in", "tool.flutes": "3", "received.land_width": ".140, .142, .140 in"}
    card = replace(card_of(book, "countersink-multi-flute-90-plain-steel", sunk), units="in")
    told = setup_sheet(work_out(card, book), form)
    over = "Read at 0.7500 in diameter, widest land, flute 2, zero at the edge; drop: indicator at the axis"
    assert over in plain(told, form)
    assert form != "text" or max(map(len, told.splitlines())) <= 80
