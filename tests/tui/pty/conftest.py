"""The program in a pseudo-terminal: what it writes, byte by byte, and what a terminal would show."""

from __future__ import annotations

import contextlib
import fcntl
import os
import pty
import select
import signal
import struct
import sys
import termios
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pyte
import pytest

from library.book.folders import state_folder
from tui.first_start import remember

KEYS = {
    "up": "\x1b[A",
    "down": "\x1b[B",
    "right": "\x1b[C",
    "left": "\x1b[D",
    "pageup": "\x1b[5~",
    "pagedown": "\x1b[6~",
    "enter": "\r",
    "tab": "\t",
    "end": "\x1b[F",
    "f2": "\x1bOQ",
    "f3": "\x1bOR",
    "f4": "\x1bOS",
    "f5": "\x1b[15~",
    "f6": "\x1b[17~",
    "f7": "\x1b[18~",
    "f8": "\x1b[19~",
    "f9": "\x1b[20~",
    "ctrl+g": "\x07",
    "ctrl+l": "\x0c",
    "ctrl+r": "\x12",
    "ctrl+u": "\x15",
    "ctrl+z": "\x1a",
}


HIDDEN = {"LC_ALL", "LC_CTYPE", "COLUMNS", "LINES"}
"""Variables of the developer's own terminal that would speak for the one under test."""


class Terminal:
    """A program in a pseudo-terminal of a size."""

    def __init__(
        self, words: list[str], environment: dict[str, str], columns: int = 80, rows: int = 24
    ) -> None:
        self.columns, self.rows = columns, rows
        self.written = b""
        self.ended: int | None = None
        self.pid, self.file = pty.fork()
        if self.pid == 0:
            os.execvpe(words[0], words, environment)
        self.resize(columns, rows)

    def resize(self, columns: int, rows: int) -> None:
        self.columns, self.rows = columns, rows
        fcntl.ioctl(self.file, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))

    def read(self, quiet: float = 0.25, longest: float = 20.0) -> bytes:
        """Everything written until nothing came for ``quiet`` seconds."""
        start = len(self.written)
        end = time.monotonic() + longest
        while time.monotonic() < end:
            ready, _, _ = select.select([self.file], [], [], quiet)
            if not ready:
                break
            try:
                data = os.read(self.file, 65536)
            except OSError:
                break
            if not data:
                break
            self.written += data
        return self.written[start:]

    def wait_for(self, words: str, longest: float = 20.0) -> list[str]:
        """The screen as soon as it shows some words; fails when it never does."""
        end = time.monotonic() + longest
        while time.monotonic() < end:
            self.read(0.1, 1.0)
            shown = self.screen()
            if any(words in line for line in shown):
                return shown
        raise AssertionError(f"{words!r} was never shown:\n" + "\n".join(self.screen()))

    def press(self, *keys: str) -> bytes:
        """Send keys, and return what was written in answer to them."""
        os.write(self.file, "".join(KEYS.get(key, key) for key in keys).encode())
        return self.read()

    def kill(self, number: int) -> None:
        os.kill(self.pid, number)

    def exit_code(self, longest: float = 10.0) -> int:
        """The exit code once the program ended; fails when it does not."""
        end = time.monotonic() + longest
        while self.ended is None and time.monotonic() < end:
            self.read(0.05, 0.2)
            pid, status = os.waitpid(self.pid, os.WNOHANG)
            if pid:
                self.ended = os.waitstatus_to_exitcode(status)
        assert self.ended is not None, "the program did not end"
        return self.ended

    def screen(self) -> list[str]:
        """What a terminal of this size shows after all that was written."""
        return [line.rstrip() for line in self.emulated().display]

    def emulated(self) -> pyte.Screen:
        screen = pyte.Screen(self.columns, self.rows)
        pyte.ByteStream(screen).feed(self.written)
        return screen

    def close(self) -> None:
        if self.ended is None:
            with contextlib.suppress(ProcessLookupError, ChildProcessError):
                os.kill(self.pid, signal.SIGKILL)
                os.waitpid(self.pid, 0)
        with contextlib.suppress(OSError):
            os.close(self.file)


Open = Callable[..., Terminal]


@pytest.fixture
def terminal(an_empty_home: Path) -> Iterator[Open]:
    """Opens the program, not for the first time, with arguments and variables; or some code in its place."""
    opened: list[Terminal] = []
    remember(state_folder())

    def start(*words: str, columns: int = 80, rows: int = 24, code: str = "", **variables: str) -> Terminal:
        environment = {name: value for name, value in os.environ.items() if name not in HIDDEN}
        environment |= {"TERM": "xterm-256color", "COLORTERM": "truecolor", "LANG": "C.UTF-8"} | variables
        command = [sys.executable, "-c", code] if code else [sys.executable, "-m", "tui", *words]
        made = Terminal(command, environment, columns, rows)
        opened.append(made)
        return made

    yield start
    for one in opened:
        one.close()
