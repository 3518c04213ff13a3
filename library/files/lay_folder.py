"""Lay several new files into a folder: all of them are there afterwards, or none."""

from __future__ import annotations

import errno
import os
import stat
from collections.abc import Mapping
from contextlib import suppress
from pathlib import Path

from library.files.disk import DISK, Disk
from library.files.safe_write import write_all
from library.files.staging import clear_left, placing, remove, staging, take_back

_NOT_TO_BE_MOVED = frozenset(
    {errno.EACCES, errno.EPERM, errno.EROFS, errno.EBUSY, errno.EXDEV, errno.ENOTEMPTY, errno.EEXIST}
)
"""What the system says where a folder cannot be put in place of another, although files may be put into it."""


def clear_unfinished(folder: Path, disk: Disk = DISK) -> None:
    """Remove what killed programs left of laying this folder, in it and beside it."""
    target = Path(os.path.realpath(folder))
    clear_left(target, disk)
    clear_left(_first_missing(target).parent, disk)


def lay_folder(folder: Path, files: Mapping[str, bytes], disk: Disk = DISK) -> list[Path]:
    """Make a folder, and the folders above it, with these files in it.

    They are written into a hidden folder beside it, waited for until they are on the disk, and moved into place in
    one step. A folder that is there and has something in it, or in which this program was started, or that cannot be
    moved, gets them one after the other: killed in between, the next try takes away what is there of them. Call
    ``clear_unfinished`` before looking whether the folder is free.

    Args:
        folder: there or not; a link to a folder is followed.
        files: text of each, after its path inside the folder, with slashes.
        disk: the calls to use.

    Returns:
        The files that were written, in the order given.

    Raises:
        OSError: when they cannot be; the folder is as it was.
    """
    target = Path(os.path.realpath(folder))
    if not _is_to_be_replaced(target):
        _lay_into(target, files, disk)
    else:
        try:
            _lay_beside(target, files, disk)
        except OSError as error:
            if error.errno not in _NOT_TO_BE_MOVED or not target.is_dir():
                raise
            _lay_into(target, files, disk)
    return [folder / name for name in files]


def _is_to_be_replaced(target: Path) -> bool:
    """Whether another folder may be put in its place: nobody's work and nobody's shell is in it."""
    if not os.path.lexists(target):
        return True
    # Whoever stands in a folder that is replaced sees an empty one that is nowhere.
    with suppress(OSError):
        return not os.listdir(target) and not os.path.samefile(target, os.curdir)
    return True


def _first_missing(target: Path) -> Path:
    """The uppermost of the folders that are to be made; the target itself where it is there."""
    top = target
    while not os.path.lexists(top.parent):
        top = top.parent
    return top


def _lay_beside(target: Path, files: Mapping[str, bytes], disk: Disk) -> None:
    top = _first_missing(target)
    with staging(top.parent, disk) as made:
        _fill(made, made / target.relative_to(top), files, disk)
        if target.is_dir():
            _keep_rights(made, target, disk)
        disk.replace(made, top)
        _wait_for(top.parent, disk)


def _lay_into(target: Path, files: Mapping[str, bytes], disk: Disk) -> None:
    for name in files:
        if os.path.lexists(target / name):
            raise FileExistsError(errno.EEXIST, os.strerror(errno.EEXIST), str(target / name))
    with staging(target, disk) as made:
        _fill(made, made, files, disk)
        ready = placing(made)
        disk.replace(made, ready)
        try:
            for name, data in files.items():
                _make_folders((target / name).parent, target, disk)
                _write(target / name, data, disk)
            _wait_for(target, disk)
        except BaseException:
            # Where even this fails, the hidden folder stays, and tells the next try what to take away.
            with suppress(OSError):
                take_back(ready, target, disk)
                remove(ready, disk)
            raise
        remove(ready, disk)


def _fill(top: Path, folder: Path, files: Mapping[str, bytes], disk: Disk) -> None:
    made = {top}
    for name, data in files.items():
        made |= _make_folders((folder / name).parent, top, disk)
        _write(folder / name, data, disk)
    for path in sorted(made, reverse=True):
        _wait_for(path, disk)


def _make_folders(folder: Path, top: Path, disk: Disk) -> set[Path]:
    """Make a folder and those above it, up to ``top``, which is there."""
    missing = [folder, *folder.parents]
    missing = [path for path in missing[: missing.index(top)] if not path.is_dir()]
    for path in reversed(missing):
        disk.mkdir(path)
    return set(missing)


def _write(path: Path, data: bytes, disk: Disk) -> None:
    descriptor = disk.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_NOFOLLOW, 0o666)
    try:
        write_all(descriptor, data, disk)
        disk.fsync(descriptor)
    except BaseException:
        with suppress(OSError):
            disk.close(descriptor)
        raise
    disk.close(descriptor)


def _keep_rights(made: Path, like: Path, disk: Disk) -> None:
    """Give the new folder the owner, group and mode of the one in whose place it comes."""
    wanted = like.stat()
    descriptor = disk.open(made, os.O_RDONLY | os.O_DIRECTORY)
    try:
        now = disk.fstat(descriptor)
        if (now.st_uid, now.st_gid) != (wanted.st_uid, wanted.st_gid):
            disk.chown(descriptor, wanted.st_uid, wanted.st_gid)
        disk.chmod(descriptor, stat.S_IMODE(wanted.st_mode))
    finally:
        disk.close(descriptor)


def _wait_for(folder: Path, disk: Disk) -> None:
    """Wait until the names in a folder are on the disk, where the disk can say so."""
    with suppress(OSError):
        descriptor = disk.open(folder, os.O_RDONLY | os.O_DIRECTORY)
        try:
            disk.fsync(descriptor)
        finally:
            disk.close(descriptor)
