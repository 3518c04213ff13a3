"""Killed at any call between the key that saves and the end of the writing: old or new, and what was typed is not lost.

On a real terminal, key by key, with the ferry yard's book. By the variable ``HEELCLEAR_EVERY`` each so many of the
calls; without it one of some.
"""

from __future__ import annotations

import os
import shutil
import signal
import subprocess
import tomllib
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from library.demo import lay_out
from tests.tui.commands.ways_of_writing import CLOSED
from tui.main import main

pytestmark = pytest.mark.depth

Open = Callable[..., Any]

EVERY = int(os.environ.get("HEELCLEAR_EVERY", "24"))
"""Calls from one at which a save is stopped to the next; all of them take a quarter of an hour."""

PROGRAM = """
import signal, sys
from pathlib import Path
from tests.tui.commands.stopping import Stopping
from tui.main import main

stopping = Stopping({at}, kill=True)

def begin(*_):
    Path("begun").touch()
    stopping.begin()

def tell(*_):
    Path("steps.new").write_text(" ".join(stopping.steps), encoding="utf-8")
    Path("steps.new").rename("steps")

signal.signal(signal.SIGUSR1, begin)
signal.signal(signal.SIGUSR2, tell)
sys.exit(main(["--library", "yard"]))
"""
"""The program, which counts its calls from a first signal on, and writes them down at a second."""

YARD = Path("yard")


@dataclass(frozen=True)
class Save:
    """Keys that lead to a save.

    Attributes:
        keys: keys and words one after the other; behind ``@`` what must be on the screen first.
        last: the key that saves.
        shown: what the screen shows when it is done.
        typed: what was typed; it must be in the book, or in a draft.
        before: what is done before the program starts.
        at_once: whether it is saved before there is a draft of it; else a draft is waited for.
    """

    keys: tuple[str, ...]
    last: str
    shown: str
    typed: str
    before: Callable[[], object] = lambda: None
    at_once: bool = False


def _reopened() -> None:
    assert main(["--library", "yard", "card-set", CLOSED, "--reopen"]) == 0


def _in_git() -> None:
    for words in (["init", "-q"], ["add", "-A"], ["commit", "-qm", "begun"]):
        subprocess.run(["git", "-C", "yard", *words], check=True, capture_output=True)
    _change_by_hand()


def _change_by_hand() -> None:
    path = YARD / "ferry-yard.toml"
    path.write_text(path.read_text(encoding="utf-8") + "# By hand.\n", encoding="utf-8")


TO_THE_CHANGES = ("ferry ramp", "enter", "@chamfer", "f6", "@Find:")
SAVES: Mapping[str, Save] = {
    "value": Save((*TO_THE_CHANGES, "chamfer relief", "enter", "6.5 deg", "ctrl+r", "@Before"), "enter", "Saved.", "6.5 deg"),
    "copy": Save((*TO_THE_CHANGES, "copy", "enter", ", hers", "ctrl+r", "@Before"), "enter", "Saved.", ", hers"),
    "machine": Save(("f8", "machines", "enter", "f6", "@Dividing head", "47", "ctrl+r", "@Before"), "enter", "Saved.", "47"),
    "card saved": Save(("f3", CLOSED, "enter", "@Wheel", "qzz"), "ctrl+r", "Saved as", "qzz", _reopened),
    "card saved at once": Save(("f3", CLOSED, "enter", "@Wheel", "qzz"), "ctrl+r", "Saved as", "qzz", _reopened, at_once=True),
    "card closed": Save(("f3", CLOSED, "enter", "@Wheel", "qzz", "f8", "close", "enter", "@Go back", "down"), "enter", "a record now", "qzz", _reopened),
    "record": Save(("f6", "@Record now", "record now", "@Changed and not"), "enter", "Recorded: 1 file", "", _in_git),
}  # fmt: skip
DISCARD = Save(("f8", "unsaved", "enter", "@Left unsaved", "f8", "discard", "enter", "@Go back", "down"), "enter", "forgotten", "")  # fmt: skip


class Bench:
    """A folder with the yard's book and a home, which is laid anew for each stop.

    Args:
        terminal: opens the program.
        home: its home.
        save: what is done.
    """

    def __init__(self, terminal: Open, home: Path, save: Save) -> None:
        self._terminal, self.home, self.save = terminal, home, save
        self.had_draft = False
        lay_out(YARD)
        save.before()
        self.ready = home.parent / f"{home.name}-ready"

    def keep(self) -> None:
        """This is how it stands before each stop."""
        shutil.copytree(self.home, self.ready / "home", symlinks=True)
        shutil.copytree(YARD, self.ready / "yard", symlinks=True)

    def lay(self) -> None:
        for name, folder in (("home", self.home), ("yard", YARD)):
            shutil.rmtree(folder)
            shutil.copytree(self.ready / name, folder, symlinks=True)
        for name in ("begun", "steps"):
            Path(name).unlink(missing_ok=True)

    def open(self, at: int = 0) -> Any:
        opened = self._terminal("--library", "yard", code=PROGRAM.format(at=at), columns=100, rows=30)
        opened.wait_for(" of ")
        return opened

    def go(self, opened: Any, save: Save) -> None:
        """Press the keys up to the one that saves."""
        for key in save.keys:
            if key.startswith("@"):
                opened.wait_for(key[1:])
            else:
                opened.press(key)
        while save.typed and not save.at_once and not any(save.typed in text for text in self.drafts()):
            opened.read(0.02)

    def ask(self, opened: Any, number: int, name: str) -> None:
        opened.kill(number)
        while not Path(name).exists():
            opened.read(0.01)

    def calls(self) -> list[str]:
        """All calls of the save, which is done whole."""
        opened = self.open()
        self.go(opened, self.save)
        self.had_draft = bool(self.drafts())
        self.ask(opened, signal.SIGUSR1, "begun")
        opened.send(self.save.last)
        opened.wait_for(self.save.shown)
        opened.rest(least=0.4)
        self.ask(opened, signal.SIGUSR2, "steps")
        opened.close()
        return Path("steps").read_text(encoding="utf-8").split()

    def killed_at(self, number: int) -> bool:
        """Do it once more and let it be killed there; says whether it came so far."""
        self.lay()
        opened = self.open(number)
        self.go(opened, self.save)
        self.ask(opened, signal.SIGUSR1, "begun")
        opened.send(self.save.last)
        is_done = False
        while opened.ended is None and not is_done:
            is_done = any(self.save.shown in line for line in opened.screen()) and not opened.rest(least=0.4)
            opened.read(0.02)
            pid, status = os.waitpid(opened.pid, os.WNOHANG)
            if pid:
                opened.ended = os.waitstatus_to_exitcode(status)
        was_killed = bool(opened.ended == -signal.SIGKILL)
        opened.close()
        return was_killed

    def texts(self) -> dict[str, bytes]:
        return {str(path): path.read_bytes() for path in YARD.rglob("*.toml") if ".git" not in path.parts}

    def drafts(self) -> list[str]:
        folder = self.home / "state" / "heelclear" / "drafts"
        found = [path.read_text(encoding="utf-8") for path in folder.glob("*.toml")]
        for text in found:
            tomllib.loads(text)
        return found


