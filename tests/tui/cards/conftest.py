"""The program in the invented ferry yard, and a pair of hands that count their keys."""

from __future__ import annotations

from collections.abc import AsyncIterator, Callable
from contextlib import AbstractAsyncContextManager, asynccontextmanager
from pathlib import Path

import pytest
from textual.pilot import Pilot

from library.book.opening import open_book
from library.demo import lay_out
from tui.app import Heelclear
from tui.session import Session
from tui.widgets.pane import Pane

SMALL = (80, 24)


class Hands:
    """Press keys, count them, and read the screen."""

    def __init__(self, app: Heelclear, pilot: Pilot[None], shop: Path) -> None:
        self.app = app
        self.pilot = pilot
        self.shop = shop
        self.keys = 0

    async def press(self, *words: str) -> str:
        """Press keys by name in angle brackets and type everything else; returns what is shown then."""
        for word in words:
            named = word.startswith("<") and word.endswith(">")
            keys = [word[1:-1]] if named else ["space" if sign == " " else sign for sign in word]
            self.keys += len(keys)
            await self.pilot.press(*keys)
        await self.settle()
        return self.shown()

    async def settle(self) -> None:
        await self.app.workers.wait_for_complete()
        await self.pilot.pause()

    def shown(self) -> str:
        return "\n".join(self.lines())

    def lines(self) -> list[str]:
        return self.app.screen.query_one(Pane).text


AtTheYard = Callable[..., AbstractAsyncContextManager[Hands]]


@pytest.fixture
def yard(tmp_path: Path) -> Path:
    """The invented book, laid out afresh."""
    folder = tmp_path / "ferry-yard"
    lay_out(folder)
    return folder


@pytest.fixture
def at_the_yard(yard: Path, tmp_path: Path) -> AtTheYard:
    """Opens the program on the invented book."""

    @asynccontextmanager
    async def opened(size: tuple[int, int] = SMALL, shop: Path = yard) -> AsyncIterator[Hands]:
        app = Heelclear(Session(), lambda: open_book(shop), shop, tmp_path / "state")
        async with app.run_test(size=size) as pilot:
            hands = Hands(app, pilot, shop)
            while app.session.book is None:
                await hands.settle()
            yield hands

    return opened
