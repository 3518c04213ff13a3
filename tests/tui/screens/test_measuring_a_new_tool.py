"""From a guess of the book to what a new tool has: two keys to the calculation, and from there into the shop's book."""

from __future__ import annotations

import tomllib
from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from dataclasses import replace
from datetime import date
from typing import Any

import pytest

from geometry.calculations import calculation
from library.book.model import Citation
from library.book.opening import open_book
from tui.screens.calculator import CalculatorScreen
from tui.screens.changes import ChangesScreen

Program = Callable[..., AbstractAsyncContextManager[Any]]


async def test_two_keys_from_a_guess_a_new_tool_is_measured_and_the_book_takes_it(program: Program) -> None:
    async with program(other=open_book(), size=(160, 45)) as hands:
        hands.app._open_book = lambda: open_book(hands.shop if hands.shop.exists() else None)
        await hands.do("hand tap bronze", "<enter>", "<down>", "<down>", "<down>")
        await hands.do("<f6>", "<enter>")
        assert "A new tool measured" in hands.lines()[1]
        assert "Surface               chamfer" in hands.shown()
        assert "6 deg (4 to 8)    ?" in hands.shown()
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
        # Back from what would be written the list stands there again, the same value in hand.
        assert "What shall" in await hands.press("f9")
        shown = await hands.press("enter")
        assert "measured on" in shown
        await hands.press("enter")
        (file,) = hands.shop.glob("*.toml")
        (entry,) = tomllib.loads(file.read_text())["entry"]
        kept = entry["chamfer_relief_angle"]
        assert kept["source"] == "shop"
        assert kept["place"] == f"measured on {date.today():%Y-%m-%d}"
        assert kept["usual"] == "6.0 deg"
        assert kept["note"] == "A new tool of 12 mm."
        # Only the one number was measured; the limits of the guess were not.
        assert kept.keys() & {"low", "high"} == set()
        # The pane in the middle tells the tool as the shop's book has it now, while the calculation is still open.
        assert "this shop" in hands.lines()[1]
        assert "6.0 deg     P" in hands.shown()


async def test_without_a_measured_tool_nothing_is_put_into_the_book(program: Program) -> None:
    async with program() as hands:
        await hands.do("bro", "<f2>", "<f8>", "put into the book", "<enter>")
        assert "there is nothing to 'put into the book what was measured'" in hands.words()
        assert not hands.shop.exists()


async def test_from_each_line_of_an_entry_a_guess_is_two_keys_from_measuring_it_and_no_other_value_is(
    program: Program,
) -> None:
    async with program(other=open_book()) as hands:
        entry = hands.app.session.book.entries["reamer-hand-plain-steel"]
        labels = [one.citation.label for one in entry.values.values()]
        assert labels.count("from memory") > 1
        for place, (key, label) in enumerate(zip(entry.values, labels, strict=True)):
            screen = ChangesScreen(hands.app.session, entry, place)
            found = screen.found()
            is_guess = label == "from memory"
            assert found[screen.view.chosen].id == f"{'measure' if is_guess else 'value'}:{key}"
            # Whoever moves in the list comes past the measuring of each guess first, and then to the value.
            ids = [one.id for one in found]
            assert (f"measure:{key}" in ids) is is_guess
            assert ids[ids.index(f"value:{key}") - 1] == f"measure:{key}" or not is_guess


@pytest.mark.parametrize("keys", [(), ("<down>",)])
async def test_what_was_measured_is_no_guess_in_the_list_any_more_which_stands_on_its_value(
    program: Program, keys: tuple[str, ...]
) -> None:
    async with program(other=open_book()) as hands:
        book = hands.app.session.book
        entry = book.entries["reamer-hand-plain-steel"]
        screen = ChangesScreen(hands.app.session, entry, [*entry.values].index("land_relief_angle"))
        hands.app.push_screen(screen)
        await hands.settle()
        assert "The book's land relief is from memory" in hands.words()
        await hands.do(*keys)
        measured = replace(entry.values["land_relief_angle"], citation=Citation("shop"))
        now = replace(entry, values={**entry.values, "land_relief_angle": measured})
        hands.app.session.book = replace(book, entries={**book.entries, entry.id: now})
        screen.book_changed()
        assert "value:land_relief_angle" in [one.id for one in screen.found()]
        assert "measure:land_relief_angle" not in [one.id for one in screen.found()]
        assert screen.found()[screen.view.chosen].id == "value:land_relief_angle"


async def test_f6_on_a_guess_in_a_calculation_offers_to_measure_it_but_not_where_it_is_measured(
    program: Program,
) -> None:
    async with program(other=open_book()) as hands:
        session = hands.app.session
        entry = session.book.entries["reamer-hand-plain-steel"]
        sheets = {"relief-drop": "relief_angle", "measured-tool": "margin_width"}
        for name, key in sheets.items():
            hands.app.push_screen(CalculatorScreen(session, entry, calculation(name)))
            await hands.settle()
            hands.app.screen.page.form.focus = key
            hands.app.screen.do_change()
            await hands.settle()
            if name == "relief-drop":
                assert "> Measure a new tool" in hands.shown()
                assert "The book's land relief is from memory" in hands.words()
            else:
                assert "Change margin width" in hands.shown()


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
        # Nobody measured limits: they go with the guess from the beginning, and not only once a number is typed.
        assert [hands.field(end) for end in ("Min.", "Max.")] == ["", ""]
        shown = await hands.do("<ctrl+u>", "120 deg")
        assert f"measured on {date.today():%Y-%m-%d}" in shown
        assert "shop" in shown
