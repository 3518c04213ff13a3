"""However the program ends, what was typed half a second before is on the disk and offered at the next start."""

from __future__ import annotations

import os
import signal
import sys
import time
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tui.services.autosave import SOON

Open = Callable[..., Any]

LETTERS = "abcdefghijklmnopqrstuvwxyz"

SHOP = """\
schema = 1

[[entry]]
id = "zamak-tap"
family = "tap"
title = "Tap for zamak"
chamfer_relief_angle = { usual = "4 deg", source = "shop" }
"""


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "taps.toml").write_text(SHOP)
    return folder


@pytest.fixture
def drafts(an_empty_home: Path) -> Callable[[], list[dict[str, Any]]]:
    """Reads the drafts on the disk."""

    def read() -> list[dict[str, Any]]:
        folder = an_empty_home / "state" / "heelclear" / "drafts"
        return [tomllib.loads(path.read_text()) for path in sorted(folder.glob("*.toml"))]

    return read


def _at_the_changes(terminal: Open, shop: Path, **variables: str) -> Any:
    """The program with the list of all that can be changed of the entry."""
    opened = terminal("--library", str(shop), **variables)
    opened.wait_for(" of ")
    opened.press("zamak", "enter")
    opened.wait_for("Chamfer relief")
    opened.press("f6")
    opened.wait_for("Find:")
    return opened


def _at_the_note(terminal: Open, shop: Path) -> Any:
    """The program with the note of a value in hand."""
    opened = _at_the_changes(terminal, shop)
    opened.press("chamfer relief")
    opened.press("enter")
    opened.wait_for("Place in it")
    opened.press(*["down"] * 4)
    opened.wait_for("> Note")
    return opened


@pytest.mark.parametrize("writings", [1, pytest.param(8, marks=pytest.mark.depth)])
def test_killed_in_the_middle_of_typing_loses_what_came_after_the_last_writing_alone(
    terminal: Open, shop: Path, drafts: Callable[[], list[dict[str, Any]]], writings: int
) -> None:
    """How much that is depends on the machine, and is reported; the program's own clock for it is half a second."""
    assert SOON <= 0.5
    opened = _at_the_note(terminal, shop)
    typed: list[float] = []
    seen: list[str] = []
    end = time.monotonic() + 120
    while len(seen) < writings:
        assert time.monotonic() < end, f"only {len(seen)} writings while typing went on"
        os.write(opened.file, LETTERS[len(typed) % 26].encode())
        typed.append(time.monotonic())
        opened.read(0.04)
        notes = [one["fields"]["note"] for one in drafts()]
        seen += [note for note in notes if note not in seen]
    opened.kill(signal.SIGKILL)
    killed = time.monotonic()
    assert opened.exit_code() == -signal.SIGKILL
    (draft,) = drafts()
    kept = draft["fields"]["note"]
    assert (LETTERS * len(typed)).startswith(kept)
    assert len(seen[-1]) <= len(kept) <= len(typed)
    lost = typed[len(kept) :]
    print(f"{len(typed)} typed, {len(kept)} kept: {killed - lost[0] if lost else 0:.2f} s lost")


@pytest.mark.parametrize(
    ("number", "code"),
    [(signal.SIGTERM, 143), pytest.param(signal.SIGHUP, 129, marks=pytest.mark.depth)],
)
def test_a_signal_keeps_every_letter_restores_the_terminal_and_the_next_start_goes_on(
    terminal: Open, shop: Path, drafts: Callable[[], list[dict[str, Any]]], number: int, code: int
) -> None:
    opened = _at_the_note(terminal, shop)
    opened.press("Ask Tom")
    opened.kill(number)
    assert opened.exit_code() == code
    assert b"\x1b[?1049l" in opened.written
    assert b"\x1b[?25h" in opened.written
    (draft,) = drafts()
    assert draft["fields"]["note"] == "Ask Tom"
    assert (shop / "taps.toml").read_text() == SHOP
    again = terminal("--library", str(shop))
    again.wait_for("1 unsaved")
    again.press("f8", "unsaved", "enter")
    again.wait_for("Chamfer relief: ")
    again.press("enter")
    again.wait_for("Ask Tom")
    again.press("ctrl+r")
    again.wait_for("Before saving")
    again.press("enter")
    again.wait_for("Saved.")
    assert 'note = "Ask Tom"' in (shop / "taps.toml").read_text()
    assert drafts() == []


