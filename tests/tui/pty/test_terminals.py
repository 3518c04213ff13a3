"""Every terminal: without colour, without Unicode, without a terminal at all, and with a hostile book."""

from __future__ import annotations

import re
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

Open = Callable[..., Any]

COLOUR = re.compile(rb"\x1b\[(?:[0-9]*;)*(?:3[0-8]|4[0-8]|9[0-7]|10[0-7])(?:;[0-9]*)*m")
STEERING = re.compile(rb"\x1b\][0-9]|\x1bP|\x1b_|\x1b\^|\x9b|\x07")
"""Titles, clipboard, device control, application commands: nothing that the program itself ever sends."""

POINTER = b"\x1b]22;default\x07"
"""The shape of the mouse pointer, which Textual itself sets."""


def walk(opened: Any) -> None:
    opened.wait_for(" of ")
    for key in ("tap", "enter", "f2", "12", "?", "f9", "f9", "f9"):
        opened.press(key)
    see_a_verdict(opened)
    opened.press("f9", "f9")


def see_a_verdict(opened: Any) -> None:
    """A wheel of 200 mm at 5,000 turns runs at 52 m/s, over a rating of 30."""
    opened.press("f2", "f2", "speed", "enter")
    opened.press("200", "down", "5000", "down", "down", "30 m/s")
    opened.wait_for("STOP")


@pytest.mark.depth
def test_colour_is_used_for_a_verdict_where_nothing_speaks_against_it(at_the_book: Any) -> None:
    see_a_verdict(at_the_book)
    assert COLOUR.search(at_the_book.press("ctrl+l"))


@pytest.mark.depth
@pytest.mark.parametrize("paint", ["cells", pytest.param("lines", marks=pytest.mark.depth)])
def test_no_colour_code_at_all_is_sent_where_none_is_wanted(terminal: Open, paint: str) -> None:
    opened = terminal(NO_COLOR="1", HEELCLEAR_PAINT=paint)
    walk(opened)
    assert not COLOUR.search(opened.written)


@pytest.mark.parametrize(
    "variables",
    [
        {"LANG": "C"},
        pytest.param({"LC_ALL": "POSIX"}, marks=pytest.mark.depth),
        pytest.param({"LANG": "en_US.ISO-8859-1"}, marks=pytest.mark.depth),
    ],
)
def test_only_ascii_is_sent_where_the_locale_is_not_utf_8(terminal: Open, variables: dict[str, str]) -> None:
    opened = terminal(**variables)
    walk(opened)
    assert opened.written.isascii()
    assert any("-----" in line for line in opened.screen())


@pytest.mark.depth
def test_only_ascii_is_sent_where_the_person_asks_for_it(terminal: Open) -> None:
    opened = terminal("--ascii")
    walk(opened)
    assert opened.written.isascii()


@pytest.mark.depth
def test_the_mouse_is_left_to_the_terminal_unless_asked_for(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    assert b"\x1b[?1000h" not in opened.written
    with_mouse = terminal("--mouse")
    with_mouse.wait_for(" of ")
    assert b"\x1b[?1000h" in with_mouse.written


def test_without_a_terminal_a_sentence_names_the_plain_commands(an_empty_home: Path) -> None:
    done = subprocess.run(
        [sys.executable, "-m", "tui"], capture_output=True, text=True, check=False, stdin=subprocess.DEVNULL
    )
    assert done.returncode == 2
    assert "heelclear list" in done.stderr
    assert done.stdout == ""


POISON = r"""
schema = 1
[[entry]]
id = "poisoned"
family = "tap"
title = "Tap \u001b]0;owned\u0007\u001b[2J\u202e [/bold] [red]x"
work_material = "brass \u001b]52;c;aGk=\u0007"
notes = "A \u001b[31mred\u001b[0m [bold]note\u009b5n."
cautions = ["eyes"]
chamfer_relief_angle = { usual = "4 deg", source = "shop", note = "\u001bP1;2q [b" }
"""


@pytest.mark.depth
def test_nothing_of_a_poisoned_book_steers_the_terminal(terminal: Open, tmp_path: Path) -> None:
    (tmp_path / "own.toml").write_text(POISON, encoding="utf-8")
    opened = terminal("--library", str(tmp_path))
    opened.wait_for(" of ")
    opened.press("poisoned")
    for key in ("enter", "pagedown", "f2", "12", "?", "f9", "f2", "f9", "f9", "f9", "f3", "f9"):
        opened.press(key)
    assert not STEERING.search(opened.written.replace(POINTER, b""))
    assert b"\x1b[31mred" not in opened.written
    assert "\u202e".encode() not in opened.written
    opened.press("ctrl+u", "poisoned")
    assert any("[/bold] [red]x" in line for line in opened.screen())


@pytest.mark.depth
def test_escape_or_alt_with_a_digit_and_the_keys_of_other_modes_arrive(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    for sent in ("\x1b8", "\x1b[[C", "\x1bOU"):  # Alt+8; F3 of the console of Linux; F6 of a VT100+.
        opened.press(sent)
        opened.wait_for(
            {"\x1b8": "What can be done", "\x1b[[C": "Job cards", "\x1bOU": "The shop's book"}[sent]
        )
        opened.press("f9")
        opened.wait_for("Heelclear: the book")
    opened.send("\x1b")
    opened.send("8")
    opened.wait_for("What can be done")
    assert not any("Find: 8" in line for line in opened.screen())
