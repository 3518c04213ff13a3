"""The system calls that saving makes, in one object, so that tests can make each of them fail.

The saving code asks a ``Disk`` and never ``os``, so that a test can hand in one whose third operation
finds the disk full, or kills the program, and look at what is left.
"""

from __future__ import annotations

import fcntl
import os
import time
from pathlib import Path


class Disk:
    """The real disk: one method for each call, and nothing added to it."""

    def open(self, path: Path, flags: int, mode: int = 0o600) -> int:
        """Open ``path`` and return its descriptor."""
        return os.open(path, flags | os.O_CLOEXEC, mode)

    def close(self, descriptor: int) -> None:
        """Close it; on a network disk a full disk may only be told of here."""
        os.close(descriptor)

    def read(self, descriptor: int, size: int) -> bytes:
        """Up to ``size`` bytes."""
        return os.read(descriptor, size)

    def write(self, descriptor: int, data: bytes | memoryview) -> int:
        """Write what goes in, and say how much that was."""
        return os.write(descriptor, data)

    def fsync(self, descriptor: int) -> None:
        """Wait until it is on the disk itself."""
        os.fsync(descriptor)

    def fstat(self, descriptor: int) -> os.stat_result:
        """What an open file is."""
        return os.fstat(descriptor)

    def may_write(self, path: Path) -> bool:
        """Whether this person may write the file."""
        return os.access(path, os.W_OK)

    def chown(self, descriptor: int, owner: int, group: int) -> None:
        """Give the file to an owner and a group; -1 leaves one as it is."""
        os.fchown(descriptor, owner, group)

    def chmod(self, descriptor: int, mode: int) -> None:
        """Set who may read and write."""
        os.fchmod(descriptor, mode)

    def replace(self, new: Path, old: Path) -> None:
        """Put ``new`` in the place of ``old`` in one step."""
        os.replace(new, old)

    def link(self, old: Path, new: Path) -> None:
        """Give a file a second name, which nothing may have yet."""
        os.link(old, new)

    def unlink(self, path: Path) -> None:
        """Remove a name."""
        os.unlink(path)

    def mkdir(self, path: Path) -> None:
        """Make a folder that is not there yet."""
        path.mkdir()

    def rmdir(self, path: Path) -> None:
        """Remove an empty folder."""
        path.rmdir()

    def names(self, folder: Path) -> list[str]:
        """The names in a folder."""
        return os.listdir(folder)

    def lock(self, descriptor: int) -> None:
        """Take the lock at once, or raise ``BlockingIOError`` when another program has it."""
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except PermissionError as error:
            # So some network disks say that another machine has it; POSIX allows either number.
            raise BlockingIOError(*error.args) from error

    def pause(self, seconds: float) -> None:
        """Wait a little before asking again."""
        time.sleep(seconds)


DISK = Disk()
"""The one that everybody uses unless told otherwise."""
