"""From a guess of the book to what a new tool has: two keys to the calculation, and from there into the shop's book."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from datetime import date
from typing import Any

from library.book.opening import open_book
from tui.screens.changes import ChangesScreen, guessed_key

Program = Callable[..., AbstractAsyncContextManager[Any]]


async def test_two_keys_from_a_guess_a_new_tool_is_measured_and_the_book_takes_it(program: Program) -> None:
    async with program(other=open_book(), size=(160, 45)) as hands:
        hands.app._open_book = lambda: open_book(hands.shop if hands.shop.exists() else None)
        await hands.do("hand tap bronze", "<enter>", "<down>", "<down>", "<down>")
        await hands.do("<f6>", "<enter>")
        assert "A new tool measured" in hands.lines()[1]
        assert "Surface               chamfer" in hands.shown()
        assert "6 deg    ?" in hands.shown()
        form = hands.app.screen.page.form
        for key, typed in (
            ("chamfer_angle", "8"),
            ("diameter", "12"),
            ("land_width", "3.14159"),
            ("drop", "0.33"),
            ("second_land_width", "1.5708"),
            ("second_drop", "0.165"),
        ):
            while form.focus != key:
                await hands.press("down")
            await hands.press("ctrl+u", *typed)
        # An even cam falls by r theta tan(a): .33 in 30 deg of a circle of 12 is 6.0 deg at the axis; derived.
        assert "it is eccentric" in hands.words()
        await hands.do("<f8>", "put into the book", "<enter>")
        assert "What shall" in hands.shown()
        shown = await hands.choose("chamfer relief")
        assert "measured on" in shown
        await hands.press("enter")
        (file,) = hands.shop.glob("*.toml")
        (entry,) = tomllib.loads(file.read_text())["entry"]
        kept = entry["chamfer_relief_angle"]
        assert kept["source"] == "shop"
        assert kept["place"] == f"measured on {date.today():%Y-%m-%d}"
        assert kept["usual"] == "6.0 deg"
        assert kept["note"] == "A new tool of 12 mm."
        # The pane in the middle tells the tool as the shop's book has it now, while the calculation is still open.
        assert "this shop" in hands.lines()[1]
        assert "6.0 deg     P" in hands.shown()


async def test_without_a_measured_tool_nothing_is_put_into_the_book(program: Program) -> None:
    async with program() as hands:
        await hands.do("bro", "<f2>", "<f8>", "put into the book", "<enter>")
        assert "there is nothing to 'put into the book what was measured'" in hands.words()
        assert not hands.shop.exists()


def test_every_value_from_memory_is_two_keys_from_measuring_it_and_no_other_is() -> None:
    for entry in open_book().entries.values():
        for place, (key, value) in enumerate(entry.values.items()):
            assert guessed_key(entry, place) == (key if value.citation.label == "from memory" else "")
        assert guessed_key(entry, len(entry.values)) == ""


async def test_a_guess_that_is_read_straight_off_a_tool_is_typed_with_the_day_of_measuring(
    program: Program,
) -> None:
    async with program(other=open_book()) as hands:
        book = hands.app.session.book
        entry = next(
            one
            for one in book.entries.values()
            if "point_angle" in one.values and one.values["point_angle"].citation.label == "from memory"
        )
        hands.app.push_screen(
            ChangesScreen(hands.app.session, entry, list(entry.values).index("point_angle"))
        )
        shown = await hands.do("<enter>")
        assert f"measured on {date.today():%Y-%m-%d}" in shown
        assert "from memory" not in shown
        shown = await hands.do("<ctrl+u>", "120 deg")
        assert f"measured on {date.today():%Y-%m-%d}" in shown
        assert "shop" in shown
