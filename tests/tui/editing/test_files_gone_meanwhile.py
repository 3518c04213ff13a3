"""The list still shows a tool whose file another program has taken away: the page says what happened to the file."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

Program = Callable[..., AbstractAsyncContextManager[Any]]

REMOVED = "'bronze-tap' stood in taps.toml, which is not there any more: somebody else removed or renamed it."


async def test_a_tool_whose_file_was_removed_says_so_at_every_key_that_wants_it(
    program: Program, shop: Path
) -> None:
    async with program() as hands:
        await hands.type("bronze")
        whole = (shop / "taps.toml").read_bytes()
        (shop / "taps.toml").unlink()
        for key in ("enter", "f2", "ctrl+f", "f7"):
            await hands.press(key)
            assert hands.app.screen.WHERE == "book", key
            assert REMOVED in hands.words(), key
        (shop / "taps.toml").write_bytes(whole.partition(b"[[entry]]  # the one")[0])
        await hands.press("enter")
        assert (
            "taps.toml was changed by somebody else and does not hold 'bronze-tap' any more." in hands.words()
        )
        (shop / "taps.toml").write_bytes(whole)
        await hands.press("enter")
        assert hands.app.screen.WHERE == "entry"


async def test_an_open_tool_whose_file_was_removed_says_so_when_the_files_are_looked_at(
    program: Program, shop: Path
) -> None:
    async with program() as hands:
        await hands.do("bronze", "<enter>")
        (shop / "taps.toml").unlink()
        await hands.press("down", "f4", "f9")
        assert hands.app.screen.WHERE == "entry"
        hands.app.file_watch.look()
        await hands.settle()
        assert hands.app.screen.WHERE == "book"
        assert "Changed by somebody else: taps.toml." in hands.words()
        assert "This entry is not in the book any more." in hands.words()


async def test_a_comparison_below_the_menu_outlives_its_tools_and_is_left_when_it_comes_to_the_front(
    program: Program, shop: Path
) -> None:
    async with program() as hands:
        await hands.do("bronze", "<ctrl+t>", "<ctrl+u>", "tap for brass", "<ctrl+t>", "<ctrl+k>")
        assert hands.app.screen.WHERE == "compare"
        await hands.press("f8")
        (shop / "taps.toml").unlink()
        hands.app.file_watch.look()
        await hands.settle()
        assert "SIDE BY SIDE" in hands.shown().upper()
        await hands.press("f9")
        assert hands.app.screen.WHERE == "book"
        assert "not in the book any more" in hands.words()
