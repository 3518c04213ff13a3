"""A small book in memory for the tests of the screens, and the program run on it without a terminal."""

from __future__ import annotations

import asyncio
import math
import time
from collections.abc import AsyncIterator, Callable
from contextlib import AbstractAsyncContextManager, asynccontextmanager, suppress
from pathlib import Path

import pytest
from rich.cells import cell_len
from textual import events
from textual.app import ScreenStackError
from textual.keys import _character_to_key
from textual.message import Message
from textual.pilot import Pilot

from library.book.model import Book, Caution, Citation, Entry, Family, Material, Measure, Source, Value
from library.book.rows import Row, Rows
from library.issue import Issue, Place
from tui.app import Heelclear
from tui.session import Session
from tui.widgets.pane import Pane

PUBLISHED = Citation("published", "manual", "chapter 3, page 12")
SHOP = Citation("shop")


def _angle(key: str, usual: float, citation: Citation = PUBLISHED, reach: float = 2.0) -> Value:
    low, middle, high = (
        Measure(f"{d:g} deg", math.radians(d)) for d in (usual - reach, usual, usual + reach)
    )
    return Value(key, low, middle, high, citation)


def _relief_form(word: str) -> Value:
    return Value("relief_form", usual=Measure(word, word=word), citation=Citation("common practice"))


RELIEFS = {
    "tap": "thread_relief_angle",
    "countersink": "cone_relief_angle",
    "step-drill": "shoulder_relief_angle",
    "twist-drill": "lip_relief_angle",
}
"""The relief that the entries of a family have."""


def _entry(name: str, family: str, title: str, material: str, relief: float, **others: Value) -> Entry:
    key = RELIEFS[family]
    values = {key: _angle(key, relief), "relief_form": _relief_form("eccentric")}
    return Entry(name, family, title, material, values=values | others, cautions=("chips",))


def _row(entry: Entry) -> Row:
    search = " ".join((entry.title, entry.family, entry.work_material, *entry.synonyms)).casefold()
    return Row("entry", entry.id, entry.title, entry.family, entry.work_material, entry.layer, search=search)


def sample_book() -> Book:
    """A book with four families, two layers, cautions with sources, and one problem."""
    shop_relief = Value(
        "thread_relief_angle",
        usual=Measure("5 deg", math.radians(5)),
        citation=SHOP,
        layer="shop",
        replaces=_angle("thread_relief_angle", 4),
    )
    three_quarter = Entry(
        "tap-three-quarter",
        "tap",
        "Hand tap 3/4-10, aluminium bronze",
        "aluminium bronze",
        synonyms=("straight flute",),
        values={
            "diameter": Value("diameter", usual=Measure("3/4 in", 19.05), citation=SHOP, layer="shop"),
            "threads_per_inch": Value(
                "threads_per_inch", usual=Measure("10 tpi", 10 / 25.4), citation=SHOP, layer="shop"
            ),
            "thread_relief_angle": shop_relief,
            "relief_form": _relief_form("eccentric"),
        },
        cautions=("chips",),
        notes="Ground on Tuesdays.\nKeep [this] as it is.",
        layer="shop",
    )
    entries = [
        _entry("tap-brass", "tap", "Hand tap, brass", "brass", 4, rake_angle=_angle("rake_angle", 3)),
        three_quarter,
        _entry("sink-steel", "countersink", "Countersink 90 degrees, mild steel", "mild steel", 8),
        _entry("step-sheet", "step-drill", "Step drill, sheet steel", "mild steel", 8),
        _entry("drill-cast", "twist-drill", "Twist drill, cast iron", "cast iron", 12),
    ]
    return Book(
        rows=Rows.of(map(_row, entries)),
        entries={entry.id: entry for entry in entries},
        families={
            "tap": Family(
                "tap",
                "Taps",
                "They cut threads.",
                {"relief": "Behind the edge."},
                kind="tap",
                surfaces=("chamfer", "thread-land"),
                synonyms=("threading",),
            ),
            "countersink": Family("countersink", "Countersinks", "They cut cones.", kind="countersink", surfaces=("cone",)),
            "step-drill": Family(
                "step-drill", "Step drills", "They drill several sizes.", kind="step-drill", surfaces=("shoulder", "land", "lip")
            ),
            "twist-drill": Family("twist-drill", "Twist drills", "They drill.", kind="twist-drill", surfaces=("lip", "land")),
        },
        materials={"brass": Material("brass", "brass", cautions=("dust",))},
        cautions={
            one.id: one
            for one in (
                Caution("wheel-rating", "Wheel rating", "Never run a wheel faster than marked.", PUBLISHED),
                Caution("ring-test", "Ring test", "Ring the wheel before it is mounted.", PUBLISHED),
                Caution("eyes", "Eyes", "Wear eye protection.", PUBLISHED),
                Caution("dust", "Dust", "Brass dust is kept out of the lungs.", PUBLISHED),
                Caution("chips", "Chips", "Chips are sharp.", Citation("common practice")),
                Caution("defer", "Who comes first", "The maker's rating comes first.", Citation("common practice")),
            )
        },
        sources={"manual": Source("manual", "Manual of Grinding", "Bureau of Tests", "1950")},
        findings=(
            Issue("tap-odd", "thread_relief_angle", "error", "It has no unit.", "Write 4 deg.", Place(Path("shop/own.toml"), 7, 3)),
        ),
    )  # fmt: skip


