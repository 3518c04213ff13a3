"""Every call of the system that changes a disk, of the program and of all that it starts, stopped in turn.

The kernel tells of each call before it is made (``ptrace``, with a filter that lets all other calls pass), so that git
is stopped in the same way as the program itself. For Linux on x86-64, where a program may look on at its children.
"""

from __future__ import annotations

import ctypes
import errno
import os
import platform
import signal
import struct
import subprocess
import sys
import tempfile
import threading
import traceback
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass, field
from typing import Any, Literal

Who = Literal["all", "git", "program"]
"""Who is killed: the program with all that it has started, what made the call alone, or the program alone."""

OPEN, WRITE, FSYNC, MKDIR, RENAME, LINK, UNLINK, START = "open", "write", "fsync", "mkdir", "rename", "link", "unlink", "start"  # fmt: skip

CALLS: dict[int, tuple[str, str | int]] = {
    1: (WRITE, "fd"), 18: (WRITE, "fd"), 20: (WRITE, "fd"), 74: (FSYNC, "fd"), 75: (FSYNC, "fd"),
    77: (WRITE, "fd"), 2: (OPEN, 0), 257: (OPEN, 1), 83: (MKDIR, 0), 258: (MKDIR, 1), 82: (RENAME, 0),
    264: (RENAME, 1), 316: (RENAME, 1), 86: (LINK, 1), 265: (LINK, 3), 88: (LINK, 1), 266: (LINK, 2),
    87: (UNLINK, 0), 263: (UNLINK, 1), 84: (UNLINK, 0), 59: (START, 0),
}  # fmt: skip
"""By the kernel's number, what a call does, and which of its words names the file."""

NEED_ROOM = frozenset({OPEN, WRITE, FSYNC, MKDIR, RENAME, LINK})
"""What a full disk may refuse."""

_FLAGS = {2: 1, 257: 2}
"""Where the flags of an opening stand; only one that may make or cut a file counts."""

_TRACEME, _PEEKUSER, _POKEUSER, _CONT, _SETOPTIONS, _SYSCALL, _INFO = 0, 3, 6, 7, 0x4200, 24, 0x420E
_OPTIONS = 0x2 | 0x4 | 0x8 | 0x10 | 0x80 | 0x100000  # fork, vfork, clone, exec, filter; all end with us
_FILTER_STOP = 7
_WALL = 0x40000000
_NUMBER, _ANSWER, _THIRD = 15 * 8, 10 * 8, 12 * 8
"""Where a process keeps the number of a call, its answer, and the third word, in the kernel's record of it."""

LONGEST = 120.0
"""Seconds after which a piece of work is given up: a whole one takes less than two."""

_libc = ctypes.CDLL(None, use_errno=True)
_libc.ptrace.argtypes = [ctypes.c_long, ctypes.c_long, ctypes.c_void_p, ctypes.c_void_p]
_libc.ptrace.restype = ctypes.c_long


def _ptrace(request: int, pid: int, place: int = 0, data: Any = 0) -> int:
    ctypes.set_errno(0)
    told = int(_libc.ptrace(request, pid, place, data))
    if ctypes.get_errno():
        raise OSError(ctypes.get_errno(), os.strerror(ctypes.get_errno()))
    return told


def _filter() -> bytes:
    """The filter as the kernel wants it: of the calls above it is told, all others pass."""
    lines = [(0x20, 0, 0, 0)]
    for number in CALLS:
        if number in _FLAGS:
            flags = 16 + 8 * _FLAGS[number]
            lines += [(0x15, 0, 4, number), (0x20, 0, 0, flags), (0x45, 0, 1, os.O_CREAT | os.O_TRUNC)]
            lines += [(0x06, 0, 0, 0x7FF00000), (0x06, 0, 0, 0x7FFF0000)]
        else:
            lines += [(0x15, 0, 1, number), (0x06, 0, 0, 0x7FF00000)]
    lines.append((0x06, 0, 0, 0x7FFF0000))
    return b"".join(struct.pack("HBBI", *line) for line in lines)