def numbers(calls: int, name: str) -> range:
    return range(1 + len(name) % min(EVERY, calls), calls + 1, EVERY)


@pytest.fixture
def bench(
    terminal: Open, an_empty_home: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Callable[[Save], Bench]:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("PYTHONPATH", str(Path(__file__).parents[3]))
    for name in ("GIT_AUTHOR_NAME", "GIT_AUTHOR_EMAIL", "GIT_COMMITTER_NAME", "GIT_COMMITTER_EMAIL"):
        monkeypatch.setenv(name, "yard")
    return lambda save: Bench(terminal, an_empty_home, save)


@pytest.mark.parametrize(
    "name", SAVES if "HEELCLEAR_EVERY" in os.environ else ["value", "card saved at once"]
)
def test_a_save_that_is_killed_is_done_or_not_and_what_was_typed_is_in_the_book_or_offered(
    name: str, bench: Callable[[Save], Bench]
) -> None:
    here = bench(SAVES[name])
    here.open().close()
    here.keep()
    before = here.texts()
    calls, after = here.calls(), here.texts()
    wrong, killed, young = [], 0, 0
    if here.save.at_once:
        assert here.had_draft or calls.count("replace") > 1, "a draft is put in its place before the save"
    stops = numbers(len(calls), name)
    for number in stops:
        killed += here.killed_at(number)
        told = torn(here.texts(), before, after)
        is_saved, drafts = here.texts() != before, here.drafts()
        # What is typed right before the key is half a second old at most until the draft is in its place.
        is_young = here.save.at_once and "replace" not in calls[: number - 1]
        is_kept = not here.save.typed or any(here.save.typed in text for text in drafts)
        young += is_young and not is_saved and not is_kept
        if not (is_saved or is_kept or is_young):
            told.append("what was typed is neither in the book nor in a draft")
        again = here.open()
        if drafts and not is_saved:
            again.wait_for("1 unsaved")
        again.close()
        wrong += [f"{name}, call {number} ({calls[number - 1]}): {one}" for one in told]
    print(
        f"{name}: {len(calls)} calls, stopped at {killed} of {len(stops)}, {young} before the draft, {len(wrong)} wrong"
    )
    assert killed, "it was stopped"
    assert not wrong, "\n".join(wrong)


def test_a_draft_that_is_thrown_away_when_the_program_is_killed_is_there_whole_or_gone(
    bench: Callable[[Save], Bench],
) -> None:
    here = bench(DISCARD)
    first = here.open()
    for key in SAVES["value"].keys[:-2]:
        if key.startswith("@"):
            first.wait_for(key[1:])
        else:
            first.press(key)
    first.kill(signal.SIGTERM)
    assert first.exit_code() == 143
    here.keep()
    before, (draft,) = here.texts(), here.drafts()
    calls, wrong, killed = here.calls(), [], 0
    stops = numbers(len(calls), "draft")
    for number in stops:
        killed += here.killed_at(number)
        told = []
        left = here.drafts()
        if here.texts() != before or left not in ([], [draft]):
            told.append("the draft or the book is neither old nor new")
        again = here.open()
        if left:
            again.wait_for("1 unsaved")
        again.close()
        wrong += [f"call {number} ({calls[number - 1]}): {one}" for one in told]
    print(f"draft: {len(calls)} calls, stopped at {killed} of {len(stops)}, {len(wrong)} wrong")
    assert killed, "it was stopped"
    assert not wrong, "\n".join(wrong)


def torn(found: Mapping[str, bytes], before: Mapping[str, bytes], after: Mapping[str, bytes]) -> list[str]:
    """What is wrong with the files that were found; of a card the times differ from save to save."""
    wrong = [f"lost {name}" for name in before if name in after and name not in found]
    for name, raw in found.items():
        try:
            tomllib.loads(raw.decode())
        except ValueError:
            wrong.append(f"torn {name}, {len(raw)} bytes")
        known = [one[name] for one in (before, after) if name in one]
        if known and "cards" not in name and raw not in known:
            wrong.append(f"neither old nor new: {name}, {len(raw)} bytes")
    return wrong
