"""A book with one machine and two wheels, and one whole job, for the tests of cards."""

from __future__ import annotations

from datetime import date
from pathlib import Path

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.model import Card, Inspection, Setting, Tool, Wanted
from tests.library.cards.drawer import DRAWER
from tests.library.shop_texts import CUP, DISH, grinder

SHOP = (
    grinder(
        '["2800 rpm", "4200 rpm"]',
        'cam_throw_range = { low = "0.2 mm", high = "2 mm" }',
        '["wheel_head_height", "face_offset"]',
    )
    + CUP
    + DISH
)


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """The folder of a shop's book."""
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "machines.toml").write_text(SHOP)
    return folder


@pytest.fixture
def book(shop: Path) -> Book:
    found = open_book(shop)
    assert [str(one) for one in found.findings if one.place.file.is_relative_to(shop)] == []
    return found


@pytest.fixture
def job() -> Card:
    """A tap as it lies on the bench of an invented tool room."""
    return Card(
        id="2026-11-25-01",
        started=date(2026, 11, 25),
        family="tap",
        machine="window-grinder",
        wheel="cup-60",
        tool=Tool("T-14", "12 mm", "M12 x 1.75", "4", "HSS", "slipway winch", "plain-steel"),
        wrong="Chips at two teeth.\nSqueals.",
        received={
            "diameter": ("11.97 mm",),
            "land_width": ("3.2 mm",),
            "land_measured_as": ("chord",),
            "drop": ("0.20 mm", "0.21 mm", "0.19 mm", "0.20 mm"),
        },
        wanted={
            "thread_relief_angle": Wanted("8 deg", "6 deg", "from memory", "it tore in bronze"),
            "relief_form": Wanted("eccentric"),
        },
        settings={"wheel-speed": Setting({"rotational_speed": "2800 rpm"})},
        after={"drop": Inspection(("0.45 mm", "0.45 mm", "0.44 mm", "0.46 mm"), "", "0.02 mm")},
        notes="Went well.",
        minutes="25",
    )


@pytest.fixture(scope="module")
def drawer(tmp_path_factory: pytest.TempPathFactory) -> Book:
    """A book with a drawer of cams."""
    folder = tmp_path_factory.mktemp("drawer")
    (folder / "machines.toml").write_text(DRAWER)
    return open_book(folder)
