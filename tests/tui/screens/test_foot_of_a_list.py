"""The lines under a list tell that there is more than they have room for."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

from tui.screens.cards.pick import PickScreen
from tui.screens.chooser import Choice

Program = Callable[..., AbstractAsyncContextManager[Any]]


async def test_a_long_text_under_a_list_ends_with_the_sign_that_it_goes_on(program: Program) -> None:
    async with program() as hands:
        choices = [Choice("long", "Long", "word " * 60), Choice("short", "Short", "A word.")]
        hands.app.push_screen(PickScreen(hands.app.session, "Which?", choices, lambda name: None))
        await hands.settle()
        under = hands.lines()[-4:-1]
        assert under[-1].rstrip().endswith("word…")
        await hands.press("down")
        assert [one.strip() for one in hands.lines()[-4:-1]] == ["A word.", "", ""]
