"""The program in a pseudo-terminal: what it writes, byte by byte, and what a terminal would show."""

from __future__ import annotations

import contextlib
import fcntl
import os
import pty
import select
import shutil
import signal
import struct
import sys
import termios
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pyte
import pytest

from library.book import opening
from library.book.folders import shop_folder, state_folder
from tui.first_steps import first_steps

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
    "ctrl+k": "\x0b",
    "ctrl+l": "\x0c",
    "ctrl+r": "\x12",
    "ctrl+t": "\x14",
    "ctrl+u": "\x15",
    "ctrl+z": "\x1a",
}


HIDDEN = {"LC_ALL", "LC_CTYPE", "COLUMNS", "LINES", "NO_COLOR", "TMUX", "HEELCLEAR_LIBRARY"}
"""Variables of the developer's own terminal that would speak for the one under test."""


LONGEST = 90.0
"""Seconds after which a state is not waited for any more; only a failure takes so long."""

LONG = 0.3
"""Seconds of sleep after which nothing that was begun behind the screen is still to come."""

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
            if self.read(0.02) or (done := wakings(self.pid)) != last or is_awake(done) or done == before:
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


@pytest.fixture(scope="session")
def kept_reads(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """What an earlier start has kept of the shipped book; to read all of it anew is most of the work of a start."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        opening.open_book()
        return _kept_of(None)


def _kept_of(shop: Path | None) -> Path:
    folder: Path = vars(opening)["_cache"](shop)
    return folder


def read_before(kept: Path, words: tuple[str, ...]) -> None:
    """Let the program find its shipped book read already; of a shop's own files nothing is known yet."""
    shop, _ = shop_folder(Path(words[words.index("--library") + 1]) if "--library" in words else None)
    folder = _kept_of(shop)
    if not folder.exists():
        folder.mkdir(parents=True)
        for name in ("reads",) if shop.exists() else ("reads", "index"):
            shutil.copy(kept / name, folder)


def _variables() -> dict[str, str]:
    own = {name: value for name, value in os.environ.items() if name not in HIDDEN}
    return own | {"TERM": "xterm-256color", "COLORTERM": "truecolor", "LANG": "C.UTF-8"}


@pytest.fixture(scope="session")
def left_running(tmp_path_factory: pytest.TempPathFactory, kept_reads: Path) -> Iterator[Terminal]:
    """One program that goes from test to test."""
    home = tmp_path_factory.mktemp("home")
    with pytest.MonkeyPatch.context() as patch:
        for name in ("HOME", "XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "XDG_CACHE_HOME"):
            patch.setenv(name, str(home / name))
        patch.delenv("HEELCLEAR_LIBRARY", raising=False)
        first_steps(state_folder()).put_away()
        read_before(kept_reads, ())
        opened = Terminal([sys.executable, "-m", "tui"], _variables())
    opened.wait_for(" of ")
    yield opened
    opened.close()


@pytest.fixture
def at_the_book(left_running: Terminal) -> Terminal:
    """The program at the whole list of the book, 80 by 24; for tests that go no further and type nothing but a search."""
    left_running.resize(80, 24)
    left_running.send("ctrl+u", "ctrl+l")
    left_running.wait_for(" of ")
    left_running.rest(least=LONG)
    return left_running


@pytest.fixture
def terminal(an_empty_home: Path, kept_reads: Path) -> Iterator[Open]:
    """Opens the program, not for the first time, with arguments and variables; or some code in its place."""
    opened: list[Terminal] = []
    first_steps(state_folder()).put_away()

    def start(
        *words: str,
        columns: int = 80,
        rows: int = 24,
        code: str = "",
        afresh: bool = False,
        **variables: str,
    ) -> Terminal:
        if not afresh:
            read_before(kept_reads, words)
        command = [sys.executable, "-c", code] if code else [sys.executable, "-m", "tui", *words]
        made = Terminal(command, _variables() | variables, columns, rows)
        opened.append(made)
        return made

    yield start
    for one in opened:
        one.close()
