"""The boxes of a setup sheet: one to tick for each setting, and those to write in what is read, for each flute at each place."""

from __future__ import annotations

import re

import pytest

from library.book.model import Book
from library.cards.editing import edited
from library.cards.model import Card
from tests.library.setup_sheet.conftest import sheet


@pytest.mark.parametrize(("ground", "other"), [("chamfer", "thread land"), ("thread-land", "chamfer")])
def test_the_boxes_for_the_drop_stand_under_the_surface_that_falls_so_and_no_other(
    sheet_book: Book, tap_card: Card, ground: str, other: str
) -> None:
    card = edited(edited(tap_card, "wanted.chamfer_relief_angle", "8 deg"), "wanted.surface", ground)
    text = sheet(card, sheet_book)
    read = text.partition("Read on the way")[2].partition("Lead, no box")[0]
    assert ground.replace("-", " ") in read
    assert other not in read
    # The lead stands in its own sentence, on the land where it is read.
    assert "Lead, no box, indicator along the axis, on the thread land: " in " ".join(text.split())


def test_there_is_a_box_for_each_flute_until_it_is_filled(sheet_book: Book, tap_card: Card) -> None:
    empty = sheet(edited(tap_card, "after.drop", ""), sheet_book)
    line = empty[empty.index("Indicator drop at the heel") :].split("Diameter ")[0]
    assert line.count("[________]") == 4
    filled = sheet(tap_card, sheet_book)
    assert "[________]" not in filled[filled.index("Indicator drop at the heel") :].split("Diameter ")[0]
    assert "4 0.31 mm OFF" in filled


def test_there_is_a_box_to_tick_for_each_setting_and_boxes_for_what_is_read_on_the_way(
    family_card: Card, sheet_book: Book
) -> None:
    text, html = sheet(family_card, sheet_book), sheet(family_card, sheet_book, "html")
    ticks = len(re.findall(r"^\[ \] +\d+ ", text, re.MULTILINE))
    assert ticks >= 2
    assert html.count('class="tick"') == sheet(family_card, sheet_book, "markdown").count(". [ ] ") == ticks
    # Quarters, half and heel, each with a box for each flute, of up to five.
    on_the_way = [line for line in text.splitlines() if re.match(r"(1/4|1/2|3/4|heel) ", line)]
    assert len(on_the_way) % 4 == 0
    assert on_the_way
    assert {line.count("______") for line in on_the_way} == {int(family_card.tool.flutes)}
    assert html.count('class="w"></td>') == sum(line.count("______") for line in on_the_way)


def test_each_of_four_unequal_lands_is_written_down_at_its_own_heel_and_nowhere_else(
    sheet_book: Book, tap_card: Card
) -> None:
    card = edited(tap_card, "received.land_width", "2.0 mm, 2.0 mm, 1.9 mm, 1.8 mm")
    text, html = sheet(card, sheet_book), sheet(card, sheet_book, "html")
    rows = {
        found[1]: found[2].split()
        for line in text.splitlines()
        if (found := re.match(r"(1/4|heel of \d|heel) .*?((?: +(?:_{6}|-)){4})$", line))
    }
    box, none = "______", "-"
    assert rows == {
        "1/4": [box] * 4,
        "heel": [box, box, none, none],
        "heel of 3": [none, none, box, none],
        "heel of 4": [none, none, none, box],
    }
    # Three places on the way with four boxes, and one heel for each flute.
    assert html.count('class="w"></td>') == 3 * 4 + 4


@pytest.mark.parametrize(
    ("flutes", "boxes", "told"),
    [
        ("3", 3, ""),
        ("6", 6, ""),
        ("7", 6, "Flute 7: as 1 to 6; write them in the notes."),
        ("10", 6, "Flutes 7 to 10: as 1 to 6; write them in the notes."),
    ],
)
def test_up_to_six_flutes_have_their_box_at_each_place_and_of_more_it_is_said_where(
    sheet_book: Book, tap_card: Card, flutes: str, boxes: int, told: str
) -> None:
    card = edited(edited(tap_card, "tool.flutes", flutes), "received.drop", "0.2 mm")
    text = sheet(card, sheet_book)
    (line,) = (one for one in text.splitlines() if one.startswith("1/4 "))
    assert line.count("______") == boxes
    assert ("write them in the notes" in text) is bool(told)
    assert told in text
