"""Browsing every screen of the book changes no byte and no time stamp in the shop's folder."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from tests.folder_pictures import snapshot, written

Program = Callable[[], AbstractAsyncContextManager[Any]]

WALK = (
    ["enter", "pagedown", "f4", "f9", "ctrl+n", "ctrl+p", "f6", "f9", "f2", "f2", "f9", "f9", "f9"],
    [
        "f3",
        "f9",
        "?",
        "f9",
        "f8",
        *"problems",
        "enter",
        "f9",
        "f8",
        *"words",
        "enter",
        "f9",
        "f6",
        "f9",
        "f5",
    ],
    ["enter", "f6", "enter", "f9", "end", "enter", "f9", "f9", "f9"],
)


@pytest.mark.parametrize("keys", WALK)
async def test_looking_at_everything_leaves_the_shop_s_folder_as_it_was(
    program: Program, shop: Path, shipped: Path, keys: list[str]
) -> None:
    snapshot((shop, shipped))
    before = snapshot((shop, shipped))
    async with program() as hands:
        await hands.press(*keys)
        await hands.type("tap")
        await hands.press("f9")
    assert snapshot((shop, shipped)) == before


async def test_looking_at_a_change_without_saving_it_leaves_the_folder_as_it_was(
    program: Program, shop: Path, shipped: Path
) -> None:
    before = snapshot((shop, shipped))
    async with program() as hands:
        await hands.open("spiral")
        await hands.choose("rake")
        await hands.press("down")
        await hands.type("6 deg")
        await hands.press("ctrl+r")
        assert "Before saving" in hands.shown()
        await hands.press("f9", "f9", "f9", "f9")
    assert written(snapshot((shop, shipped))) == written(before)
    assert sorted(path.name for path in shop.iterdir()) == ["taps.toml"]


async def test_a_shop_folder_that_is_not_there_is_not_made_by_looking(program: Program, shop: Path) -> None:
    (shop / "taps.toml").unlink()
    shop.rmdir()
    async with program() as hands:
        await hands.press("enter", "f6", "f9", "f9", "f6", "f9", "f3", "f9")
    assert not shop.exists()
