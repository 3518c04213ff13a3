"""A shipped book and a shop's folder, both small and on the disk, and the program run on them at 80x24."""

from __future__ import annotations

from collections.abc import AsyncIterator, Callable
from contextlib import AbstractAsyncContextManager, asynccontextmanager
from pathlib import Path
from typing import Any

import pytest

from library.book import folders, opening
from tui.app import Heelclear
from tui.session import Session

SMALL = (80, 24)

SHIPPED = """\
schema = 1

[[family]]
id = "tap"
title = "Taps"
kind = "tap"
cautions = ["eyes"]

[[family]]
id = "twist-drill"
title = "Twist drills"
kind = "twist-drill"

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
chamfer_relief_angle = {usual='4 deg',   source = "shop"}  # measured in May

# Tried once.
[[entry]]
id = "brass-tap"
family = "tap"
title = "Tap for brass"
chamfer_relief_angle = { usual = "3 deg", source = "from memory" }
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


Program = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.fixture
def program(shop: Path, tmp_path: Path, hands_on: Any) -> Program:
    """Starts the program on the shop's book; it may be started again and again, as on another day."""

    @asynccontextmanager
    async def started(size: tuple[int, int] = SMALL) -> AsyncIterator[Any]:
        app = Heelclear(Session(), lambda: opening.open_book(shop), shop, tmp_path / "state")
        async with hands_on(app, shop, size) as hands:
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
