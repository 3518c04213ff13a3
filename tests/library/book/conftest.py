"""A shipped book of three tables and a shop of three files, for tests that need no more."""

from __future__ import annotations

from pathlib import Path

import pytest

from library.book import fetching, opening
from tests.library.book.small_books import write

SHIPPED = """\
schema = 1

[[family]]
id = "tap"
title = "Taps"
kind = "tap"
what = "Tools that cut a thread."

[[material]]
id = "bronze"
title = "Bronze"
iso_513 = "N"

[[entry]]
id = "shipped-tap"
family = "tap"
title = "Shipped tap"
rake_angle = { usual = "4 deg", source = "common practice" }
"""


@pytest.fixture
def three_tables(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """In place of the shipped data: one family, one material, one entry."""
    folder = tmp_path_factory.mktemp("three-tables")
    (folder / "taps.toml").write_text(SHIPPED)
    monkeypatch.setattr(opening, "SHIPPED", folder)
    return folder


@pytest.fixture
def nothing_shipped(tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> None:
    """No shipped data at all: a book is what a test writes."""
    monkeypatch.setattr(opening, "SHIPPED", tmp_path_factory.mktemp("nothing-shipped"))


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A shop with two taps in each of three files, whose time stamps are trusted at once."""
    monkeypatch.setattr(fetching, "SETTLED", 0.0)
    folder = tmp_path / "shop"
    folder.mkdir()
    for file in ("a", "b", "c"):
        write(folder / f"{file}.toml", f"{file}1", f"{file}2")
    return folder
