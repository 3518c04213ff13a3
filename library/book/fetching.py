"""Read the bytes of one file: never blocking, never changing its access time, never more than a book file may have."""

from __future__ import annotations

import os
import stat
import time
from dataclasses import dataclass
from pathlib import Path

LARGEST_FILE = 1 << 20
"""Bytes that one file of a book may have."""

_FLAGS = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0) | getattr(os, "O_NOCTTY", 0)


SETTLED = 0.1
"""Seconds after which the time stamps of a file would show another change to it."""

COARSE = 2.1
"""Seconds within which a time stamp of whole seconds may stand for two changes: some disks count in steps of two."""


class Unreadable(Exception):
    """A file or folder that cannot be read.

    Attributes:
        wrong: what is wrong, a sentence.
        fix: what to do, a sentence.
    """

    def __init__(self, wrong: str, fix: str) -> None:
        self.wrong = wrong
        self.fix = fix
        super().__init__(f"{wrong} {fix}")


@dataclass(frozen=True)
class Signature:
    """What tells whether a file is still the one that was read, without reading it again."""

    mtime_ns: int
    ctime_ns: int
    size: int

    @staticmethod
    def of(status: os.stat_result) -> Signature:
        """The signature in what the system says of a file."""
        return Signature(status.st_mtime_ns, status.st_ctime_ns, status.st_size)

    @property
    def is_fresh(self) -> bool:
        """Whether the file changed so lately that another change would not show in its time stamps.

        A stamp that lies ahead, because the clock was set back, shows another change as well as an old one does.
        """
        now = time.time_ns()
        return any(
            abs(now - stamp) < (SETTLED if stamp % 1_000_000_000 else max(SETTLED, COARSE)) * 1e9
            for stamp in (self.mtime_ns, self.ctime_ns)
        )


def open_untouched(path: Path, flags: int = 0) -> int:
    """Open a file or folder for reading so that not even its time of last reading changes, where that is allowed."""
    try:
        return os.open(path, _FLAGS | flags | getattr(os, "O_NOATIME", 0))
    except PermissionError:
        return os.open(path, _FLAGS | flags)


def fetch(path: Path) -> tuple[bytes, Signature]:
    """Read one whole file.

    Args:
        path: of the file; a symbolic link is followed.

    Returns:
        Its bytes, and the signature that it had before it was read.

    Raises:
        Unreadable: for a folder, a pipe, a device, a file that is too long, or one that the system refuses.
    """
    try:
        handle = open_untouched(path)
    except OSError as error:
        raise refused(error) from error
    try:
        status = os.fstat(handle)
        _want_a_plain_file(status)
        raw = _read(handle)
    except OSError as error:
        raise refused(error) from error
    finally:
        os.close(handle)
    if len(raw) > LARGEST_FILE:
        raise _too_long()
    return raw, Signature.of(status)


def _read(handle: int) -> bytes:
    parts: list[bytes] = []
    room = LARGEST_FILE + 1
    while room > 0 and (part := os.read(handle, room)):
        parts.append(part)
        room -= len(part)
    return b"".join(parts)


def _want_a_plain_file(status: os.stat_result) -> None:
    if not stat.S_ISREG(status.st_mode):
        kind = "a folder" if stat.S_ISDIR(status.st_mode) else "a pipe or a device"
        raise Unreadable(f"This is {kind}, not a file.", "Give it a name that does not end in .toml.")
    if status.st_size > LARGEST_FILE:
        raise _too_long()


def _too_long() -> Unreadable:
    return Unreadable("The file is larger than 1 MiB and was not read.", "Divide it into several files.")


def refused(error: OSError) -> Unreadable:
    """What the system said, in words for a shop."""
    known = {
        "PermissionError": (
            "You have no permission to read this.",
            "Ask whoever owns it for the right to read.",
        ),
        "FileNotFoundError": (
            "This is not there any more, or is a link to nothing.",
            "Fix the link or remove it.",
        ),
    }
    name = type(error).__name__
    if name in known:
        return Unreadable(*known[name])
    if error.errno == getattr(os, "ELOOP", 40):
        return Unreadable("This is a link that leads back to itself.", "Remove the link.")
    said = os.strerror(error.errno) if error.errno else str(error)
    return Unreadable(f"The system could not read this ({said}).", "Look at the disk or the network.")