@pytest.mark.depth
def test_a_cut_line_keeps_what_was_typed(
    terminal: Open, shop: Path, drafts: Callable[[], list[dict[str, Any]]]
) -> None:
    opened = _at_the_note(terminal, shop)
    opened.press("Ask Tom")
    os.close(opened.file)
    end = time.monotonic() + 90
    while time.monotonic() < end:
        pid, status = os.waitpid(opened.pid, os.WNOHANG)
        if pid:
            opened.ended = os.waitstatus_to_exitcode(status)
            break
        time.sleep(0.05)
    assert opened.ended == 129
    (draft,) = drafts()
    assert draft["fields"]["note"] == "Ask Tom"


EDITOR = """\
import pathlib, sys
log, file = pathlib.Path(sys.argv[1]), pathlib.Path(sys.argv[-1])
log.write_text(" ".join(sys.argv[2:-1]) + "\\n" + file.read_text())
file.write_text(file.read_text(){change})
"""


def _editor(folder: Path, change: str) -> tuple[str, Path]:
    """An editor that changes the file by itself: the words that start it, and where it tells what it was given."""
    script, log = folder / "editor.py", folder / "editor.log"
    script.write_text(EDITOR.format(change=change))
    return f"{sys.executable} {script} {log}", log


@pytest.mark.depth
def test_the_editor_opens_the_file_at_the_entry_and_the_book_is_read_again(
    terminal: Open, shop: Path, tmp_path: Path
) -> None:
    editor, log = _editor(tmp_path, ".replace('for zamak', 'for zinc')")
    opened = _at_the_changes(terminal, shop, EDITOR=editor)
    opened.press("editor taps")
    opened.wait_for("Opens taps.toml at line 3")
    opened.press("enter")
    opened.wait_for("Tap for zinc")
    assert log.read_text().splitlines()[0] == "+3"
    assert "Tap for zinc" in (shop / "taps.toml").read_text()


@pytest.mark.depth
def test_notes_are_written_in_the_editor_and_looked_at_before_they_are_saved(
    terminal: Open, shop: Path, tmp_path: Path
) -> None:
    editor, log = _editor(tmp_path, " + 'First line.\\nSecond line.\\n'")
    opened = _at_the_changes(terminal, shop, VISUAL=editor, EDITOR="false")
    opened.press("notes")
    opened.press("enter")
    opened.wait_for("Before saving")
    assert (shop / "taps.toml").read_text() == SHOP
    opened.wait_for("+ Second line.")
    opened.press("enter")
    opened.wait_for("Saved.")
    assert log.read_text().splitlines()[0] == "+1"
    assert tomllib.loads((shop / "taps.toml").read_text())["entry"][0]["notes"].split("\n")[:3] == [
        "",
        "First line.",
        "Second line.",
    ]


@pytest.mark.depth
def test_notes_that_were_not_saved_are_there_when_the_editor_is_opened_again(
    terminal: Open, shop: Path, tmp_path: Path
) -> None:
    editor, log = _editor(tmp_path, " + 'More.\\n'")
    opened = _at_the_changes(terminal, shop, EDITOR=editor)
    opened.press("notes")
    opened.press("enter")
    opened.wait_for("Before saving")
    opened.kill(signal.SIGKILL)
    opened.exit_code()
    again = _at_the_changes(terminal, shop, EDITOR=editor)
    again.press("notes")
    again.press("enter")
    again.wait_for("Before saving")
    assert "More." in log.read_text()


@pytest.mark.depth
def test_an_editor_that_cannot_be_started_is_told_and_the_screen_comes_back(
    terminal: Open, shop: Path
) -> None:
    opened = _at_the_changes(terminal, shop, EDITOR="no-such-editor")
    opened.press("editor taps")
    opened.press("enter")
    opened.wait_for("no-such-editor could not be started")
