"""Every screen at the sizes that it promises, and at sizes that nobody would choose."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from textual.pilot import Pilot

from tui.app import Heelclear
from tui.screens.board import Board
from tui.view.lines import width_of

Program = Callable[[], Heelclear]
Shown = Callable[[Heelclear], str]

WAYS = {
    "book": [],
    "entry": ["enter"],
    "calculator": ["f2"],
    "cautions": ["f4"],
    "findings": ["f7"],
    "help": ["?"],
    "glossary": ["f3"],
    "actions": ["f8"],
    "calculations": ["f2", "f6"],
}
"""How to get to each screen from the book."""


async def settled(pilot: Pilot[None]) -> None:
    await pilot.app.workers.wait_for_complete()
    await pilot.pause()


@pytest.mark.parametrize("where", WAYS)
@pytest.mark.parametrize("size", [(80, 24), (60, 20), (120, 36), (200, 60)])
async def test_a_screen_names_its_keys_and_the_way_back_at_every_size(
    program: Program, shown: Shown, where: str, size: tuple[int, int]
) -> None:
    app = program()
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        await pilot.press(*WAYS[where])
        await settled(pilot)
        screen = app.screen
        assert isinstance(screen, Board)
        assert where == screen.WHERE
        lines = shown(app).splitlines()
        assert "F9" in lines[-1]
        assert "Help" in lines[-1]
        assert lines[0].strip()
        assert all(width_of(line) <= size[0] for line in screen.lines(*size))


@pytest.mark.parametrize("where", WAYS)
@pytest.mark.parametrize("size", [(1, 1), (3, 2), (20, 5)])
async def test_no_size_is_too_small_to_go_on(program: Program, where: str, size: tuple[int, int]) -> None:
    app = program()
    async with app.run_test(size=size) as pilot:
        await settled(pilot)
        await pilot.press(*WAYS[where])
        await pilot.press("down", "pagedown", "end", "home", "up")
        await settled(pilot)
        screen = app.screen
        assert isinstance(screen, Board)
        assert where == screen.WHERE


async def test_growing_and_shrinking_keeps_what_is_typed_and_chosen(program: Program, shown: Shown) -> None:
    app = program()
    async with app.run_test(size=(80, 24)) as pilot:
        await settled(pilot)
        await pilot.press(*"st", "down")
        chosen = app.session.page.chosen
        for size in ((60, 20), (1, 1), (200, 60), (80, 24)):
            await pilot.resize_terminal(*size)
            await pilot.pause()
        assert "Find: st" in shown(app)
        assert app.session.page.chosen == chosen


async def test_on_a_wide_screen_the_chosen_entry_stands_beside_the_list(
    program: Program, shown: Shown
) -> None:
    app = program()
    async with app.run_test(size=(200, 60)) as pilot:
        await settled(pilot)
        await pilot.press("down")
        assert "The shop's own; the shipped book has 4 deg" in shown(app)
