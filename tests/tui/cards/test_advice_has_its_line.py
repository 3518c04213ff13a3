"""What a calculation of a card advises has a line of its own, where Enter stops and the number is typed."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.model import Card
from library.cards.starting import from_entry
from library.cards.step import Step
from library.cards.store import load
from library.demo import BOOK, lay_out
from library.setup_sheet.sheets import setup_sheet
from library.units.show import say
from tests.tui.cards.conftest import AtTheYard
from tui.view.card_form import CardForm

LINE = "settings.relief-drop.chosen_throw"
SET = 'cam_throw_range = { low = "0.5 mm", high = "5 mm" }'


def open_again(book: Book, throw: str = "") -> CardForm:
    card: Card = replace(load(BOOK, "2026-03-11-01").card, status="draft")
    return CardForm(book, edited(card, LINE, throw) if throw else card)


def told(form: CardForm) -> list[tuple[str, str]]:
    return [(one.state, one.text) for one in form.faults_at(form.row)]


@pytest.fixture(scope="module")
def drawer() -> Book:
    return open_book(BOOK)


@pytest.fixture(scope="module")
def set_freely(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """The yard with a cam that is set to any throw in the place of its drawer."""
    folder = tmp_path_factory.mktemp("free") / "yard"
    lay_out(folder)
    machines = folder / "machines.toml"
    lines = machines.read_text(encoding="utf-8").splitlines()
    machines.write_text(
        "\n".join(SET if one.startswith("cam_throws") else one for one in lines) + "\n", "utf-8"
    )
    return open_book(folder)


def test_enter_stops_in_the_line_of_the_throw_and_an_arrow_takes_the_cam_that_is_named(drawer: Book) -> None:
    form = open_again(drawer)
    form.go_to("settings.wheel-speed")
    form.go_on()
    assert form.row.way == LINE
    ((state, text),) = told(form)
    assert state == "watch"
    assert "Of the drawer, 1.000 mm gives" in text
    # Card and sheet advise the same.
    for said in (text, setup_sheet(form.job)):
        assert "ake a throw of" not in said
    assert "1.000 mm gives 4.56 deg" in " ".join(setup_sheet(form.job).split())
    form.edit("left")
    assert form.row.text == "1 mm"


def test_a_throw_that_no_cam_has_stops_in_the_line_in_which_it_is_typed(drawer: Book) -> None:
    form = open_again(drawer)
    form.go_to(LINE)
    form.put("1.4")
    assert [state for state, _ in told(form)] == ["stop"]
    assert "no cam of 1.400 mm" in told(form)[0][1]


def test_the_throw_that_is_advised_for_a_cam_that_is_set_can_be_typed_where_it_is_said(
    set_freely: Book,
) -> None:
    form = open_again(set_freely, "1.6 mm")
    form.go_to(LINE)
    ((state, text),) = told(form)
    assert state == "watch"
    assert "Take a throw of 1.429 mm per tooth" in text
    form.put("1.429")
    assert not told(form)


def test_a_cam_that_serves_two_calculations_has_its_line_where_it_is_chosen(drawer: Book) -> None:
    form = CardForm(drawer, replace(load(BOOK, "2026-06-02-01").card, status="draft"))
    form.go_to("settings.cone-relief")
    ways = [one.way for one in form.rows]
    assert "settings.cone-relief.radial_throw" in ways
    assert LINE not in ways


async def test_a_number_typed_on_the_line_of_a_calculation_is_told_where_it_belongs(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "T-12-3", "<f8>", "same job", "<enter>")
        form = hands.app.screen.form
        form.go_to("settings.size-loss")
        assert "This line keeps no number. Down goes to the lines of this calculation." in await hands.do(
            ".3"
        )
        form.go_to("settings.lead-over-land")
        await hands.do(".3")
        assert "This line keeps no number. F2 shows the lines of this calculation." in hands.words()


def test_a_number_for_advice_that_belongs_on_another_page_is_told_that_page(drawer: Book) -> None:
    card = replace(load(BOOK, "2026-11-20-01").card, status="draft")
    # One flat over so wide a land leaves its heel outside: the land is to be narrowed, or the relief raised.
    typed = {
        "settings.relief-facets": "skip",
        "settings.relief-drop.land_width": "",
        "received.land_width": "6 mm",
    }
    for way, text in typed.items():
        card = edited(card, way, text)
    form = CardForm(drawer, card)
    form.go_to("settings.relief-drop")
    assert "Narrow the land to" in form.faults_at(form.row)[0].text
    form.type("4")
    assert form.told_of_choices == (
        "This line keeps no number. Land width: on step 2, Received; land relief: on step 3, Wanted."
    )


def test_a_second_relief_that_is_advised_has_its_line_and_helps_when_it_is_typed_there(drawer: Book) -> None:
    card = from_entry(drawer, drawer.entries["twist-drill-brass-free-cutting"])
    for way, text in {"tool.size": "15/32 in", "settings.point-setup.web_thickness": "2 mm",
                      "settings.point-setup.lip_relief_angle": "12 deg"}.items():  # fmt: skip
        card = edited(card, way, text)
    way = "settings.point-setup.second_lip_relief_angle"
    form = CardForm(drawer, card)
    form.go_to("settings.point-setup")
    advised = " ".join(say(one.sentence) for one in at_the_point(form).checks if one.state == "watch")
    found = re.search(r"Grind a second facet of ([0-9.]+) deg or more", advised)
    assert found is not None
    assert way in [row.way for row in form.rows]
    form = CardForm(drawer, edited(card, way, f"{found[1]} deg"))
    assert not any(one.state == "watch" for one in at_the_point(form).checks)


def at_the_point(form: CardForm) -> Step:
    step = form.job.step("point-setup")
    assert step is not None
    return step
