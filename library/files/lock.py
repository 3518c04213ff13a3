"""The lock file that one program holds while it saves, and only then."""

from __future__ import annotations

import os
import stat
import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from library.errors import SaveError, named
from library.files.disk import DISK, Disk
from library.files.of_the_program import require_own

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
        SaveError: when another program keeps it for longer than that, the file is no plain file, or the folder came
            with the program.
        OSError: when it cannot be made or locked.
    """
    require_own(Path(os.path.realpath(folder)))
    path = folder / LOCK_NAME
    descriptor = _locked_file(path, disk, patience)
    try:
        yield
    finally:
        # What was saved by now is saved, whatever the closing of an empty file says.
        with suppress(OSError):
            disk.close(descriptor)


def _locked_file(path: Path, disk: Disk, patience: float) -> int:
    """Open and lock the file; anew where somebody removed it, against all advice, while this program waited."""
    waited = 0.0
    end = time.monotonic() + patience
    while True:
        descriptor = _open(path, disk)
        try:
            status = disk.fstat(descriptor)
            if not stat.S_ISREG(status.st_mode):
                raise SaveError(
                    f"{named(path)} is not a plain file. Nothing was saved; remove it and save again.", path
                )
            if _is_taken(descriptor, disk) and _is_at(path, status):
                return descriptor
        except BaseException:
            disk.close(descriptor)
            raise
        disk.close(descriptor)
        if waited >= patience or time.monotonic() > end:
            raise SaveError(
                f"Another program has been saving in {named(path.parent)} for {patience:g} seconds. Nothing was "
                "saved here; wait until it has finished, then save again. Where none is saving, a machine that shares "
                "the folder has stopped with the lock in hand: start that machine again.",
                path.parent,
            )
        disk.pause(_STEP)
        waited += _STEP


def _open(path: Path, disk: Disk) -> int:
    flags = os.O_NOFOLLOW | os.O_NONBLOCK | os.O_NOCTTY
    try:
        return disk.open(path, flags | os.O_RDWR | os.O_CREAT, 0o666)
    except PermissionError as refused:
        # Made by somebody else for himself alone: to read it is enough to lock it.
        try:
            return disk.open(path, flags | os.O_RDONLY)
        except FileNotFoundError:
            raise refused from None


def _is_taken(descriptor: int, disk: Disk) -> bool:
    try:
        disk.lock(descriptor)
    except BlockingIOError:
        return False
    return True


def _is_at(path: Path, status: os.stat_result) -> bool:
    try:
        now = os.lstat(path)
    except FileNotFoundError:
        return False
    return (now.st_dev, now.st_ino) == (status.st_dev, status.st_ino)
