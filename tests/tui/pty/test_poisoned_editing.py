"""Changing a poisoned book, with a poisoned history and poisoned drafts: nothing of it steers the terminal."""

from __future__ import annotations

import re
import signal
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Open = Callable[..., Any]

STEERING = re.compile(rb"\x1b\][0-9]|\x1bP|\x1b_|\x1b\^|\x9b|\x07|\x1b\[31m|\xe2\x80\xae|\xe2\x80\x8b")
"""Titles, clipboard, device control, red, backwards text, text without a width: all of it stands in the data."""

POINTER = b"\x1b]22;default\x07"
"""The shape of the mouse pointer, which Textual itself sets."""

ODD = "\x1b]52;c;aGk=\x07\x1b[31m\x9b2J\u202e[/bold] [red]"

BOOK = r"""
schema = 1
[[entry]]
id = "poisoned"
family = "tap"
title = "Tap \u001b]0;owned\u0007\u001b[31m\u202e [/bold] [red]x"
work_material = "brass \u001b]52;c;aGk=\u0007"
synonyms = ["plug \u001bP1;2q", "odd\u200b"]
cautions = ["eyes\u0007", "dust"]
chamfer_relief_angle = { usual = "4 deg", source = "shop", note = "\u001bP1;2q [b \u202e" }
rake_angle = { usual = "5 \u001b[31m deg", source = "hand\u0007book", place = "table \u009b3" }
notes = "A \u001b[31mred\u001b[0m [bold]note\u009b5n."
[[entry]]
id = "other"
family = "tap"
title = "Other poisoned \u0007 tap"
"""


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A poisoned book with a poisoned history, in a file with a poisoned name."""
    folder = tmp_path / "shop"
    folder.mkdir()
    (folder / "own\x1b]0;x\x07\u202e.toml").write_text(BOOK, encoding="utf-8")
    monkeypatch.setenv("GIT_CONFIG_NOSYSTEM", "1")
    for name in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{name}_NAME", f"Eve {ODD}")
        monkeypatch.setenv(f"GIT_{name}_EMAIL", "eve@example.org")
    for words in (["init", "-q"], ["add", "-A"], ["commit", "-q", "-m", f"Begin {ODD}"]):
        subprocess.run(["git", *words], cwd=folder, check=True, capture_output=True)
    return folder


CHOICES = (
    "chamfer relief",
    "rake angle",
    "title",
    "work material",
    "other words",
    "cautions",
    "copy",
    "another id",
)


def sanitize(opened: Any) -> None:
    found = STEERING.search(opened.written.replace(POINTER, b""))
    assert not found, opened.written[max(found.start() - 60, 0) : found.end() + 20]


@pytest.mark.depth
def test_every_screen_for_changing_it_shows_it_harmlessly(terminal: Open, shop: Path) -> None:
    opened = terminal("--library", str(shop))
    opened.wait_for(" of ")
    opened.press("poisoned plug")
    opened.press("enter")
    opened.wait_for("Chamfer relief")
    opened.press("f6")
    for choice in CHOICES:
        opened.press("ctrl+u", choice)
        opened.press("enter")
        for key in ("end", "x", "backspace", "down", "down", "ctrl+r"):
            opened.press(key)
        while not any(line.startswith("Find:") for line in opened.screen()):
            opened.press("f9")
    opened.press("ctrl+u", "remove")
    opened.press("enter")
    opened.wait_for("Before saving")
    for key in ("pagedown", "pagedown", "f9"):
        opened.press(key)
    opened.press("ctrl+u", "history")
    opened.press("enter")
    opened.wait_for("Eve")
    for key in ("pagedown", "f9", "f9", "f9", "f6"):
        opened.press(key)
    opened.wait_for("Record now")
    opened.press("record now")
    opened.press("enter")
    for key in ("f9", "f8", "problems", "enter", "down", "down", "end", "enter", "f9"):
        opened.press(key)
    for key in ("ctrl+u", "poisoned", "ctrl+t", "ctrl+t", "ctrl+k", "f8", "sources", "enter", "pagedown"):
        opened.press(key)
    opened.wait_for("Side by side")
    sanitize(opened)


@pytest.mark.depth
def test_two_people_and_drafts_show_it_harmlessly(terminal: Open, shop: Path) -> None:
    (file,) = shop.glob("*.toml")
    opened = terminal("--library", str(shop))
    opened.wait_for(" of ")
    opened.press("poisoned plug")
    opened.press("enter")
    opened.wait_for("Chamfer relief")
    opened.press("f6")
    opened.press("ctrl+u", "notes of nothing")
    opened.press("ctrl+u", "title")
    opened.press("enter")
    opened.wait_for("As it is shown")
    opened.press(" y")
    file.write_text(
        file.read_text(encoding="utf-8").replace(" [/bold] [red]x", " theirs \\u001b[31m"), encoding="utf-8"
    )
    opened.press("ctrl+r")
    opened.wait_for("Both of you changed this")
    opened.kill(signal.SIGTERM)
    assert opened.exit_code() == 143
    sanitize(opened)
    again = terminal("--library", str(shop))
    again.wait_for("1 unsaved")
    again.press("f8", "unsaved", "enter")
    again.wait_for("Title: Tap")
    again.press("ctrl+k")
    again.wait_for("In the book now")
    again.press("enter")
    again.wait_for("Change title")
    sanitize(again)
