"""A shipped book and a shop's folder, both small and on the disk, and the program run on them at 80x24."""

from __future__ import annotations

from collections.abc import AsyncIterator, Callable
from contextlib import AbstractAsyncContextManager, asynccontextmanager
from pathlib import Path

import pytest
from textual import events
from textual.keys import _character_to_key
from textual.pilot import Pilot

from library.book import folders, opening
from tui.app import Heelclear
from tui.session import Session
from tui.widgets.pane import Pane

SMALL = (80, 24)

SHIPPED = """\
schema = 1

[[family]]
id = "tap"
title = "Taps"
cautions = ["eyes"]

[[family]]
id = "twist-drill"
title = "Twist drills"

[[material]]
id = "brass"
title = "Brass"

[[caution]]
id = "eyes"
title = "Eyes"
text = "Wear eye protection."
source = "common practice"

[[caution]]
id = "dust"
title = "Dust"
text = "Keep the dust out of the lungs."
source = "common practice"

[[source]]
id = "handbook"
title = "Handbook of the Tool Room"
year = "1950"

[[entry]]
id = "gun-tap"
family = "tap"
title = "Spiral-point tap"
work_material = "brass"
synonyms = ["gun tap"]
cautions = ["eyes"]
rake_angle = { low = "3 deg", usual = "5 deg", high = "8 deg", source = "handbook", place = "table 3" }
relief_form = { usual = "eccentric", source = "common practice" }
"""

SHOP = """\
# The shop's own taps.
schema = 1

[[entry]]  # the one on the shelf
id = "bronze-tap"
family = "tap"
title = "Tap for bronze"
relief_angle = {usual='4 deg',   source = "shop"}  # measured in May

# Tried once.
[[entry]]
id = "brass-tap"
family = "tap"
title = "Tap for brass"
relief_angle = { usual = "3 deg", source = "from memory" }
"""


@pytest.fixture(autouse=True)
def shipped(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of the data that came with the program, in place of the real one."""
    folder = tmp_path / "shipped"
    folder.mkdir()
    (folder / "all.toml").write_text(SHIPPED)
    monkeypatch.setattr(opening, "SHIPPED", folder)
    monkeypatch.setattr(folders, "shipped_folder", lambda: folder)
    return folder


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """The shop's folder, with one file."""
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "taps.toml").write_text(SHOP)
    return folder


class Hands:
    """A person at the program.

    Args:
        pilot: presses the keys.
    """

    def __init__(self, pilot: Pilot[None]) -> None:
        self.pilot = pilot

    @property
    def app(self) -> Heelclear:
        assert isinstance(self.pilot.app, Heelclear)
        return self.pilot.app

    async def settle(self) -> None:
        """Wait until nothing goes on behind the screen; one thing may begin another."""
        for _ in range(3):
            await self.pilot.app.workers.wait_for_complete()
            await self.pilot.pause()

    async def press(self, *keys: str) -> str:
        """Press keys, wait for what comes of them, and look at the screen."""
        await self.pilot.press(*keys)
        await self.settle()
        return self.shown()

    async def type(self, text: str) -> str:
        """Type a text as fast as a terminal sends it, wait for what comes of it, and look at the screen."""
        for one in text:
            self.app.post_message(events.Key(_character_to_key(one), one))
        await self.settle()
        return self.shown()

    async def open(self, entry: str) -> str:
        """From the list to everything that can be changed of an entry."""
        await self.press("ctrl+u")
        await self.type(entry)
        await self.press("enter")
        return await self.press("f6")

    async def choose(self, words: str) -> str:
        """Find something in the list in front, and take it."""
        await self.press("ctrl+u")
        await self.type(words)
        return await self.press("enter")

    def shown(self) -> str:
        """All the words on the screen, line by line."""
        return "\n".join(self.app.screen.query_one(Pane).text)

    def words(self) -> str:
        """The same with one blank between words, wherever the lines break."""
        return " ".join(self.shown().split())

    def field(self, label: str) -> str:
        """What stands in a line of the form in front."""
        lines = self.shown().splitlines()
        return next(line[20:].strip() for line in lines if line[2:].startswith(label))


Program = Callable[[], AbstractAsyncContextManager[Hands]]


@pytest.fixture
def program(shop: Path, tmp_path: Path) -> Program:
    """Starts the program on the shop's book; it may be started again and again, as on another day."""

    @asynccontextmanager
    async def started() -> AsyncIterator[Hands]:
        app = Heelclear(Session(), lambda: opening.open_book(shop), shop, tmp_path / "state")
        async with app.run_test(size=SMALL) as pilot:
            hands = Hands(pilot)
            await hands.settle()
            yield hands
            app.leave()

    return started


def toml_files(folder: Path) -> dict[str, str]:
    """The book's files by name."""
    return {path.name: path.read_text() for path in sorted(folder.glob("*.toml"))}


@pytest.fixture
def files(shop: Path) -> Callable[[], dict[str, str]]:
    """Reads the shop's files."""
    return lambda: toml_files(shop)
