"""A hidden folder in which something is made ready; what a killed program left of one goes with the next try."""

from __future__ import annotations

import errno
import os
import secrets
import stat
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from library.files.disk import DISK, Disk

_BEGIN = ".heelclear-"
_MAKING = ".laying"
_PLACING = ".placing"
_TRIES = 5


def is_staging(name: str) -> bool:
    """Whether a name is that of such a folder.

    Example:
        >>> is_staging(".heelclear-0011223344556677.laying"), is_staging(".heelclear-0011.saving")
        (True, False)
    """
    return name.startswith(_BEGIN) and name.endswith((_MAKING, _PLACING))


@contextmanager
def staging(inside: Path, disk: Disk = DISK) -> Iterator[Path]:
    """A new hidden folder, which goes with all that is in it when the block ends, unless it has another name then.

    It is held by a lock of the system's on the folder itself, so that nobody else takes it for one that was left.

    Args:
        inside: the folder to make it in.
        disk: the calls to use.

    Raises:
        OSError: when it cannot be made.
    """
    path, descriptor = _made(inside, disk)
    try:
        yield path
    finally:
        try:
            remove(path, disk)
        finally:
            with suppress(OSError):
                disk.close(descriptor)


def placing(path: Path) -> Path:
    """The name that a folder has from when all is in it, while its files are copied to where they belong."""
    return path.with_suffix(_PLACING)


def clear_left(inside: Path, disk: Disk = DISK) -> None:
    """Remove what killed programs left in a folder; where one had begun to copy its files, they go again too.

    A folder that another program is filling at this moment stays, and so does whatever the system keeps.

    Args:
        inside: the folder to look in; it need not be there.
        disk: the calls to use.
    """
    with suppress(OSError):
        for name in disk.names(inside):
            if is_staging(name):
                _clear_one(inside / name, disk)


def take_back(made: Path, target: Path, disk: Disk = DISK) -> None:
    """Remove from ``target`` what was copied there of the folder ``made``.

    A file counts as copied when it is a beginning of the one in ``made``; where one of them says something else, a
    person has worked there since, and nothing is touched.

    Raises:
        OSError: when a file cannot be read or removed.
    """
    begun = _begun(made, target)
    if begun is None:
        return
    for path in begun:
        disk.unlink(path)
    for folder in sorted((path for path in made.rglob("*") if path.is_dir()), reverse=True):
        with suppress(OSError):
            disk.rmdir(target / folder.relative_to(made))


def _is_whole(made: Path, target: Path) -> bool:
    """Whether all of the folder ``made`` was copied, so that only the end of the program's work is missing."""
    files = [path for path in made.rglob("*") if path.is_file()]
    begun = _begun(made, target) or {}
    return len(begun) == len(files) and all(
        whole.stat().st_size == path.stat().st_size for path, whole in begun.items()
    )


def _begun(made: Path, target: Path) -> dict[Path, Path] | None:
    """The files of ``target`` that were copied from ``made``, each with its original; nothing where one is a person's."""
    pairs = {target / file.relative_to(made): file for file in sorted(made.rglob("*")) if file.is_file()}
    begun = {path: file for path, file in pairs.items() if os.path.lexists(path)}
    return begun if all(_is_begun(path, file) for path, file in begun.items()) else None


def _is_begun(path: Path, whole: Path) -> bool:
    """Whether a file is a plain one and holds the beginning of another."""
    status = path.lstat()
    return (
        stat.S_ISREG(status.st_mode)
        and status.st_size <= whole.stat().st_size
        and whole.read_bytes().startswith(path.read_bytes())
    )


def _made(inside: Path, disk: Disk) -> tuple[Path, int]:
    """A new folder and the descriptor that holds it; another one where somebody clears it before it is held."""
    for _ in range(_TRIES):
        path = inside / f"{_BEGIN}{secrets.token_hex(8)}{_MAKING}"
        disk.mkdir(path)
        with suppress(FileNotFoundError):
            return path, _held(path, disk)
    raise FileNotFoundError(errno.ENOENT, os.strerror(errno.ENOENT), str(inside))


def _held(path: Path, disk: Disk) -> int:
    """Open and lock a new folder; a disk that knows no locks lets nobody clear anything either."""
    try:
        descriptor = disk.open(path, _FOLDER)
    except BaseException:
        with suppress(OSError):
            disk.rmdir(path)
        raise
    try:
        with suppress(OSError):
            disk.lock(descriptor)
        path.stat()
    except BaseException:
        disk.close(descriptor)
        raise
    return descriptor


_FOLDER = os.O_RDONLY | os.O_DIRECTORY | os.O_NOFOLLOW | os.O_NONBLOCK


def _clear_one(path: Path, disk: Disk) -> None:
    with suppress(OSError):
        descriptor = disk.open(path, _FOLDER)
        try:
            disk.lock(descriptor)
            if path.name.endswith(_PLACING) and not _is_whole(path, path.parent):
                take_back(path, path.parent, disk)
            remove(path, disk)
        finally:
            disk.close(descriptor)


def remove(path: Path, disk: Disk) -> None:
    """Remove a folder and what is in it, as far as the system lets one; a link in it is removed and not followed."""
    if not path.is_dir() or path.is_symlink():
        return
    with suppress(OSError):
        for name in disk.names(path):
            inner = path / name
            if inner.is_dir() and not inner.is_symlink():
                remove(inner, disk)
            else:
                with suppress(OSError):
                    disk.unlink(inner)
        disk.rmdir(path)
