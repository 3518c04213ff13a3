"""A shop whose book has no machine and no wheel yet is told on the card how one is written down, and by the form what it asks."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.book.opening import open_book
from library.cards.model import Card
from library.equipment.model import wheels
from tui.app import Heelclear
from tui.keys import Keymap
from tui.session import Session
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.lines import text_of
from tui.view.table_blanks import blanks_for

Program = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.fixture
def program_of_the_book(tmp_path: Path, hands_on: Any) -> Program:
    """The program on what comes with it and a shop that has written nothing down yet."""
    shop = tmp_path / "shop"
    return lambda: hands_on(Heelclear(Session(), lambda: open_book(shop), shop, tmp_path / "state"), shop)


@pytest.mark.parametrize("way", ["machine", "wheel"])
def test_the_line_says_from_afar_that_there_is_none_and_which_key_writes_one_down(way: str) -> None:
    form = CardForm(open_book(None), Card(family="reamer"))
    shown = [text_of(one) for one in CardPage(form, keys=Keymap().told).draw(80, 24)]
    at = next(number for number, one in enumerate(shown) if one[2:].startswith(way.capitalize()))
    assert "none in the book yet" in shown[at]
    assert "F6 on this line writes one down." in shown[at + 1]
    form.go_to(way)
    hint = " ".join(" ".join(text_of(one) for one in CardPage(form, keys=Keymap().told).draw(80, 24)).split())
    assert f"The book has no {way} yet. F6 opens a form that writes one down, as F8, machines," in hint


def test_the_form_of_a_machine_says_which_way_a_card_tells_and_what_tilts() -> None:
    blanks = {one.label: one.hint for one in blanks_for("machine", None)}
    assert "A card says up or down, the way that it moves" in blanks["Wheel head"]
    assert "A card says down or up, the way that it moves" in blanks["Tooth rest"]
    assert "the way that it moves" not in blanks["Wheel head tilt"]


async def test_the_letter_of_hardness_of_a_wheel_is_typed_saved_and_read_again(program: Program) -> None:
    async with program() as hands:
        await hands.do("<f8>", "machines", "<enter>", "new wheel", "<enter>", "Ruby cup")
        hands.app.screen.form.focus = "grade"
        await hands.do("J", "<ctrl+r>")
        await hands.press("enter")
        (wheel,) = tomllib.loads((hands.shop / "wheels.toml").read_text())["wheel"]
        assert wheel == {"id": "ruby-cup", "title": "Ruby cup", "grade": "J"}
        assert wheels(open_book(hands.shop))["ruby-cup"].grade == "J"


@pytest.mark.parametrize(
    ("way", "title", "name"), [("machine", "Grey grinder", "grey-grinder"), ("wheel", "Ruby cup", "ruby-cup")]
)
async def test_what_is_written_down_from_a_line_of_the_card_is_taken_by_it(
    program_of_the_book: Program, way: str, title: str, name: str
) -> None:
    async with program_of_the_book() as hands:
        await hands.do("bronze spi", "<ctrl+f>", "T-77")
        card = hands.app.screen
        card.form.go_to(way)
        await hands.do("<f6>", title, "<ctrl+r>", "<enter>")
        assert hands.app.screen is card
        assert getattr(card.form.card, way) == name
        assert card.form.row.way == way
        assert f"> {way.capitalize()}" in hands.shown()
        assert title in next(one for one in hands.lines() if one.startswith(f"> {way.capitalize()}"))
