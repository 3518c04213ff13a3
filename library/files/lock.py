"""One program at a time: the lock that is held while a book is being saved, and only then."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from library.files.disk import DISK, Disk
from library.files.refusals import SaveRefused, named

LOCK_NAME = ".lock"
PATIENCE = 5.0
"""Seconds to wait for another program; a save takes some milliseconds."""

_STEP = 0.01


@contextmanager
def locked(folder: Path, disk: Disk = DISK, patience: float = PATIENCE) -> Iterator[None]:
    """Hold the folder's lock for as long as the block runs.

    The lock is the system's, on the open file ``.lock``: it ends with the program, however that ends.
    The file itself is left for good, for a program that waits on a removed one would wait beside the
    others and not behind them.

    Args:
        folder: the library folder.
        disk: the calls to use.
        patience: how long to wait, in seconds.

    Raises:
        SaveRefused: when another program keeps it for longer than that, or the file is no plain file.
        OSError: when it cannot be made or locked.
    """
    path = folder / LOCK_NAME
    descriptor = _open(path, disk)
    try:
        if not stat.S_ISREG(disk.fstat(descriptor).st_mode):
            raise SaveRefused(
                f"{named(path)} is not a plain file. Nothing was saved; remove it and save again.", path
            )
        _wait(descriptor, folder, disk, patience)
        yield
    finally:
        # What was saved by now is saved, whatever the closing of an empty file says.
        with suppress(OSError):
            disk.close(descriptor)


def _open(path: Path, disk: Disk) -> int:
    flags = os.O_CREAT | os.O_NOFOLLOW | os.O_NONBLOCK | os.O_NOCTTY
    try:
        return disk.open(path, flags | os.O_RDWR, 0o666)
    except PermissionError:
        # Made by somebody else for himself alone: to read it is enough to lock it.
        return disk.open(path, flags | os.O_RDONLY, 0o666)


def _wait(descriptor: int, folder: Path, disk: Disk, patience: float) -> None:
    waited = 0.0
    while True:
        try:
            return disk.lock(descriptor)
        except BlockingIOError:
            if waited >= patience:
                raise SaveRefused(
                    f"Another program has been saving in {named(folder)} for {patience:g} seconds. Nothing was "
                    "saved here; wait until it has finished, then save again.",
                    folder,
                ) from None
        disk.pause(_STEP)
        waited += _STEP
