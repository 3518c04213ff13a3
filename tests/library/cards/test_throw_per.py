"""A throw says on its own line whether it is that of a turn or of a tooth: taken for the other, the cam is a factor of the flutes off."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import answer
from library.cards.editing import edited
from library.cards.job import Job, work_out
from library.cards.model import Card, Tool
from library.cards.settings_lines import setting_lines
from library.cards.starting import from_entry
from library.pages.answer import answer_page
from library.pages.as_text import as_text
from library.setup_sheet.sheets import setup_sheet
from library.units.system import METRIC
from tui.view.card_row import Opened
from tui.view.card_settings_rows import settings_rows

YARD = Path(__file__).parents[3] / "library" / "demo" / "ferry-yard"

STEPPED = "step-drill-ground-from-drill"

TYPED = {
    "received.land_width": "2 mm",
    "settings.step-relief.radial_throw": "2 mm",
    "settings.step-relief.axial_throw": "1 mm",
}


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(YARD)


def stepped(book: Book, per: str, machine: str = "") -> Job:
    card: Card = replace(
        from_entry(book, book.entries[STEPPED]),
        id="2026-11-25-01",
        started=date(2026, 11, 25),
        machine=machine,
        tool=Tool("S", "6 mm, 8 mm", flutes="2"),
    )
    typed = TYPED if machine else {**TYPED, "settings.step-relief.throw_per": per}
    for way, text in typed.items():
        card = edited(card, way, text)
    return work_out(card, book)


@pytest.mark.parametrize("per", ["turn", "tooth"])
def test_a_throw_out_of_no_drawer_says_per_what_it_is_set_on_card_and_paper(book: Book, per: str) -> None:
    job = stepped(book, per)
    titles = {line.key: line.title for line in setting_lines(job, METRIC)}
    assert titles["radial_throw"] == f"Radial throw per {per}"
    assert titles["axial_throw"] == f"Axial throw per {per}"
    assert f"Radial throw per {per} 2.000 mm" in " ".join(setup_sheet(job).split())
    assert f"Radial throw per {per}" in setup_sheet(job, "html").replace("&nbsp;", " ")
    assert f"Radial throw per {per}" in setup_sheet(job, "markdown")
    assert f"fit the cam (2.000 mm per {per})" in " ".join(setup_sheet(job).split())
    rows = {row.way: row.label.strip() for row in settings_rows(job, Opened())}
    assert rows["settings.step-relief.radial_throw"] == f"Radial throw per {per}"


def test_where_the_drawer_says_it_on_the_same_line_it_is_not_said_twice(book: Book) -> None:
    job = work_out(
        edited(stepped(book, "tooth", "grey-grinder").card, "settings.step-relief.radial_throw", "2.5 mm"),
        book,
    )
    (line,) = (one for one in setting_lines(job, METRIC) if one.key == "radial_throw")
    assert (line.title, line.graduation) == ("Radial throw", "the cam of 2.5 mm out of the drawer, per tooth")


@pytest.mark.parametrize(
    ("machine", "label"), [("", "Throw of the cam per turn"), ("grey-grinder", "Throw of the cam at hand")]
)
def test_the_line_of_a_throw_keeps_room_on_the_narrowest_screen(book: Book, machine: str, label: str) -> None:
    card = replace(from_entry(book, book.entries["tap-hand-plain-steel"]), machine=machine)
    for way, text in {
        "tool.thread": "M16",
        "tool.flutes": "4",
        "received.land_width": "4 mm",
        "settings.relief-drop.chosen_throw": "1 mm",
    }.items():
        card = edited(card, way, text)
    rows = {row.way: row.label.strip() for row in settings_rows(work_out(card, book), Opened())}
    assert rows["settings.relief-drop.chosen_throw"] == label
    assert len(label) <= 26


@pytest.mark.parametrize("per", ["turn", "tooth"])
def test_a_calculation_says_it_with_the_throw_that_is_given_and_the_one_that_is_needed(per: str) -> None:
    given = {
        "included_angle": "90",
        "diameter": "20 mm",
        "throw_per": per,
        "flutes": "3",
        "relief_angle": "9",
    }
    needed = as_text(answer_page(answer(calculation("cone-relief"), given), None, METRIC))
    assert f"Radial throw needed per {per} " in needed
    assert f"Throw square to the cone per {per} " in needed
    found = as_text(
        answer_page(answer(calculation("cone-relief"), {**given, "radial_throw": "5 mm"}), None, METRIC)
    )
    assert f"Radial throw per {per} " in found
