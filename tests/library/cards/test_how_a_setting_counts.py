"""A roll says from where it counts and which way it goes: rolled the other way the flank would rise behind the lip."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from geometry.quantities import quantity
from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.model import DONE, Card, Tool
from library.cards.starting import from_entry
from library.setup_sheet.sheets import setup_sheet
from tui.view.card_row import Opened
from tui.view.card_set_table import heading_lines
from tui.view.card_settings_rows import settings_rows
from tui.view.lines import text_of

YARD = Path(__file__).parents[3] / "library" / "demo" / "ferry-yard"

RIGHT, LEFT = "twist-drill-jobber-plain-steel", "left-hand-drill-plain-steel"

FACETS = "second_lip_relief_angle"

TYPED = {
    "received.diameter": "12.5 mm",
    "received.web_thickness": "2.1 mm",
    "received.land_width": "6 mm",
    "wanted.relief_method": "work-head",
    "wanted.lip_relief_angle": "12 deg",
}


@pytest.fixture(scope="module")
def yard() -> Book:
    return open_book(YARD)


def drill(book: Book, entry: str = RIGHT, second: str = "32 deg") -> Card:
    begun = from_entry(book, book.entries[entry])
    card = replace(
        begun, id="2026-11-25-01", machine="grey-grinder", wheel="", tool=Tool("D", "12.5 mm", flutes="2")
    )
    for way, text in {**TYPED, f"wanted.{FACETS}": second}.items():
        card = edited(card, way, text)
    return card


def paper(job: Job) -> str:
    return " ".join(setup_sheet(job).split())


def on_set(job: Job, width: int = 80) -> str:
    (row,) = (one for one in settings_rows(job, Opened()) if one.way == "settings.point-setup")
    lines = [text_of(one) for one in heading_lines(row, {}, width, in_hand=False)]
    assert max(map(len, lines)) <= width
    return " ".join(" ".join(lines).split())


def test_both_rolls_stand_with_where_they_count_from_on_the_sheet_and_what_to_check(yard: Book) -> None:
    said = paper(work_out(drill(yard), yard))
    assert said.count("deg from the level lip, the way it cuts;") == 2
    assert "The drill cuts turning clockwise, seen from the shank." in said
    assert "The second facet stops on the line through the axis." in said
    assert "With the wheel stopped, the indicator must fall from lip to heel." in said


def test_a_point_of_two_flats_says_nothing_of_a_second_facet(yard: Book) -> None:
    said = paper(work_out(drill(yard, second=""), yard))
    assert "The second facet stops" not in said


@pytest.mark.parametrize("width", [80, 100, 160])
def test_it_stands_under_the_first_roll_on_the_page_of_the_settings(yard: Book, width: int) -> None:
    said = on_set(work_out(drill(yard), yard), width)
    first, _, behind = said.partition("From the level lip, the way it cuts. The drill cuts turning clockwise")
    assert "Head roll, second facet" in first
    assert "Axis to wheel" not in first
    assert "Work head roll" in behind


def test_a_left_hand_drill_is_rolled_the_other_way(yard: Book) -> None:
    job = work_out(drill(yard, LEFT), yard)
    for said in (paper(job), on_set(job)):
        assert "The drill cuts turning anticlockwise, seen from the shank." in said
        assert "turning clockwise" not in said


def test_the_sheet_of_a_closed_card_tells_how_it_is_ground_too(yard: Book) -> None:
    card = drill(yard)
    for one in (card, replace(card, status=DONE, finished=date(2026, 11, 26))):
        assert "How it is ground -" in setup_sheet(work_out(one, yard))


def test_the_card_tells_the_length_of_a_faceted_point_with_its_web(yard: Book) -> None:
    # By hand, 12.5 mm with a web of 2.1 mm: the lip lies 1.05 mm ahead of the axis, the corner sqrt(6.25^2 - 1.05^2) =
    # 6.1612 mm along it, 9.671 degrees round. The flat that shows 12 degrees there falls by (tan 12 - cot 59 sin 9.671) /
    # cos 9.671 = 0.11324 behind the lip: 6.1612 cot 59 - 1.05 x 0.11324 = 3.583 mm. Derived.
    def told(card: Card) -> str:
        rows = settings_rows(work_out(card, yard), Opened())
        (row,) = (one for one in rows if one.way == "settings.drill-point")
        return " ".join(f"{one.title} {one.value}" for one in row.told)

    assert told(drill(yard)) == "Length of the point 3.583 mm"
    assert quantity("point_length").title == "Length of the point, without the web"