@pytest.fixture
def book() -> Book:
    return sample_book()


SMALL = (80, 24)
AT_LEAST_QUIET = 3
"""Looks in a row at which nothing went on before it is taken that nothing will."""

LONGEST = 60.0
"""Seconds after which a state is not waited for any more; only a failure takes so long."""


class Hands:
    """A person at the program: presses keys, counts them, and reads the screen.

    Whatever is pressed is waited for by what goes on in the program, never by a time.

    Args:
        app: the program.
        pilot: the way to its messages.
        handled: the messages handled until now, counted by the program itself.
        shop: the folder of the book.

    Attributes:
        keys: how many keys were pressed.
    """

    def __init__(self, app: Heelclear, pilot: Pilot[None], handled: Callable[[], int], shop: Path) -> None:
        self.app = app
        self.pilot = pilot
        self.shop = shop
        self.keys = 0
        self._handled = handled

    async def messages(self) -> None:
        """Wait until every message is handled, and every one that came of it; not for what a thread does."""
        quiet = 0
        while quiet < AT_LEAST_QUIET and self.app.is_running:
            before = self._handled()
            with suppress(ScreenStackError):  # It has just ended.
                await self.pilot.pause(0)
            quiet = quiet + 1 if self._handled() == before else 0

    async def settle(self) -> None:
        """Wait until nothing goes on, on the screen and behind it; one thing may begin another."""
        await self.messages()
        while self.app.is_running and any(
            getattr(one, "is_behind", False) for one in self.app.screen_stack[-1:]
        ):
            await self.pilot.pause(0.01)
        while self.app.is_running and (working := list(self.app.workers)):
            # One that was cancelled or failed has ended too; the program tells of a failure itself.
            await asyncio.gather(*(one.wait() for one in working), return_exceptions=True)
            await self.messages()
        if self.app.escape.is_held and self.app.is_running:
            await self.until(lambda: not self.app.escape.is_held)
            await self.settle()

    async def until(self, holds: Callable[[], object]) -> None:
        """Wait until something holds that a clock of the program or a thread brings about."""
        end = time.monotonic() + LONGEST
        while not holds():
            assert time.monotonic() < end, f"it never came to hold:\n{self.shown()}"
            await self.pilot.pause(0.01)

    def send(self, *keys: str) -> None:
        """Send keys as fast as a terminal does, and wait for nothing."""
        for key in keys:
            character = " " if key == "space" else key if len(key) == 1 else None
            self.app.post_message(events.Key(_character_to_key(character) if character else key, character))
        self.keys += len(keys)

    async def press(self, *keys: str) -> str:
        """Press keys, wait for what comes of each that may open something, and look at the screen."""
        for key in keys:
            self.send(key)
            if len(key) > 1:
                await self.settle()
        await self.settle()
        return self.shown()

    async def press_meanwhile(self, *keys: str) -> str:
        """Press keys while a thread is held up, and look at the screen."""
        for key in keys:
            self.send(key)
            await self.messages()
        return self.shown()

    async def type(self, text: str) -> str:
        """Type a text."""
        return await self.press(*text)

    async def do(self, *words: str) -> str:
        """Press what stands in angle brackets as the key of that name, and type everything else."""
        for word in words:
            named = word.startswith("<") and word.endswith(">")
            await self.press(*([word[1:-1]] if named else word))
        return self.shown()

    async def choose(self, words: str) -> str:
        """Find something in the list in front, and take it."""
        return await self.press("ctrl+u", *words, "enter")

    async def menu(self, words: str) -> str:
        """Do something that is found in the menu by some words."""
        return await self.press("f8", *words, "enter")

    async def sure(self) -> str:
        """Do what is asked about, although leaving it comes first."""
        return await self.press("down", "enter")

    async def open(self, entry: str) -> str:
        """From the list to everything that can be changed of an entry."""
        await self.choose(entry)
        return await self.press("f6")

    async def resize(self, width: int, height: int) -> None:
        """Give the terminal another size."""
        await self.pilot.resize_terminal(width, height)
        await self.settle()

    def lines(self) -> list[str]:
        """The screen, line by line, panes that stand beside each other put together."""
        screen = [""] * self.app.size.height
        for pane in self.app.screen.query(Pane):
            if pane.display and pane.region:
                for y, text in enumerate(pane.text[: pane.region.height], pane.region.y):
                    screen[y] += " " * (pane.region.x - cell_len(screen[y])) + text
        return screen

    def shown(self) -> str:
        """All the words on the screen, line by line; nothing once the program has ended."""
        return "\n".join(self.lines()) if self.app.is_running else ""

    def words(self) -> str:
        """The same with one blank between words, wherever the lines break."""
        return " ".join(self.shown().split())

    def field(self, label: str) -> str:
        """What stands in a line of the form in front."""
        return next(line[20:].strip() for line in self.lines() if line[2:].startswith(label))


