"""Files of the book that another program cuts, removes, replaces and fills again between the keys: no screen ends by it."""

from __future__ import annotations

import os
import random
import shutil
import subprocess
from collections.abc import Callable, Sequence
from contextlib import AbstractAsyncContextManager, nullcontext
from pathlib import Path
from typing import Any

import pytest

from library.book import opening
from library.demo import lay_out
from tui.app import Heelclear
from tui.session import Session

HandsOn = Callable[..., AbstractAsyncContextManager[Any]]

TAKEN_OVER = ("families", "cautions", "materials", "setups", "symptoms", "recommended-wheels", "taps-machine")
"""Files of what comes with the program that stand in the shop's folder here, so that they can go too."""

FAMILIES = ("tap", "twist-drill", "countersink")
"""Those that are taken over where it has to be quick."""

STEPS = 60
MANY_STEPS = int(os.environ.get("HEELCLEAR_TEST_STEPS", "") or 500)
"""2,000 of them take three and a half minutes; for a long walk by hand."""

USUAL_SEED = 31
"""Of the walk on the server; for another one set ``HEELCLEAR_TEST_SEED``."""

WAYS = (
    (),
    ("ramp", "<enter>"),
    ("dowel", "<f2>", "12", "<ctrl+n>"),
    ("ramp", "<ctrl+t>", "<ctrl+u>", "dowel", "<ctrl+t>", "<ctrl+k>"),
    ("<f3>",),
    ("<f3>", "d-87", "<enter>"),
    ("<f3>", "d-87", "<f7>", "<enter>"),
    ("<f8>", "machines", "<enter>"),
    ("<f8>", "machines", "<enter>", "<enter>"),
    ("ramp", "<enter>", "<f6>", "<enter>"),
    ("<f2>", "<f8>"),
    ("ramp", "<enter>", "<f6>", "history", "<enter>"),
)
"""The ways from the book to each screen that shows a part of it."""

SEEN = {
    "book",
    "entry",
    "calculator",
    "compare",
    "cards",
    "card",
    "sheet",
    "machines",
    "own-table",
    "form",
    "menu",
    "history",
}
"""The screens at their ends."""

MORE_WAYS = (
    *WAYS,
    ("ramp", "<f2>", "<f2>"),
    ("ramp", "<f2>"),
    ("spi", "<ctrl+f>", "T-1", "<enter>"),
    ("<f3>", "d-87", "<enter>", "<ctrl+p>", "<f6>"),
    ("ramp", "<enter>", "<f7>"),
    ("<f3>", "<f8>", "life", "<enter>"),
    ("<f3>", "<ctrl+t>", "<down>", "<ctrl+t>", "<f8>", "plan the", "<enter>"),
    ("<f8>", "machines", "<enter>", "pink", "<enter>"),
    ("ramp", "<enter>", "<f6>", "title", "<enter>"),
    ("<f8>", "new tool", "<enter>"),
    ("<f8>", "new family", "<enter>"),
    ("ramp", "<enter>", "<f6>", "<enter>", "<ctrl+u>", "7 deg", "<ctrl+r>"),
    ("ramp", "<enter>", "<f6>"),
    ("<f6>",),
    ("<f8>",),
    ("<f8>", "problems", "<enter>"),
    ("ramp", "<enter>", "<f4>"),
    ("<f8>", "words explained", "<enter>"),
    ("<f8>", "first jobs", "<enter>"),
    ("spi", "<f2>", "?"),
)
"""The same, and to all other screens."""

KEYS = (
    *("?", "up", "down", "left", "right", "tab", "shift+tab", "enter", "escape", "home", "end", "pageup", "pagedown"),
    *("f2", "f3", "f4", "f5", "f6", "f7", "f8", "f9", "ctrl+n", "ctrl+p", "ctrl+t", "ctrl+k", "ctrl+g", "ctrl+r"),
    *("ctrl+f", "ctrl+u", "a", "s", "1", "space", "enter", "enter", "down", "right"),
)  # fmt: skip


class Meddler:
    """Another program that cuts, removes, replaces and fills again the files of a book.

    Args:
        folder: of the book.
        chance: decides what it does.
    """

    def __init__(self, folder: Path, chance: random.Random) -> None:
        self._chance = chance
        self._was = {path: path.read_bytes() for path in sorted(folder.rglob("*.toml"))}

    def meddle(self) -> None:
        """Do something to one file."""
        path = self._chance.choice(list(self._was))
        whole = self._was[path]
        if path.is_dir():
            path.rmdir()
        path.parent.mkdir(parents=True, exist_ok=True)
        match self._chance.randrange(7):
            case 0 | 1:
                path.unlink(missing_ok=True)
            case 2:
                path.write_bytes(whole[: self._chance.randrange(len(whole))])
            case 3:
                path.write_bytes(self._was[self._chance.choice(list(self._was))])
            case 4:
                path.unlink(missing_ok=True)
                path.mkdir()
            case 5:
                path.write_bytes(b"")
            case _:
                path.write_bytes(whole)

    def fill(self) -> None:
        """Put everything back."""
        for path, whole in self._was.items():
            if path.is_dir():
                path.rmdir()
            if not path.exists() or path.read_bytes() != whole:
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_bytes(whole)


