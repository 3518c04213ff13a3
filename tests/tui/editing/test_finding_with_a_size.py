"""A size in the find line takes no entry away: it goes along into the calculator and the card, as if it were typed there."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

Program = Callable[..., AbstractAsyncContextManager[Any]]


def form(hands: Any) -> Any:
    return hands.app.screen.page.form


async def test_a_thread_goes_into_the_calculator(program: Program) -> None:
    async with program() as hands:
        shown = await hands.type("bronze m12")
        assert "M12 goes along" in shown
        assert "> " in shown
        await hands.press("f2")
        assert form(hands).texts()["diameter"] == "M12"
        # ISO 724: the major diameter of M12 is 12 mm.
        assert form(hands).value("diameter").value == pytest.approx(12)


async def test_a_name_that_threads_share_is_said_to_want_its_series_before_anything_refuses_it(
    program: Program,
) -> None:
    async with program() as hands:
        shown = await hands.type("bronze 1/4-20")
        assert "1/4-20 may be UNC or BSW: write which" in shown
        assert "along" not in shown
        shown = await hands.type(" unc")
        assert "1/4-20 UNC goes along" in shown
        assert "write which" not in shown


@pytest.mark.parametrize(("unit", "text", "number"), [("mm", "12 mm", 12.0), ("in", "12 in", 304.8)])
async def test_a_number_alone_is_in_the_unit_that_is_worked_in(
    program: Program, unit: str, text: str, number: float
) -> None:
    async with program() as hands:
        if unit == "in":
            await hands.press("f5")
        await hands.type("bronze 12")
        await hands.press("f2")
        assert form(hands).texts()["diameter"] == text
        assert form(hands).value("diameter").value == pytest.approx(number)


async def test_the_class_of_a_hole_goes_along_with_its_size(program: Program, shop: Path) -> None:
    file = shop / "taps.toml"
    reamers = '[[family]]\nid = "reamer"\ntitle = "Reamers"\nkind = "reamer"\n\n[[entry]]'
    text = file.read_text().replace('family = "tap"', 'family = "reamer"').replace("[[entry]]", reamers, 1)
    file.write_text(text)
    async with program() as hands:
        assert "12 H8 goes along" in await hands.type("bronze 12 h8")
        await hands.press("f2")
        assert form(hands).texts()["hole_tolerance"] == "H8"


async def test_a_size_without_a_unit_is_as_large_in_the_other_unit(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze 12")
        shown = await hands.press("f5")
        assert "Find: bronze 12 mm" in shown
        await hands.press("f2")
        assert form(hands).value("diameter").value == pytest.approx(12)


async def test_the_pane_beside_shows_the_size_that_is_sought_now(program: Program) -> None:
    async with program((160, 48)) as hands:
        await hands.type("bronze m12")
        await hands.press("f2", "f9", "ctrl+u")
        await hands.type("bronze m20")
        await hands.until(lambda: not hands.app.screen.is_behind)
        beside = [line for line in hands.lines() if " Diameter " in line]
        assert "M20" in beside[0]
        assert "M12" not in beside[0]
        # A look types nothing.
        assert "M20" not in str(hands.app.session.calculators.tools_typed_for())
        await hands.press("f2")
        assert form(hands).texts()["diameter"] == "M20"


async def test_it_goes_along_through_the_entry_too(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze 1/2 in")
        await hands.press("enter", "enter")
        assert form(hands).texts()["diameter"] == "1/2 in"


async def test_what_was_made_of_it_stays_until_another_size_is_sought(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze m12")
        await hands.press("f2")
        form(hands).focus = "diameter"
        await hands.press("ctrl+u")
        await hands.type("11.85")
        await hands.press("f9", "f2")
        assert form(hands).texts()["diameter"] == "11.85"
        await hands.press("f9", "backspace")
        await hands.type("6")
        await hands.press("f2")
        assert form(hands).texts()["diameter"] == "M16"


async def test_it_goes_onto_the_card(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze m12x1.5")
        shown = await hands.press("ctrl+f")
        assert any(line.split()[:2] == ["Thread", "M12x1.5"] for line in hands.lines()), shown


async def test_a_length_is_the_size_on_the_card(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze 12")
        shown = await hands.press("ctrl+f")
        assert any(line.split()[:3] == ["Size", "12", "mm"] for line in hands.lines()), shown


@pytest.mark.parametrize(("keys", "unit"), [((), "mm"), (("f5",), "in")])
async def test_a_size_without_a_unit_is_told_with_the_one_that_it_is_taken_in(
    program: Program, keys: tuple[str, ...], unit: str
) -> None:
    async with program() as hands:
        await hands.press(*keys)
        assert f"  8.5 {unit} goes along" in await hands.type("bronze 8.5")
        await hands.press("ctrl+f")
        assert any(line.split()[:3] == ["Size", "8.5", unit] for line in hands.lines())


async def test_a_size_that_the_entry_is_called_by_is_not_carried(program: Program, shop: Path) -> None:
    file = shop / "taps.toml"
    file.write_text(file.read_text().replace('title = "Tap for bronze"', 'title = "Tap M12, bronze"'))
    async with program() as hands:
        shown = await hands.type("bronze m12")
        assert "Tap M12, bronze" in shown
        assert "goes along" not in shown


@pytest.mark.parametrize(("width", "is_beside"), [(99, False), (100, True), (160, True)])
async def test_on_a_wide_screen_the_entry_stands_beside_its_row(
    program: Program, width: int, is_beside: bool
) -> None:
    async with program(size=(width, 36)) as hands:
        for keys, title in (("bronze", "Tap for bronze"), ("spiral", "Spiral-point tap")):
            await hands.press("ctrl+u")
            await hands.type(keys)
            beside = [line.split("│", 1)[1].strip() for line in hands.lines() if "│" in line]
            assert (title in "".join(beside[:1])) == is_beside


@pytest.mark.parametrize(
    ("typed", "written", "mm"),
    [
        ("bronze 10,5", "10.5 mm", 10.5),
        # ISO 228-1: the major diameter of G 3/8 is 16.662 mm.
        ("bronze bsp 3/8", "3/8 BSP", 16.662),
        ("bronze \u00f812", "12 mm", 12),
        ("bronze 12 x 80", "12 mm", 12),
    ],
)
async def test_a_size_goes_along_as_shops_write_it(
    program: Program, typed: str, written: str, mm: float
) -> None:
    async with program() as hands:
        await hands.type(typed)
        await hands.press("f2")
        assert form(hands).texts()["diameter"] == written
        assert form(hands).value("diameter").value == pytest.approx(mm)


async def test_a_thread_between_two_whole_sizes_that_no_table_has_is_said_below_the_list(
    program: Program,
) -> None:
    async with program() as hands:
        await hands.do("tap m12,5")
        assert "M12.5 goes along" in hands.shown()
        assert "! The tables have no thread M12.5." in hands.shown()
        await hands.do("<ctrl+u>", "tap m2,5")
        assert "M2.5 goes along" in hands.shown()
        assert "The tables have" not in hands.shown()