HandsOn = Callable[..., AbstractAsyncContextManager[Hands]]


@asynccontextmanager
async def started(app: Heelclear, shop: Path, size: tuple[int, int] = SMALL) -> AsyncIterator[Hands]:
    """Start a program at a size, and give the hands at it once its book is open."""
    handled = 0

    def count(message: Message) -> None:
        nonlocal handled
        handled += not isinstance(message, events.Callback)  # By these the Pilot itself waits.

    async with app.run_test(size=size, message_hook=count) as pilot:
        hands = Hands(app, pilot, lambda: handled, shop)
        await hands.until(lambda: app.session.book)
        await hands.settle()
        yield hands


@pytest.fixture
def hands_on() -> HandsOn:
    """Starts a program at a size, and gives the hands at it once its book is open."""
    return started


@pytest.fixture(autouse=True)
def no_clock_looks_at_the_files(monkeypatch: pytest.MonkeyPatch) -> None:
    """No test may depend on whether a look falls due in its midst; where one is wanted, it is asked for."""
    monkeypatch.setattr("tui.services.file_watch.EVERY", 86_400.0)


Program = Callable[..., AbstractAsyncContextManager[Hands]]


@pytest.fixture
def program(book: Book, tmp_path: Path, hands_on: HandsOn) -> Program:
    """Starts the program on the sample book, or on another, at a size."""

    def started(
        size: tuple[int, int] = SMALL, other: Book | None = None, session: Session | None = None
    ) -> AbstractAsyncContextManager[Hands]:
        shop = tmp_path / "shop"
        app = Heelclear(session or Session(), lambda: other or book, shop, tmp_path / "state")
        return hands_on(app, shop, size)

    return started