def laid_out(folder: Path, *, whole: bool) -> Path:
    """The invented book with what else is known, all of it in the shop's folder, and recorded in git."""
    lay_out(folder)
    for name in TAKEN_OVER if whole else TAKEN_OVER[:3]:
        shutil.copy(opening.SHIPPED / f"{name}.toml", folder)
    if not whole:
        head, *tables = (folder / "families.toml").read_text().split("[[family]]\n")
        kept = [one for one in tables if one.startswith(tuple(f'id = "{name}"' for name in FAMILIES))]
        (folder / "families.toml").write_text("[[family]]\n".join([head, *kept]))
    for words in (["init", "-q"], ["add", "-A"], ["commit", "-q", "-m", "Begin"]):
        subprocess.run(["git", *words], cwd=folder, check=True, capture_output=True)
    return folder


@pytest.fixture
def alone(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder without any data that came with the program."""
    shipped = tmp_path / "shipped"
    shipped.mkdir()
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("EDITOR", "true")
    for name in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{name}_NAME", "The Yard")
        monkeypatch.setenv(f"GIT_{name}_EMAIL", "yard@example.org")
    return tmp_path


async def to_the_book(hands: Any) -> None:
    """Back to the list, its find line empty."""
    while hands.app.screen.WHERE != "book":
        hands.app.pop_screen()
        await hands.messages()
    await hands.press("ctrl+u")


class Walk:
    """Goes from screen to screen while another program meddles with the files between the keys.

    Args:
        shop: the folder of the book.
        seed: of all that is left to chance.

    Attributes:
        trail: the keys since the book was whole.
        seen: the screens at the ends of the ways.
        looked_at: whether the program has read the book again since it was whole.
    """

    def __init__(self, shop: Path, seed: int) -> None:
        self.chance = random.Random(seed)
        self.meddler = Meddler(shop, self.chance)
        self.trail: list[str] = []
        self.seen: set[str] = set()
        self.looked_at = False

    async def go(self, hands: Any, way: Sequence[str]) -> None:
        """Fill the book again, and go from it to a screen."""
        self.meddler.fill()
        if self.looked_at:
            hands.app.read_again("The book is whole again.")
            self.looked_at = False
        await to_the_book(hands)
        self.trail = [*way]
        await hands.do(*way)
        self.seen.add(hands.app.screen.WHERE)

    async def meddle(self, hands: Any, keys: int) -> None:
        """Press keys, each after something was done to a file; now and then the program looks at its files."""
        for _ in range(keys):
            self.meddler.meddle()
            if self.chance.random() < 0.12:
                self.trail.append("(the files are looked at)")
                self.looked_at = True
                hands.app.file_watch.look()
                await hands.settle()
            self.trail.append(self.chance.choice(KEYS))
            await hands.press(self.trail[-1])
            assert hands.app.is_running, f"it ended after {self.trail}"


@pytest.fixture
def that_stays(alone: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[Path], Heelclear]:
    """The program on a book and on nothing else; no key makes it leave, or go to the shell."""

    def program(shop: Path) -> Heelclear:
        monkeypatch.setattr(opening, "SHIPPED", alone / "shipped")
        app = Heelclear(Session(), lambda: opening.open_book(shop), shop, alone / "state")
        monkeypatch.setattr(app, "leave", lambda code=0: None)
        monkeypatch.setattr(app, "action_suspend_process", lambda: None)
        monkeypatch.setattr(app, "suspend", nullcontext)
        return app

    return program


@pytest.mark.depth
async def test_no_screen_ends_when_files_are_cut_removed_and_filled_again_between_the_keys(
    alone: Path, that_stays: Callable[[Path], Heelclear], hands_on: HandsOn
) -> None:
    shop = laid_out(alone / "shop", whole=False)
    walk = Walk(shop, seed=5)
    async with hands_on(that_stays(shop), shop) as hands:
        for way in WAYS:
            await walk.go(hands, way)
            await walk.meddle(hands, STEPS // len(WAYS))
    assert walk.seen == SEEN


@pytest.mark.depth
async def test_the_same_on_all_screens_for_as_long_and_with_the_seed_that_is_asked_for(
    alone: Path, that_stays: Callable[[Path], Heelclear], hands_on: HandsOn
) -> None:
    seed = int(os.environ.get("HEELCLEAR_TEST_SEED", "") or USUAL_SEED)
    print(f"HEELCLEAR_TEST_SEED={seed}")
    shop = laid_out(alone / "shop", whole=True)
    walk = Walk(shop, seed)
    done = 0
    async with hands_on(that_stays(shop), shop) as hands:
        while done < MANY_STEPS:
            keys = walk.chance.randrange(3, 12)
            await walk.go(hands, walk.chance.choice(MORE_WAYS))
            await walk.meddle(hands, keys)
            done += keys
