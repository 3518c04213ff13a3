"""Read a small file of the program's own, whatever has been put in its place: never waiting, never more than wanted."""

from __future__ import annotations

import os
import stat
from pathlib import Path

_KINDS = (
    (stat.S_ISDIR, "a folder"),
    (stat.S_ISFIFO, "a pipe"),
    (stat.S_ISSOCK, "a socket"),
)
_FLAGS = os.O_RDONLY | os.O_NONBLOCK | os.O_NOCTTY | os.O_CLOEXEC


class NoPlainFile(OSError):
    """Something else lies under the name of a file.

    Attributes:
        kind: what it is, in words such as ``a pipe``.
    """

    def __init__(self, kind: str) -> None:
        super().__init__(f"{kind}, not a file")
        self.kind = kind


def plain_bytes(path: Path, most: int, flags: int = 0) -> bytes:
    """The first bytes of a file.

    Args:
        path: of the file.
        most: how many bytes are wanted at most.
        flags: more of those of ``os.open``, such as ``os.O_NOFOLLOW``.

    Raises:
        NoPlainFile: for a folder, a pipe, a socket or a device.
        OSError: when it is not there or cannot be read.
    """
    # A device may do something when it is opened; it is opened only if it was put there after this look.
    _want_plain(os.stat(path, follow_symlinks=not flags & os.O_NOFOLLOW).st_mode)
    descriptor = os.open(path, _FLAGS | flags)
    try:
        _want_plain(os.fstat(descriptor).st_mode)
        parts: list[bytes] = []
        while most > 0 and (part := os.read(descriptor, most)):
            parts.append(part)
            most -= len(part)
        return b"".join(parts)
    finally:
        os.close(descriptor)


def _want_plain(mode: int) -> None:
    if stat.S_ISREG(mode):
        return
    if stat.S_ISLNK(mode):
        raise NoPlainFile("a link")
    raise NoPlainFile(next((kind for test, kind in _KINDS if test(mode)), "a device"))
