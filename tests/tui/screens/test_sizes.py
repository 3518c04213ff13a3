"""Every screen at the sizes that it promises, and at sizes that nobody would choose."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from tui.screens.base_screen import BaseScreen
from tui.view.lines import width_of

Program = Callable[..., AbstractAsyncContextManager[Any]]

WAYS = {
    "book": [],
    "entry": ["enter"],
    "calculator": ["f2"],
    "cautions": ["f4"],
    "findings": ["f8", *"problems", "enter"],
    "help": ["?"],
    "glossary": ["f8", *"words expl", "enter"],
    "menu": ["f8"],
    "machines": ["f8", *"machines", "enter"],
    "calculations": ["f2", "f2"],
}
"""How to get to each screen from the book."""


SIZES = ((80, 24), (60, 20), (120, 36), (200, 60))
TINY = ((1, 1), (3, 2), (20, 5))


@pytest.mark.parametrize("where", WAYS)
async def test_a_screen_names_its_keys_and_the_way_back_at_every_size(program: Program, where: str) -> None:
    async with program() as hands:
        await hands.press(*WAYS[where])
        screen = hands.app.screen
        assert isinstance(screen, BaseScreen)
        assert where == screen.WHERE
        for size in SIZES:
            await hands.resize(*size)
            lines = hands.lines()
            assert len(lines) == size[1]
            assert "F9" in lines[-1], size
            assert "Help" in lines[-1], size
            assert lines[0].strip(), size
            assert all(width_of(line) <= size[0] for line in screen.lines(*size)), size


@pytest.mark.parametrize("where", WAYS)
async def test_no_size_is_too_small_to_go_on(program: Program, where: str) -> None:
    async with program(TINY[0]) as hands:
        await hands.press(*WAYS[where])
        for size in TINY:
            await hands.resize(*size)
            await hands.press("down", "pagedown", "end", "home", "up")
            screen = hands.app.screen
            assert isinstance(screen, BaseScreen)
            assert where == screen.WHERE


async def test_growing_and_shrinking_keeps_what_is_typed_and_chosen(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"st", "down")
        chosen = hands.app.session.page.chosen
        for size in ((60, 20), (1, 1), (200, 60), (80, 24)):
            await hands.resize(*size)
        assert "Find: st" in hands.shown()
        assert hands.app.session.page.chosen == chosen


@pytest.mark.parametrize("size", [*SIZES, *TINY])
async def test_it_starts_at_every_size(program: Program, size: tuple[int, int]) -> None:
    async with program(size) as hands:
        await hands.press("down", "enter")
        assert hands.app.screen.WHERE == "entry"


async def test_on_a_wide_screen_the_chosen_entry_stands_beside_the_list(program: Program) -> None:
    async with program((200, 60)) as hands:
        await hands.press("down")
        assert "The shop's own; the shipped book has 4 deg" in hands.shown()
