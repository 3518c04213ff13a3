"""A standard thread is chosen from a list, and the calculations take diameter, pitch and starts from it."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from library.threads import all_threads, find_threads
from tui.screens.threads import described

Program = Callable[[], AbstractAsyncContextManager[Any]]


def test_the_title_of_each_thread_names_it_and_no_other() -> None:
    for thread in all_threads().values():
        assert find_threads(thread.title) == (thread,)
        assert thread.series.title in described(thread)


async def test_typing_filters_and_enter_fills_the_calculation(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze")
        await hands.press("f2")
        listed = await hands.menu("thread")
        assert "> M1 x 0.25" in listed
        listed = await hands.type("m12 coarse")
        assert "> M12 x 1.75" in listed
        assert "tap drill 10.2 mm" in listed
        sheet = await hands.press("enter")
        lines = [" ".join(line.split()) for line in sheet.splitlines()]
        assert any(line.startswith("> Diameter M12 x 1.75 typed") for line in lines), lines
        assert any(line.startswith("Pitch 1.75 mm thread") for line in lines), lines
        assert any(line.startswith("Starts 1 thread") for line in lines), lines


async def test_a_thread_in_inches_takes_the_place_of_what_was_typed_of_another(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze")
        await hands.press("f2")
        await hands.menu("thread")
        await hands.type("m12 coarse")
        await hands.press("enter")
        await hands.menu("thread")
        await hands.type("3/4-10 unc")
        await hands.press("enter")
        form = hands.app.screen.page.form
        assert form.texts()["diameter"] == "3/4-10 UNC"
        assert form.value("diameter").value == pytest.approx(19.05)
        assert "1.75 mm" not in hands.shown()


async def test_every_calculation_of_the_tool_has_the_thread(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze")
        await hands.press("f2")
        await hands.menu("thread")
        assert "> M12 x 1.75 LH" in await hands.type("m12 lh")
        await hands.press("enter")
        assert hands.app.screen.page.form.texts()["diameter"] == "M12 x 1.75 LH"
        await hands.press("ctrl+n")
        form = hands.app.screen.page.form
        if form.sheet.field("diameter") is not None:
            assert form.value("diameter").value == pytest.approx(12)


async def test_going_back_from_the_list_changes_nothing(program: Program) -> None:
    async with program() as hands:
        await hands.type("bronze")
        before = await hands.press("f2")
        await hands.menu("thread")
        assert await hands.press("f9") == before
