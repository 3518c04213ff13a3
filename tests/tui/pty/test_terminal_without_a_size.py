"""A terminal that does not say how large it is, as a serial line or a bare pseudo-terminal, is painted once and left."""

from __future__ import annotations

import os
import pty
import signal
import struct
import sys
import termios
from fcntl import ioctl
from pathlib import Path

import pytest

from tui.terminal import give_size

TOO_MUCH = 500_000
"""Bytes that no start and end of the program come near; one that paints without end is there at once."""


def size_of(descriptor: int) -> tuple[int, int]:
    rows, columns, _, _ = struct.unpack("HHHH", ioctl(descriptor, termios.TIOCGWINSZ, bytes(8)))
    return columns, rows


@pytest.mark.parametrize(
    ("said", "taken"),
    [((0, 0), (80, 24)), ((0, 40), (80, 40)), ((132, 0), (132, 24)), ((100, 30), (100, 30))],
)
def test_only_what_is_not_said_gets_the_usual_size(said: tuple[int, int], taken: tuple[int, int]) -> None:
    ours, theirs = os.openpty()
    try:
        ioctl(ours, termios.TIOCSWINSZ, struct.pack("HHHH", said[1], said[0], 0, 0))
        give_size(theirs)
        assert size_of(theirs) == taken
    finally:
        os.close(ours)
        os.close(theirs)


def test_what_is_no_terminal_is_left_alone() -> None:
    reader, writer = os.pipe()
    give_size(writer)
    os.close(reader)
    os.close(writer)


def test_the_screens_come_to_rest_there_and_a_key_ends_them(an_empty_home: Path) -> None:
    program, file = pty.fork()
    if program == 0:
        os.execve(sys.executable, [sys.executable, "-m", "tui"], {**os.environ, "TERM": "xterm-256color"})
    seen = b""
    while b"Heelclear" not in seen:
        seen += os.read(file, 65536)
    os.write(file, b"\x11")
    try:
        while len(seen) < TOO_MUCH:
            seen += os.read(file, 65536)
    except OSError:  # it has closed the terminal
        pass
    finally:
        if len(seen) >= TOO_MUCH:
            os.kill(program, signal.SIGKILL)
        _, status = os.waitpid(program, 0)
        os.close(file)
    assert os.waitstatus_to_exitcode(status) == 0
