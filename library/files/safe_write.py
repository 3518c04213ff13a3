"""Atomic save of one file: whatever happens on the way, the old text or the new one stands there whole."""

from __future__ import annotations

import errno
import os
import secrets
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from pathlib import Path

from library.errors import ChangedMeanwhile, SaveError, named, refusal
from library.files.disk import DISK, Disk
from library.files.file_state import FileState, fingerprint, look, require_replaceable, settle
from library.files.lock import PATIENCE, locked

ANYTHING = "anything"
"""For a file that only one program ever writes: whatever stood there is replaced."""

_UNFINISHED = (".heelclear-", ".saving")


@dataclass(frozen=True)
class Saved:
    """The new text is in place.

    Attributes:
        path: the file.
        data: its bytes now; nothing when it was removed.
        warning: a sentence when the disk did not confirm that it will last; else empty.
    """

    path: Path
    data: bytes | None
    warning: str = ""


def write_safely(
    path: Path, data: bytes, *, root: Path, expected: str, disk: Disk = DISK, patience: float = PATIENCE
) -> Saved:
    """Save ``data`` as the whole of the file ``path``.

    Under the lock of the library: compare what stands there with what was read earlier, write a
    temporary file in the same folder, wait until it is on the disk, give it the old one's mode and
    group, compare again, put it in the old one's place in one step, and wait until the folder is
    on the disk too. Method: the usual one for POSIX, where ``rename`` replaces in one step.

    An editor that takes no lock can still slip in between the last comparison and the replacing; that
    is a few millionths of a second, and no call of the system makes it less.

    Args:
        path: the file; a link is followed when it ends inside the library.
        data: what it shall hold.
        root: the library folder, which has the lock.
        expected: the ``fingerprint`` of the bytes that were read earlier, or ``ANYTHING``.
        disk: the calls to use.
        patience: seconds to wait for another program that is saving.

    Returns:
        What was saved, with a warning when only the last wait failed.

    Raises:
        ChangedMeanwhile: when the file is no longer what was expected.
        SaveError: when it cannot be saved; the file is as it was.
    """
    with _explained(path):
        target = settle(path, root)
        with locked(root, disk, patience):
            state = expected_state(path, target, expected, disk)
            if state is not None and state.data == data:
                return Saved(path, data)
            clear_unfinished(target.parent, disk)
            _replace(path, target, data, state, disk)
            return Saved(path, data, settle_folder(path, target.parent, disk))


def remove_safely(
    path: Path, *, root: Path, expected: str, disk: Disk = DISK, patience: float = PATIENCE
) -> Saved:
    """Remove the file ``path``, under the same lock and the same comparison as ``write_safely``."""
    with _explained(path):
        target = settle(path, root)
        with locked(root, disk, patience):
            if expected_state(path, target, expected, disk) is None:
                return Saved(path, None)
            disk.unlink(target)
            return Saved(path, None, settle_folder(path, target.parent, disk))


def read_for_change(path: Path, *, root: Path, disk: Disk = DISK) -> bytes | None:
    """The bytes of a file that is about to be changed; nothing when there is none yet.

    Raises:
        SaveError: when it lies outside ``root``, is no ordinary file, or cannot be read.
    """
    try:
        state = look(settle(path, root), disk)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        raise SaveError(
            f"{named(path)} cannot be read: the system says '{reason}'. See that you may read it, then try again.",
            path,
        ) from error
    return None if state is None else state.data


@contextmanager
def _explained(path: Path) -> Iterator[None]:
    try:
        yield
    except OSError as error:
        raise refusal(error, path) from error


def expected_state(path: Path, target: Path, expected: str, disk: Disk) -> FileState | None:
    """The file as it is now; raises unless it is as expected and may be replaced."""
    state = look(target, disk)
    data = None if state is None else state.data
    if expected not in (ANYTHING, fingerprint(data)):
        raise ChangedMeanwhile(path, data)
    if state is not None:
        require_replaceable(target, state.status, disk)
    return state


def _replace(path: Path, target: Path, data: bytes, state: FileState | None, disk: Disk) -> None:
    beside = unfinished(target)
    try:
        write_beside(path, beside, data, state, disk)
        expected_state(path, target, fingerprint(None if state is None else state.data), disk)
        disk.replace(beside, target)
    except BaseException:
        with suppress(OSError):
            disk.unlink(beside)
        raise


def unfinished(target: Path) -> Path:
    """A new name beside a file, for what is to take its place; what bears it is cleared away by the next save."""
    return target.parent / secrets.token_hex(8).join(_UNFINISHED)


def write_beside(path: Path, beside: Path, data: bytes, state: FileState | None, disk: Disk) -> None:
    """Write a text under a name of ``unfinished``, wait for it, and give it the rights of the file as it is."""
    mode = 0o666 if state is None else 0o600
    descriptor = disk.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_NOFOLLOW, mode)
    try:
        write_all(descriptor, data, disk)
        if state is not None:
            _keep_rights(path, descriptor, state.status, disk)
        disk.fsync(descriptor)
    except BaseException:
        with suppress(OSError):
            disk.close(descriptor)
        raise
    disk.close(descriptor)


def write_all(descriptor: int, data: bytes, disk: Disk) -> None:
    """Write all of some data, however little the disk takes at a time; raises OSError where it takes nothing."""
    rest = memoryview(data)
    while rest:
        written = disk.write(descriptor, rest)
        if not written:
            raise OSError(errno.EIO, "nothing was written")
        rest = rest[written:]


def _keep_rights(path: Path, descriptor: int, wanted: os.stat_result, disk: Disk) -> None:
    now = disk.fstat(descriptor)
    if now.st_gid != wanted.st_gid:
        try:
            disk.chown(descriptor, -1, wanted.st_gid)
        except PermissionError as error:
            if _group_matters(wanted.st_mode):
                raise SaveError(
                    f"{named(path)} belongs to a group of users that you are not in, and saving would take it from "
                    "them. Nothing was saved; ask to be put into that group, or save under another name.",
                    path,
                ) from error
    if now.st_uid != wanted.st_uid:
        # Only root may give a file away; for a colleague's file the group is what counts.
        with suppress(PermissionError):
            disk.chown(descriptor, wanted.st_uid, -1)
    disk.chmod(descriptor, stat.S_IMODE(wanted.st_mode))


def _group_matters(mode: int) -> bool:
    """Whether the group may do something that everybody else may not."""
    return mode >> 3 & 7 != mode & 7


def settle_folder(path: Path, folder: Path, disk: Disk) -> str:
    """Wait until the names in a folder are on the disk; returns a warning about the file where that fails."""
    try:
        descriptor = disk.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            disk.fsync(descriptor)
        finally:
            disk.close(descriptor)
    except OSError as error:
        reason = error.strerror or type(error).__name__
        return (
            f"{named(path)} is saved, but the disk did not confirm it ('{reason}'): it could be lost if the power "
            "fails now. Save once more, or keep a copy on another disk."
        )
    return ""


def clear_unfinished(folder: Path, disk: Disk) -> None:
    """Remove what a killed program left: under the lock nobody else can be writing such a file."""
    begin, end = _UNFINISHED
    with suppress(OSError):
        for name in disk.names(folder):
            if name.startswith(begin) and name.endswith(end):
                disk.unlink(folder / name)
