"""Limits of a reamer name the class of hole that they are for; a diameter that is ground down to stands at the heel."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet
from tui.view.card_row import Opened, Row
from tui.view.card_settings_rows import settings_rows


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def rows(book: Book, entry: str, **texts: str) -> dict[str, Row]:
    card = from_entry(book, book.entries[entry])
    for way, text in texts.items():
        card = edited(card, way, text)
    return {row.way: row for row in settings_rows(work_out(card, book), Opened())}


def test_limits_for_a_class_that_nobody_gave_say_that_it_is_presumed_and_not_that_they_are_kept(
    shipped: Book,
) -> None:
    # H7 of 12.7 mm is 0 to 18 um (ISO 286-1): the reamer 12.7 + 0.85 x 0.018 = 12.715, and 0.35 of the class less.
    found = rows(shipped, "reamer-hand-plain-steel", **{"tool.size": "1/2 in"})
    low, high = found["settings.reamer-size"].told
    assert (low.value, low.note, high.value) == ("12.708 mm", "H7, presumed", "12.715 mm")
    row = found["settings.reamer-size.hole_tolerance"]
    assert (row.text, row.default) == ("", "H7")


def test_limits_for_a_class_that_was_given_name_it_alone(shipped: Book) -> None:
    texts = {"tool.size": "12 mm", "settings.reamer-size.hole_tolerance": "H8"}
    low, _ = rows(shipped, "reamer-hand-plain-steel", **texts)["settings.reamer-size"].told
    assert low.note == "ok (H8)"


def test_the_sheet_names_the_class_of_the_hole(shipped: Book) -> None:
    card = edited(from_entry(shipped, shipped.entries["reamer-hand-plain-steel"]), "tool.size", "12 mm")
    assert "The hole H7 (presumed) may be 12.000 mm to 12.018 mm" in setup_sheet(work_out(card, shipped))


def test_the_diameter_that_a_drill_is_ground_down_to_stands_among_its_facets(shipped: Book) -> None:
    texts = {
        "tool.size": "9.7 mm",
        "received.diameter": "10 mm",
        "settings.relief-facets.body_diameter": "10 mm",
    }
    row = rows(shipped, "twist-drill-ground-down", **texts)["settings.relief-facets.diameter"]
    assert (row.default, row.giver) == ("9.7 mm", "as it is to be")
    texts["tool.size"] = "10 mm"
    assert "settings.relief-facets.diameter" not in rows(shipped, "twist-drill-ground-down", **texts)


def test_a_tool_that_grows_toward_its_back_has_the_line_to_say_that_it_cuts_a_taper(shipped: Book) -> None:
    taper = {"settings.back-taper.back_diameter": "7.2 mm", "settings.back-taper.taper_length": "60 mm"}
    way = "settings.back-taper.taper_direction"
    found = rows(shipped, "reamer-hand-plain-steel", **{"tool.size": "6 mm"}, **taper)
    assert found[way].choices == ("", "smaller", "larger")
    told = rows(shipped, "reamer-hand-plain-steel", **{"tool.size": "6 mm"}, **taper, **{way: "larger"})
    assert "settings.back-taper.wanted_taper" in told
    assert "settings.back-taper.wanted_taper" not in found
