"""A small book in memory for the tests of the screens, and the program run on it without a terminal."""

from __future__ import annotations

import math
from collections.abc import Callable
from pathlib import Path

import pytest

from library.book.model import (
    Book,
    Caution,
    Citation,
    Entry,
    Family,
    Finding,
    Material,
    Measure,
    Place,
    Source,
    Value,
)
from library.book.rows import Row, Rows
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


def _entry(name: str, family: str, title: str, material: str, relief: float, **others: Value) -> Entry:
    values = {"relief_angle": _angle("relief_angle", relief), "relief_form": _relief_form("eccentric")}
    return Entry(name, family, title, material, values=values | others, cautions=("chips",))


def _row(entry: Entry) -> Row:
    search = " ".join((entry.title, entry.family, entry.work_material, *entry.synonyms)).casefold()
    return Row("entry", entry.id, entry.title, entry.family, entry.work_material, entry.layer, search=search)


def sample_book() -> Book:
    """A book with four families, two layers, cautions with sources, and one problem."""
    shop_relief = Value(
        "relief_angle",
        usual=Measure("5 deg", math.radians(5)),
        citation=SHOP,
        layer="shop",
        replaces=_angle("relief_angle", 4),
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
            "relief_angle": shop_relief,
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
            "tap": Family("tap", "Taps", "They cut threads.", {"relief": "Behind the edge."}, ("threading",)),
            "countersink": Family("countersink", "Countersinks", "They cut cones."),
            "step-drill": Family("step-drill", "Step drills", "They drill several sizes."),
            "twist-drill": Family("twist-drill", "Twist drills", "They drill."),
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
            Finding(Place(Path("shop/own.toml"), 7, 3), "tap-odd.relief_angle", "It has no unit.", "Write 4 deg."),
        ),
    )  # fmt: skip


@pytest.fixture
def book() -> Book:
    return sample_book()


@pytest.fixture
def program(book: Book, tmp_path: Path) -> Callable[[], Heelclear]:
    """Makes the program on the sample book."""
    return lambda: Heelclear(Session(), lambda: book, tmp_path / "shop", tmp_path / "state")


Shown = Callable[[Heelclear], str]


@pytest.fixture
def shown() -> Shown:
    """Gives all the words on the screen, line by line."""
    return lambda program: "\n".join(program.screen.query_one(Pane).text)
