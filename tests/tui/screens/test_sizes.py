"""Every screen at the sizes that it promises, and at sizes that nobody would choose."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from tests.examples import every_third_at_once
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
    "first-jobs": ["f8", *"first jobs", "enter"],
    "calculations": ["f2", "f2"],
}
"""How to get to each screen from the book."""


SIZES = ((80, 24), (60, 20), (120, 36), (200, 60))
TINY = ((1, 1), (20, 5))


@pytest.mark.parametrize("where", every_third_at_once(WAYS))
async def test_a_screen_names_its_keys_and_the_way_back_at_every_size_and_none_is_too_small_to_go_on(
    program: Program, where: str
) -> None:
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
        for size in TINY:
            await hands.resize(*size)
            await hands.press("down", "pagedown", "end", "home", "up")
            assert where == hands.app.screen.WHERE, size


async def test_growing_and_shrinking_keeps_what_is_typed_and_chosen(program: Program) -> None:
    async with program() as hands:
        await hands.press(*"st", "down")
        chosen = hands.app.session.page.chosen
        for size in ((60, 20), (1, 1), (200, 60), (80, 24)):
            await hands.resize(*size)
        assert "Find: st" in hands.shown()
        assert hands.app.session.page.chosen == chosen


@pytest.mark.parametrize("size", every_third_at_once([*SIZES[1::2], *TINY[:2]]))
async def test_it_starts_at_every_size(program: Program, size: tuple[int, int]) -> None:
    async with program(size) as hands:
        await hands.press("down", "enter")
        assert hands.app.screen.WHERE == "entry"


async def test_from_100_columns_list_and_tool_stand_side_by_side(program: Program) -> None:
    async with program((100, 30)) as hands:
        for keys in ((), ("enter",)):
            await hands.press(*keys)
            shown = hands.lines()
            assert any("Find:" in one and "shipped" in one for one in shown), keys
            assert any("Hand tap 3/4-10" in one and " │ " in one for one in shown), keys
            assert any(one.startswith("── Lead over a tap land OPEN") for one in shown), keys
        await hands.press("f2")
        shown = hands.lines()
        assert shown[1].startswith(" OPEN"), "the verdict stands on the second line"
        at = next(number for number, one in enumerate(shown) if one.startswith("── Book 5 of 5"))
        assert shown[at + 1].startswith("── Hand tap, brass")
        assert at > shown.index(next(one for one in shown if one.startswith("> ")))
        assert not any("Find:" in one for one in shown)
    async with program((99, 30)) as hands:
        assert not any(" │ " in one for one in hands.lines())


async def test_from_150_columns_all_three_stand_side_by_side_whichever_is_in_hand(program: Program) -> None:
    async with program((150, 40)) as hands:
        for keys in ((), ("enter",), ("f2",)):
            await hands.press(*keys)
            top = hands.lines()[1]
            assert "Find:" in top, keys
            assert "Hand tap, brass" in top, keys
            assert "Lead over a tap land" in top, keys
            assert sum(one.startswith("> ") or " > " in one for one in hands.lines()) >= 1
        await hands.press("f9", "f9", "down")
        assert "Hand tap 3/4-10" in hands.lines()[1]


@pytest.mark.parametrize("width", every_third_at_once([80, 120, 160]))
async def test_tab_goes_from_the_list_to_the_tool_to_its_calculation(program: Program, width: int) -> None:
    async with program((width, 40)) as hands:
        await hands.press("down", "tab")
        assert hands.app.screen.WHERE == "entry"
        await hands.press("tab")
        assert hands.app.screen.WHERE == "calculator"
        assert hands.app.screen.entry.id == "tap-three-quarter"


@pytest.mark.parametrize("width", every_third_at_once([100, 160]))
async def test_side_by_side_tab_goes_round_and_shift_tab_the_other_way(program: Program, width: int) -> None:
    async with program((width, 40)) as hands:
        places = []
        for key in ("tab", "tab", "tab", "shift+tab", "shift+tab", "shift+tab"):
            await hands.press(key)
            places.append(hands.app.screen.WHERE)
        assert places == ["entry", "calculator", "book", "calculator", "entry", "book"]
        assert len(hands.app.screen_stack) == 1


async def test_in_a_calculation_that_is_alone_tab_goes_to_the_next_field(program: Program) -> None:
    async with program() as hands:
        await hands.press("f2")
        first = hands.app.screen.page.form.focus
        await hands.press("tab")
        assert hands.app.screen.page.form.focus != first
        await hands.press("shift+tab")
        assert hands.app.screen.page.form.focus == first


async def test_what_stands_beside_the_list_follows_it_when_the_keys_rest(program: Program) -> None:
    async with program((160, 40)) as hands:
        hands.send("down")
        await hands.messages()
        assert hands.app.screen.is_behind
        assert "Hand tap 3/4-10" not in hands.lines()[1]
        await hands.settle()
        assert "Hand tap 3/4-10" in hands.lines()[1]
