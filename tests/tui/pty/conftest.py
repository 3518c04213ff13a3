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


LONGEST = 90.0
"""Seconds after which a state is not waited for any more; only a failure takes so long."""

ASLEEP = 0.06
"""Seconds of sleep without a single waking after which a program waits for a key: its longest clock between a key and
the picture of it ticks sixty times a second. A busy machine cannot hide a waking, for what waits for it is no sleeper."""


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

    @property
    def written(self) -> bytes:
        """All that was written since the start, or since it was set to nothing."""
        return bytes(self._written)

    @written.setter
    def written(self, data: bytes) -> None:
        self._written = bytearray(data)
        self._blank()

    def _blank(self) -> None:
        self._screen = pyte.Screen(self.columns, self.rows)
        self._stream = pyte.ByteStream(self._screen)
        self._fed = 0

    def resize(self, columns: int, rows: int) -> None:
        self.columns, self.rows = columns, rows
        self._blank()
        fcntl.ioctl(self.file, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))

    def read(self, wait: float = 0.0) -> bool:
        """Take what is written by now, or within a time; returns whether there was anything."""
        try:
            ready, _, _ = select.select([self.file], [], [], wait)
            data = os.read(self.file, 65536) if ready else b""
        except OSError:  # The program has ended.
            time.sleep(wait)
            return False
        self._written += data
        return bool(data)

    def rest(self, before: object = None, least: float = ASLEEP) -> bytes:
        """Everything written until the program, and all that it has started, sleeps and waits for a key.

        Args:
            before: what it had done when a key was sent; until it has done more, it has not seen the key.
            least: seconds that the sleep must last.
        """
        start = len(self._written)
        last, since = wakings(self.pid), time.monotonic()
        end = since + LONGEST
        while (now := time.monotonic()) < end and last is not None:
            if self.read(0.01) or (done := wakings(self.pid)) != last or is_awake(done) or done == before:
                last, since = wakings(self.pid), time.monotonic()
            elif now - since >= least:
                break
        while self.read():
            pass
        return bytes(self._written[start:])

    def wait_for(self, words: str) -> list[str]:
        """The screen as soon as it shows some words and the program rests; fails when it never does."""
        looked_at = -1
        end = time.monotonic() + LONGEST
        while time.monotonic() < end:
            while self.read(0.02):
                pass
            is_new = looked_at != len(self._written)
            looked_at = len(self._written)
            if is_new and any(words in line for line in self.screen()):
                self.rest()
                shown = self.screen()
                if any(words in line for line in shown):
                    return shown
        raise AssertionError(f"{words!r} was never shown:\n" + "\n".join(self.screen()))

    def wait_for_bytes(self, data: bytes) -> None:
        """Read until something was written; a program that stops or ends may sleep before."""
        end = time.monotonic() + LONGEST
        while data not in self._written:
            assert time.monotonic() < end, f"{data!r} was never written: {self.written!r}"
            self.read(0.02)

    def wait_until_stopped(self) -> None:
        """Wait until the program has stopped itself for the shell."""
        end = time.monotonic() + LONGEST
        while "State:\tT" not in Path(f"/proc/{self.pid}/status").read_text():
            assert time.monotonic() < end, "the program did not stop"
            self.read(0.02)

    def send(self, *keys: str) -> None:
        """Send keys, and wait for nothing."""
        os.write(self.file, "".join(KEYS.get(key, key) for key in keys).encode())

    def press(self, *keys: str) -> bytes:
        """Send keys, and return what was written in answer to them."""
        before = wakings(self.pid)
        self.send(*keys)
        return self.rest(before)

    def kill(self, number: int) -> None:
        os.kill(self.pid, number)

    def exit_code(self) -> int:
        """The exit code once the program ended; fails when it does not."""
        end = time.monotonic() + LONGEST
        while self.ended is None and time.monotonic() < end:
            while self.read(0.02):
                pass
            pid, status = os.waitpid(self.pid, os.WNOHANG)
            if pid:
                self.ended = os.waitstatus_to_exitcode(status)
                while self.read():
                    pass
        assert self.ended is not None, "the program did not end"
        return self.ended

    def screen(self) -> list[str]:
        """What a terminal of this size shows after all that was written."""
        return [line.rstrip() for line in self.emulated().display]

    def emulated(self) -> pyte.Screen:
        """The picture after all that was written."""
        self._stream.feed(bytes(self._written[self._fed :]))
        self._fed = len(self._written)
        return self._screen

    def close(self) -> None:
        if self.ended is None:
            with contextlib.suppress(ProcessLookupError, ChildProcessError):
                os.kill(self.pid, signal.SIGKILL)
                os.waitpid(self.pid, 0)
        with contextlib.suppress(OSError):
            os.close(self.file)


def wakings(pid: int) -> tuple[str, ...] | None:
    """How often a program's main thread, and all that it has started, has been woken; nothing after its end.

    The threads beside it are not counted, for one of them looks for keys ten times a second; one that runs, or waits
    for a processor or a disk, is named.
    """
    found: list[str] = []
    try:
        for task in sorted(Path(f"/proc/{pid}/task").iterdir()):
            with contextlib.suppress(OSError):  # A thread that ended meanwhile.
                text = (task / "status").read_text()
                if task.name == str(pid):
                    found += [line for line in text.splitlines() if "ctxt" in line]
                found += [f"{AWAKE} {task.name}"] * ("\tR" in text or "\tD" in text)
                for child in (task / "children").read_text().split():
                    found += wakings(int(child)) or ()
    except OSError:
        return None
    return tuple(found)


AWAKE = "awake"


def is_awake(done: tuple[str, ...] | None) -> bool:
    """Whether one of the threads runs or is about to."""
    return done is not None and any(line.startswith(AWAKE) for line in done)


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
