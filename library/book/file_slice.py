"""A part of a cache file that is read when somebody looks at it, so that a long list opens as quickly as a short one."""

from __future__ import annotations

import os
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import BinaryIO

Mark = tuple[int, int, int]
"""Inode, time of change and size: what tells that a file is still the one that was opened first."""


def mark_of(status: os.stat_result) -> Mark:
    """The mark in what the system says of a file."""
    return status.st_ino, status.st_mtime_ns, status.st_size


@dataclass(frozen=True)
class Kept:
    """Bytes that lie in a file.

    Where the file is another one by now, or cannot be read, there are none of them: whoever looks at them reads
    the book itself a moment later.

    Attributes:
        file: its path.
        mark: of the file.
        start: where they begin in it.
        size: how many there are.
    """

    file: Path
    mark: Mark
    start: int
    size: int

    def __getitem__(self, where: slice) -> bytes:
        """Some of them; the rest stays unread."""
        first, last, _ = where.indices(self.size)
        return self._read(first, last)

    def __bytes__(self) -> bytes:
        """All of them."""
        return self._all

    @cached_property
    def _all(self) -> bytes:
        return self._read(0, self.size)

    def _read(self, first: int, last: int) -> bytes:
        with suppress(OSError), open_plainly(self.file) as stream:
            if mark_of(os.fstat(stream.fileno())) == self.mark:
                stream.seek(self.start + first)
                return stream.read(max(last - first, 0))
        return b""


def open_plainly(file: Path) -> BinaryIO:
    """Open a file of the cache for reading; one that is a pipe by now does not hold the program."""
    return open(os.open(file, os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0)), "rb")
