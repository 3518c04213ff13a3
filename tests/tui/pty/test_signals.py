"""However the program ends, the terminal is as it was, and the exit code says how it ended."""

from __future__ import annotations

import os
import signal
import termios
from collections.abc import Callable
from typing import Any

import pytest

Open = Callable[..., Any]
LEFT_ALTERNATE_SCREEN = b"\x1b[?1049l"
CURSOR_SHOWN = b"\x1b[?25h"


@pytest.mark.parametrize(
    ("number", "code"),
    [
        (signal.SIGTERM, 143),
        (signal.SIGINT, 130),
        pytest.param(signal.SIGHUP, 129, marks=pytest.mark.depth),  # as a cut line sends it
    ],
)
def test_a_signal_restores_the_terminal_and_tells_by_the_exit_code(
    terminal: Open, number: int, code: int
) -> None:
    opened = terminal()
    before = termios.tcgetattr(opened.file)
    opened.wait_for(" of ")
    opened.kill(number)
    assert opened.exit_code() == code
    assert LEFT_ALTERNATE_SCREEN in opened.written
    assert CURSOR_SHOWN in opened.written
    assert termios.tcgetattr(opened.file)[3] & termios.ECHO == before[3] & termios.ECHO


def test_a_cut_line_ends_the_program(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    os.close(opened.file)
    pid, status = _waited(opened.pid)
    assert pid == opened.pid
    opened.ended = os.waitstatus_to_exitcode(status)
    assert opened.ended == 129


def _waited(pid: int) -> tuple[int, int]:
    import time

    for _ in range(1800):
        found, status = os.waitpid(pid, os.WNOHANG)
        if found:
            return found, status
        time.sleep(0.05)
    raise AssertionError("the program did not end")


def test_leaving_by_key_ends_with_nothing_wrong(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    opened.press("f9")
    assert opened.exit_code() == 0
    assert LEFT_ALTERNATE_SCREEN in opened.written


@pytest.mark.depth
def test_going_to_the_shell_and_back_paints_everything_again(terminal: Open) -> None:
    opened = terminal()
    opened.wait_for(" of ")
    opened.press("tap")
    shown = opened.wait_for("Find: tap")
    opened.send("ctrl+z")
    opened.wait_for_bytes(LEFT_ALTERNATE_SCREEN)
    opened.wait_until_stopped()
    opened.written = b""
    opened.kill(signal.SIGCONT)
    assert opened.wait_for("Find: tap") == shown


def test_a_terminal_that_cannot_move_its_cursor_is_told_the_plain_commands(terminal: Open) -> None:
    opened = terminal(TERM="dumb")
    assert opened.exit_code() == 2
    assert b"heelclear list" in opened.written
    assert b"\x1b" not in opened.written
