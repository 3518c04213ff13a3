"""Random keys on a book of hostile texts: the program goes on, and the terminal always shows what a full repaint would."""

from __future__ import annotations

import os
import random
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Open = Callable[..., Any]

SEEDS = range(int(os.environ.get("HEELCLEAR_SEEDS", "2")))
"""More of them by the variable; each is a run of its own."""

SIZES = ((80, 24), (132, 40))
KEYS = 120
LOOK = 4
LEFT = b"\x1b[?1049l"
"""Gives the terminal back to the shell."""

LONG = 0.4
"""Seconds of sleep after which nothing that waits for the keys to rest is still to come."""

"""Keys between two looks at the picture."""

HOSTILE = (
    "\u5200\u5177 wide \uff11\uff12",
    "e\u0301 a\u0308 combined \u0301\u0301\u0301",
    "family \U0001f468\u200d\U0001f469\u200d\U0001f467 flag \U0001f1f3\U0001f1f4 thumb \U0001f44d\U0001f3fd heart \u2764\ufe0f",
    "\u05d0\u05d1\u05d2 right to left \u202egnorw\u202c",
    "tab\tand\x0bothers\x0c\x85\u2028\u2029",
    "soft\u00adhyphen no\u200bwidth joined\u2060word \ufeff",
    "\u1100\u1161\u11a8 \u0e01\u0e33 \u0915\u094d\u0937 clusters",
    "control \x1b[31m \x1b]0;x\x07 \x9b2J",
    "box \u2500\u2502 blocks \u2588\u28ff ambiguous \u00b1\u00d7\u2026",
)

FUNCTION_KEYS = ("f2", "f3", "f4", "f5", "f6", "f8", "f9")
USUAL = (
    "down",
    "up",
    "right",
    "left",
    "pageup",
    "pagedown",
    "enter",
    "tab",
    "end",
    "ctrl+k",
    "ctrl+t",
    "ctrl+u",
    "?",
)
TYPED = ("1", "2", ".", " ", "a", "t", "\u5200", "\x7f", "x")


def quoted(text: str) -> str:
    return '"' + "".join(c if c.isprintable() and c not in '"\\' else f"\\U{ord(c):08x}" for c in text) + '"'


@pytest.fixture
def shop(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)  # Some of the keys write files where the program was started.
    folder = tmp_path / "shop"
    folder.mkdir()
    entries = [
        f"""
[[entry]]
id = "hostile-{number}"
family = "tap"
title = {quoted(f"{text} tap {number}")}
work_material = "bronze"
synonyms = [{quoted(text)}]
notes = {quoted(text * 4)}
chamfer_relief_angle = {{ low = "4 deg", usual = "6 deg", source = "shop", note = {quoted(text * 3)} }}
rake_angle = {{ usual = "5 deg", source = "shop", place = {quoted(text)} }}
"""
        for number, text in enumerate(HOSTILE * 4)
    ]
    (folder / "own.toml").write_text("schema = 1\n" + "".join(entries), encoding="utf-8")
    return folder


def picture(opened: Any) -> list[str]:
    screen = opened.emulated()
    return [
        "".join(screen.buffer[y][x].data + "r" * screen.buffer[y][x].reverse for x in range(screen.columns))
        for y in range(screen.lines)
    ]


@pytest.mark.depth
@pytest.mark.parametrize("seed", SEEDS)
def test_after_any_keys_the_terminal_shows_what_a_full_repaint_shows(
    terminal: Open, shop: Path, seed: int
) -> None:
    chosen = random.Random(seed)
    columns, rows = SIZES[seed % len(SIZES)]
    opened = terminal("--library", str(shop), columns=columns, rows=rows)
    opened.wait_for(" of ")
    pressed: list[str] = []
    for step in range(KEYS):
        key = chosen.choice(chosen.choice((FUNCTION_KEYS, USUAL, USUAL, TYPED)))
        pressed.append(key)
        opened.press(key)
        if LEFT in opened.written:
            # Back on the first screen leaves the program.
            assert opened.exit_code() == 0
            opened = terminal("--library", str(shop), columns=columns, rows=rows)
            opened.wait_for(" of ")
        if step % LOOK == 0:
            opened.rest(least=LONG)
            before = picture(opened)
            opened.press("ctrl+l")
            assert picture(opened) == before, pressed
    assert opened.ended is None
    assert "Traceback" not in "\n".join(opened.screen())
