"""A terminal that is made wider shows the tool in hand in its panes, whatever was opened while it was narrow."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from typing import Any

import pytest

from tui.widgets.pane import Pane

Program = Callable[..., AbstractAsyncContextManager[Any]]


def pane(hands: Any, name: str) -> str:
    """What stands in a pane of the screen in front."""
    return "\n".join(hands.app.screen.query_one(f"#{name}", Pane).text)


async def test_the_panes_show_what_is_in_hand_after_each_change_of_the_width(program: Program) -> None:
    async with program() as hands:
        await hands.do("bronze", "<f2>")
        await hands.resize(160, 36)
        assert "Hand tap 3/4-10, aluminium bronze" in pane(hands, "tool")
        assert "Diameter" in pane(hands, "tool")
        await hands.resize(80, 24)
        await hands.do("<f9>", "<ctrl+u>", "cast")
        await hands.resize(160, 36)
        assert "Twist drill, cast iron" in pane(hands, "tool")
        assert "Point" in pane(hands, "calculation")
        await hands.resize(80, 24)
        await hands.do("<ctrl+u>", "sink", "<enter>")
        await hands.resize(120, 36)
        assert "Countersink 90 degrees" in pane(hands, "tool")


@pytest.mark.depth
async def test_behind_a_card_the_panes_are_filled_for_the_width_at_which_it_is_left(program: Program) -> None:
    async with program() as hands:
        await hands.do("bronze", "<ctrl+f>")
        for width in (120, 80, 120):
            await hands.resize(width, 30)
            assert "New job card" in hands.lines()[0]
        await hands.do("<f9>")
        assert "Hand tap 3/4-10, aluminium bronze" in pane(hands, "tool")
