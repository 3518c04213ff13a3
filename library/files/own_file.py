"""Write a small file that no other program writes, whole: the caches, what is remembered of a person, a printed sheet."""

from __future__ import annotations

import errno
import os
import re
import secrets
from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from library.files.disk import DISK, Disk
from library.files.safe_write import write_all

_LEFT = re.compile(r"\.heelclear-[0-9a-f]{16}\.writing")
_NO_LINKS = frozenset({errno.EPERM, errno.EOPNOTSUPP, errno.ENOSYS, errno.EACCES, errno.EMLINK})
"""What a disk says on which a file cannot have two names."""


def put_whole(file: Path, parts: Iterable[bytes], disk: Disk = DISK, *, lasting: bool = True) -> None:
    """Put a file of the program's own in the place of what is there, so that it is the old one or the new, never half.

    Whoever else writes it at the same time is not waited for: the last one counts. What killed programs left beside it
    goes first. Only the person may read it, and a link or a pipe under its name is replaced, not followed.

    Args:
        file: its path; the folder is made where it is not there.
        parts: what it shall hold.
        disk: the calls to use.
        lasting: whether to wait until it is on the disk; a cache need not be.

    Raises:
        OSError: when it cannot be written; what was there is as it was.
    """
    file.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
    with _beside(file.parent, parts, 0o600, disk, lasting=lasting) as made:
        disk.replace(made, file)


def put_new(file: Path, data: bytes, disk: Disk = DISK) -> None:
    """Write a new file, so that it is there whole or not at all.

    On a disk on which no file can have two names, a program that is killed just then leaves a part of it.

    Args:
        file: its path, in a folder that is there.
        data: what it shall hold.
        disk: the calls to use.

    Raises:
        FileExistsError: when something has that name already.
        OSError: when it cannot be written; then nothing is there.
    """
    if os.path.lexists(file):
        raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(file))
    with _beside(file.parent, [data], 0o666, disk, lasting=True) as made:
        try:
            disk.link(made, file)
        except OSError as error:
            if error.errno not in _NO_LINKS:
                raise
            _write_new(file, data, disk)


@contextmanager
def _beside(folder: Path, parts: Iterable[bytes], mode: int, disk: Disk, *, lasting: bool) -> Iterator[Path]:
    """A hidden file that holds all of it, which goes when the block ends, unless it has another name then."""
    _clear_left(folder, disk)
    made = folder / f".heelclear-{secrets.token_hex(8)}.writing"
    descriptor = disk.open(made, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_NOFOLLOW, mode)
    try:
        # The lock says that somebody is at work here; it ends with the program, however that ends.
        with suppress(OSError):
            disk.lock(descriptor)
        for part in parts:
            write_all(descriptor, part, disk)
        if lasting:
            disk.fsync(descriptor)
        yield made
    finally:
        # After a replacing the name is gone, and what a disk refuses here goes with the next writing.
        with suppress(OSError):
            disk.unlink(made)
        with suppress(OSError):
            disk.close(descriptor)


def _write_new(file: Path, data: bytes, disk: Disk) -> None:
    descriptor = disk.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_NOFOLLOW, 0o666)
    try:
        write_all(descriptor, data, disk)
        disk.fsync(descriptor)
    except BaseException:
        # Half a sheet would be taken for a whole one.
        with suppress(OSError):
            disk.unlink(file)
        raise
    finally:
        with suppress(OSError):
            disk.close(descriptor)


def _clear_left(folder: Path, disk: Disk) -> None:
    """Remove what killed programs left in a folder; what is being written at this moment stays."""
    with suppress(OSError):
        for name in disk.names(folder):
            if _LEFT.fullmatch(name):
                _clear_one(folder / name, disk)


def _clear_one(path: Path, disk: Disk) -> None:
    with suppress(OSError):
        descriptor = disk.open(path, os.O_RDWR | os.O_NOFOLLOW | os.O_NONBLOCK)
        try:
            disk.lock(descriptor)
            disk.unlink(path)
        finally:
            disk.close(descriptor)
