"""Calls of the system that change a disk, each of them stopped in turn: the program is killed there, or the disk is full.

What the program calls is replaced in the process that asks for it; a file that is opened by ``open`` counts too. A
write is stopped in its middle, so that half of the text is there.
"""

from __future__ import annotations

import builtins
import errno
import io
import os
import signal
import subprocess
from collections.abc import Callable
from pathlib import Path
from typing import Any

STEPS = ("open", "write", "fsync", "replace", "rename", "mkdir", "unlink", "remove", "rmdir", "link")
"""The calls that are counted; ``open`` where it may make or cut a file."""

NEED_ROOM = frozenset({"open", "write", "fsync", "replace", "rename", "mkdir", "link"})
"""The calls that a full disk may refuse; what gives room is never refused for want of it."""

_CHANGES = os.O_CREAT | os.O_TRUNC


class Stopping:
    """Counts the calls, and stops at one.

    Args:
        at: the number of the call, from 1; 0 for none.
        kill: whether the program is killed there; else the disk is full.
        from_then_on: whether the disk stays full.
    """

    def __init__(self, at: int, *, kill: bool, from_then_on: bool = True) -> None:
        self.steps: list[str] = []
        self._at = at
        self._kill = kill
        self._stays = from_then_on
        self._open, self._write = os.open, os.write

    def begin(self) -> None:
        """From now on every call of this process is counted."""
        for name in STEPS:
            setattr(os, name, getattr(self, f"_{name}_watched", None) or self._watched(name))
        io.open = builtins.open = self._opened
        started = subprocess.Popen.__init__

        def starting(popen: Any, *given: Any, **named: Any) -> None:
            self._step("start", lambda: None)
            started(popen, *given, **named)

        subprocess.Popen.__init__ = starting  # type: ignore[method-assign,assignment]

    def _step(self, name: str, half: Callable[[], object]) -> None:
        self.steps.append(name)
        number = len(self.steps)
        if not self._at or number < self._at:
            return
        if self._kill:
            half()
            os.kill(os.getpid(), signal.SIGKILL)
        if name in NEED_ROOM and (self._stays or number == self._at):
            half()
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    def _watched(self, name: str) -> Callable[..., Any]:
        real = getattr(os, name)

        def watched(*given: Any, **named: Any) -> Any:
            self._step(name, lambda: None)
            return real(*given, **named)

        return watched

    def _open_watched(self, path: Any, flags: int, *given: Any, **named: Any) -> int:
        if flags & os.O_TRUNC or (flags & os.O_CREAT and not os.path.lexists(path)):
            self._step("open", lambda: None)
        return self._open(path, flags, *given, **named)

    def _write_watched(self, descriptor: int, data: bytes) -> int:
        half = memoryview(data)[: len(data) // 2]
        self._step("write", lambda: self._write(descriptor, half))
        return self._write(descriptor, data)

    def _opened(self, file: Any, mode: str = "r", buffering: int = -1, encoding: Any = None, errors: Any = None,
                newline: Any = None, closefd: bool = True, opener: Any = None) -> Any:  # fmt: skip
        plain = mode.replace("b", "").replace("t", "")
        if plain == "r":
            return _real_open(file, mode, buffering, encoding, errors, newline, closefd, opener)
        if not isinstance(file, int) and (plain != "a" or not Path(file).exists()):
            self._step("open", lambda: None)
        step = self._step

        class Counted(io.FileIO):
            def write(self, data: Any) -> int:
                whole = super().write
                step("write", lambda: whole(memoryview(data)[: len(data) // 2]))
                return whole(data)

        stream = io.BufferedWriter(Counted(file, plain, closefd, opener))
        return stream if "b" in mode else io.TextIOWrapper(stream, encoding, errors, newline)


_real_open = io.open