def _be_looked_at() -> None:
    """In the child: ask to be looked at, and from now on be told of at each of the calls."""
    _ptrace(_TRACEME, 0)
    os.kill(os.getpid(), signal.SIGSTOP)
    lines = ctypes.create_string_buffer(_filter())
    program = struct.pack("HxxxxxxP", (len(lines) - 1) // 8, ctypes.addressof(lines))
    if _libc.prctl(38, 1, 0, 0, 0) or _libc.prctl(22, 2, ctypes.c_char_p(program), 0, 0):
        raise OSError(ctypes.get_errno(), "the filter was not taken")


@dataclass
class Stopped:
    """A piece of work that is stopped at one of its calls, in a process that has no other children.

    It waits for whatever has been started by the work, which nobody can tell from other children: one of those would
    be waited for until it ends by itself.

    Attributes:
        work: what is done, in a child; returns the exit code.
        inside: only calls on files under this folder count.
        at: the number of the call, from 1; 0 for none.
        who: who is killed there; nothing where the disk is full instead.
        stays: whether the disk stays full.
        steps: what each call was.
        stopped: whether it came so far.
        said: what the work wrote on the terminal.
    """

    work: Callable[[], int]
    inside: str
    at: int = 0
    who: Who | None = None
    stays: bool = True
    steps: list[str] = field(default_factory=list)
    stopped: bool = False
    said: str = ""
    _alive: set[int] = field(default_factory=set)

    def run(self) -> int:
        """Do it; returns the exit code of the program, or minus the signal that ended it.

        Raises:
            RuntimeError: this process has another child.
            TimeoutError: it did not come to an end; the last step is told.
        """
        with suppress(ChildProcessError):
            os.waitpid(-1, _WALL | os.WNOHANG)
            raise RuntimeError("this process has other children, and would wait for them too")
        with tempfile.TemporaryFile(dir="/") as said:
            program = os.fork()
            if program == 0:
                self._child(said.fileno())
            os.waitpid(program, _WALL)
            _ptrace(_SETOPTIONS, program, 0, _OPTIONS)
            self._alive = {program}
            late = threading.Event()
            watch = threading.Timer(LONGEST, self._give_up, (late,))
            watch.start()
            try:
                code = self._look_on(program)
            finally:
                watch.cancel()
                watch.join()
            said.seek(0)
            self.said = said.read().decode()
            if late.is_set():
                last = self.steps[-1] if self.steps else "the start"
                raise TimeoutError(f"stuck after step {len(self.steps)}, {last}; said: {self.said[-300:]}")
            return code

    def _give_up(self, late: threading.Event) -> None:
        late.set()
        for one in tuple(self._alive):
            with suppress(ProcessLookupError):
                os.kill(one, signal.SIGKILL)

    def _child(self, said: int) -> None:
        code = 70
        try:
            os.dup2(said, 1)
            os.dup2(said, 2)
            sys.stdout, sys.stderr = (os.fdopen(one, "w", closefd=False) for one in (1, 2))
            _be_looked_at()
            code = self.work()
        except BaseException:
            traceback.print_exc()
        finally:
            sys.stdout.flush()
            sys.stderr.flush()
            os._exit(code)

    def _look_on(self, program: int) -> int:
        code = 0
        _ptrace(_CONT, program)
        while True:
            try:
                one, status = os.waitpid(-1, _WALL)
            except ChildProcessError:
                return code
            if not os.WIFSTOPPED(status):
                self._alive.discard(one)
                if one == program:
                    code = os.waitstatus_to_exitcode(status)
                continue
            self._alive.add(one)
            with suppress(ProcessLookupError):
                if status >> 16 == _FILTER_STOP:
                    self._call(one, program)
                elif status >> 16 or os.WSTOPSIG(status) in {signal.SIGSTOP, signal.SIGTRAP}:
                    _ptrace(_CONT, one)
                else:
                    _ptrace(_CONT, one, 0, os.WSTOPSIG(status))

    def _call(self, one: int, program: int) -> None:
        """A process is about to make one of the calls."""
        number, words = _told(one)
        what, named = CALLS[number]
        name = _name_of(one, words, named)
        # A program is looked for in many a folder, and what it says on a terminal is no file of anybody's.
        if (what in {WRITE, FSYNC} and not name.startswith(self.inside)) or (
            what == START and not os.path.exists(name)
        ):
            _ptrace(_CONT, one)
            return
        self.steps.append(f"{'program' if one == program else 'git'} {what} {name.removeprefix(self.inside)}")
        now = len(self.steps)
        if self.at and (now == self.at or (now > self.at and self.who is None and self.stays)):
            self._stop(one, program, what, words)
        else:
            _ptrace(_CONT, one)

    def _stop(self, one: int, program: int, what: str, words: tuple[int, ...]) -> None:
        if self.who is None:
            if what in NEED_ROOM:
                self.stopped = True
                _ptrace(_POKEUSER, one, _NUMBER, ctypes.c_void_p(-1 & 2**64 - 1))
                _ptrace(_POKEUSER, one, _ANSWER, ctypes.c_void_p(-errno.ENOSPC & 2**64 - 1))
            _ptrace(_CONT, one)
            return
        self.stopped = True
        if what == WRITE and words[2] > 1 and self.who != "program":
            self._half(one, words[2] // 2)
        chosen = {"all": self._alive, "git": {one}, "program": {program}}[self.who]
        for each in tuple(chosen):
            with suppress(ProcessLookupError):
                os.kill(each, signal.SIGKILL)
        if one not in chosen:
            _ptrace(_CONT, one)

    def _half(self, one: int, length: int) -> None:
        """Let it write so much, and come back when that is done."""
        _ptrace(_POKEUSER, one, _THIRD, length)
        for _ in range(2):
            _ptrace(_SYSCALL, one)
            os.waitpid(one, _WALL)


def _told(pid: int) -> tuple[int, tuple[int, ...]]:
    """The number and the words of the call that a process is about to make."""
    room = ctypes.create_string_buffer(128)
    _ptrace(_INFO, pid, len(room), ctypes.addressof(room))
    number, *words = struct.unpack_from("7Q", room.raw, 24)
    return number, tuple(words)


def _name_of(pid: int, words: tuple[int, ...], named: str | int) -> str:
    if named == "fd":
        with suppress(OSError):
            return os.readlink(f"/proc/{pid}/fd/{words[0]}")
        return ""
    with suppress(OSError), open(f"/proc/{pid}/mem", "rb", buffering=0) as memory:
        memory.seek(words[int(named)])
        return os.fsdecode(memory.read(300).partition(b"\0")[0])
    return ""


def can_be_looked_at() -> str:
    """Why it cannot be done here; empty where it can. Tried in a process of its own."""
    if sys.platform != "linux" or platform.machine() != "x86_64":
        return "made for Linux on x86-64"
    tried = subprocess.run([sys.executable, __file__], capture_output=True, text=True, check=False)
    return (
        f"the system does not let it: {tried.stdout[-200:]}{tried.stderr[-200:]}" if tried.returncode else ""
    )


def numbers(calls: int, apart: int, begin: int) -> Iterator[int]:
    """The calls at which it is stopped: each so many, beginning with one that is another for each way."""
    yield from range(1 + begin % min(apart, calls), calls + 1, apart)


if __name__ == "__main__":
    trial = Stopped(lambda: 0, "/")
    ended = trial.run()
    print(trial.said)
    sys.exit(1 if ended or trial.said else 0)
