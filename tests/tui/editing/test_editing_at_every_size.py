"""The screens for changing the book at the sizes that they promise, and at sizes that nobody would choose."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from tests.examples import every_third_at_once
from tui.screens.base_screen import BaseScreen
from tui.view.lines import width_of

RAKE = ["enter", "f6", *"rake", "enter"]
WAYS: dict[str, list[str]] = {
    "changes": ["enter", "f6"],
    "form": [*RAKE, *"6 deg"],
    "review-change": [*RAKE, *"6 deg", "ctrl+r"],
    "new entry": ["f6", "down", "enter", "down", *"Tap, new"],
    "new family": ["f6", "down", "down", "enter", *"Broaches"],
    "cautions": ["enter", "f6", *"cautions", "enter"],
    "share": ["f6"],
    "compare": ["ctrl+t", "ctrl+t", "ctrl+k"],
    "threads": ["f2", "f8", *"thread", "enter"],
    "findings": ["f8", *"problems", "enter", "down"],
}
"""How to get to each screen from the book."""

Program = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.mark.parametrize("way", every_third_at_once(WAYS))
async def test_reached_in_a_single_cell_it_goes_on_at_every_size_names_its_keys_and_every_line_fits(
    program: Program, way: str
) -> None:
    async with program((1, 1)) as hands:
        await hands.press(*WAYS[way])
        screen = hands.app.screen
        assert isinstance(screen, BaseScreen)
        where = screen.WHERE
        for size in ((20, 6), (60, 20), (200, 60), (80, 24)):
            await hands.resize(*size)
            assert hands.app.screen is screen
            assert where == screen.WHERE
            lines = screen.lines(*size)
            assert len(lines) == size[1]
            if size[0] >= 60:
                assert all(width_of(line) <= size[0] for line in lines), size
                last = "".join(piece.text for piece in lines[-1])
                assert "F9" in last, size
                assert "Help" in last, size
        await hands.press("f9")
        assert hands.app.screen is not screen


@pytest.mark.parametrize("size", [(60, 20), (60, 8)])
async def test_the_line_in_hand_is_in_sight_however_low_the_screen(
    program: Program, size: tuple[int, int]
) -> None:
    async with program(size) as hands:
        await hands.press(*RAKE)
        for _ in range(6):
            shown = ["".join(piece.text for piece in line) for line in hands.app.screen.lines(*size)]
            assert [line for line in shown if line.startswith("> ")]
            await hands.press("down")
