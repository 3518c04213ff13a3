"""The state of a file on the disk before it is saved: which one a name means, what it holds, whether it may be replaced."""

from __future__ import annotations

import hashlib
import os
import stat
from dataclasses import dataclass
from pathlib import Path

from library.errors import SaveError, named
from library.files.disk import DISK, Disk
from library.files.of_the_program import require_own

LARGEST = 1 << 20
"""The largest file that is read: a book's file is text for people, and 1 MiB is some thousand entries."""


@dataclass(frozen=True)
class FileState:
    """A file as it was found.

    Attributes:
        data: its bytes.
        status: mode, owner, group and number of names.
    """

    data: bytes
    status: os.stat_result


def fingerprint(data: bytes | None) -> str:
    """What tells one state of a file from another: the SHA-256 of its bytes, or ``absent`` when there is none.

    Example:
        >>> fingerprint(b"")[:8], fingerprint(None)
        ('e3b0c442', 'absent')
    """
    return "absent" if data is None else hashlib.sha256(data).hexdigest()


def settle(path: Path, root: Path) -> Path:
    """The file that ``path`` means once links are followed; it must lie inside the folder ``root``.

    Args:
        path: as the user names it.
        root: the library folder.

    Returns:
        The path without links. There need not be a file yet.

    Raises:
        SaveError: when it lies elsewhere, for what is outside the book is not the program's to change; or when it
            came with the program.
    """
    inside = Path(os.path.realpath(root))
    target = Path(os.path.realpath(path))
    if target == inside or not target.is_relative_to(inside):
        raise SaveError(
            f"{named(path)} leads to {named(target)}, which is outside the book's folder {named(root)}. "
            "Nothing was saved; move that file into the folder, or open it in its own.",
            path,
        )
    require_own(target)
    return target


def look(target: Path, disk: Disk = DISK) -> FileState | None:
    """Read the file at a settled path.

    A pipe in the folder would make a plain open wait for ever, hence ``O_NONBLOCK`` and the look at
    what it is before anything is read.

    Args:
        target: without links, as from ``settle``.
        disk: the calls to use.

    Returns:
        What stands there, or nothing when there is no such file.

    Raises:
        SaveError: when it is something other than a file of ordinary size.
        OSError: when it cannot be read.
    """
    try:
        descriptor = disk.open(target, os.O_RDONLY | os.O_NONBLOCK | os.O_NOFOLLOW | os.O_NOCTTY)
    except FileNotFoundError:
        return None
    try:
        status = disk.fstat(descriptor)
        if not stat.S_ISREG(status.st_mode):
            raise SaveError(_not_a_file(target, status.st_mode), target)
        return FileState(_all_bytes(descriptor, target, disk), status)
    finally:
        disk.close(descriptor)


def _not_a_file(target: Path, mode: int) -> str:
    for test, word in (
        (stat.S_ISDIR, "a folder"),
        (stat.S_ISFIFO, "a pipe"),
        (stat.S_ISSOCK, "a socket"),
    ):
        if test(mode):
            return (
                f"{named(target)} is {word}, not a file. Nothing was saved; remove it or choose another name."
            )
    return f"{named(target)} is a device, not a file. Nothing was saved; remove it or choose another name."


def _all_bytes(descriptor: int, target: Path, disk: Disk) -> bytes:
    parts: list[bytes] = []
    size = 0
    while part := disk.read(descriptor, 1 << 18):
        parts.append(part)
        size += len(part)
        if size > LARGEST:
            raise SaveError(
                f"{named(target)} is larger than 1 MiB, which no file of a book is. Split it into smaller files.",
                target,
            )
    return b"".join(parts)


def require_replaceable(target: Path, status: os.stat_result, disk: Disk = DISK) -> None:
    """Raise unless the file may be replaced by a new one under the same name.

    Replacing needs no leave to write the file itself, so a file that was locked on purpose would be
    replaced silently; and a second name of the file would go on showing the old text.

    Raises:
        SaveError: for a read-only file, or one that has a second name.
    """
    if not status.st_mode & 0o222 or not disk.may_write(target):
        raise SaveError(
            f"{named(target)} may only be read, not written. Nothing was saved; give yourself leave to write it "
            "(chmod u+w), or save under another name.",
            target,
        )
    if status.st_nlink > 1:
        raise SaveError(
            f"{named(target)} has a second name (a hard link), which would keep the old text. Nothing was saved; "
            "make it a file of its own (cp it, then mv the copy over it) or open it by a symbolic link.",
            target,
        )
