"""The screens for changing the book at the sizes that they promise, and at sizes that nobody would choose."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from library.book import opening
from tui.app import Heelclear
from tui.screens.board import Board
from tui.session import Session
from tui.view.lines import width_of

RAKE = ["enter", "f6", *"rake", "enter"]
WAYS: dict[str, list[str]] = {
    "changes": ["enter", "f6"],
    "form": [*RAKE, "down", *"6 deg"],
    "before-saving": [*RAKE, "down", *"6 deg", "f2"],
    "new entry": ["f6", "enter", "down", *"Tap, new"],
    "new family": ["f6", "down", "enter", *"Broaches"],
    "cautions": ["enter", "f6", *"cautions", "enter"],
    "share": ["f6"],
    "compare": ["tab", "tab", "ctrl+g", "f2"],
    "threads": ["f2", "f7"],
    "findings": ["f7", "down"],
}
"""How to get to each screen from the book."""

Opened = Callable[[], Heelclear]


@pytest.fixture
def opened(shop: Path, tmp_path: Path) -> Opened:
    return lambda: Heelclear(Session(), lambda: opening.open_book(shop), shop, tmp_path / "state")


async def _settled(pilot: Any) -> None:
    for _ in range(3):
        await pilot.app.workers.wait_for_complete()
        await pilot.pause()


async def _walked(pilot: Any, keys: list[str]) -> Board:
    await _settled(pilot)
    for key in keys:
        await pilot.press(key)
        if key in {"enter", "f2", "f6", "f7", "ctrl+g"}:
            await _settled(pilot)
    screen = pilot.app.screen
    assert isinstance(screen, Board)
    return screen


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("size", [(80, 24), (60, 20), (200, 60)])
async def test_a_screen_names_its_keys_and_every_line_fits(
    opened: Opened, way: str, size: tuple[int, int]
) -> None:
    app = opened()
    async with app.run_test(size=size) as pilot:
        screen = await _walked(pilot, WAYS[way])
        lines = screen.lines(*size)
        assert len(lines) == size[1]
        assert all(width_of(line) <= size[0] for line in lines)
        last = "".join(piece.text for piece in lines[-1])
        assert "F9" in last
        assert "Help" in last


@pytest.mark.parametrize("way", WAYS)
@pytest.mark.parametrize("size", [(1, 1), (20, 6)])
async def test_no_size_is_too_small_to_go_on(opened: Opened, way: str, size: tuple[int, int]) -> None:
    app = opened()
    async with app.run_test(size=size) as pilot:
        screen = await _walked(pilot, WAYS[way])
        where = screen.WHERE
        await pilot.resize_terminal(80, 24)
        await _settled(pilot)
        assert app.screen is screen
        assert where == screen.WHERE
        await pilot.press("f9")
        assert app.screen is not screen


@pytest.mark.parametrize("size", [(60, 20), (60, 8)])
async def test_the_line_in_hand_is_in_sight_however_low_the_screen(
    opened: Opened, size: tuple[int, int]
) -> None:
    app = opened()
    async with app.run_test(size=size) as pilot:
        screen = await _walked(pilot, RAKE)
        for _ in range(6):
            shown = ["".join(piece.text for piece in line) for line in screen.lines(*size)]
            assert [line for line in shown if line.startswith("> ")]
            await pilot.press("down")
