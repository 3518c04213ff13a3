"""Save several files: all of them hold the new text afterwards, or none does."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from library.errors import Refused, SaveError, named, no_room, refusal
from library.files.disk import DISK, Disk
from library.files.file_state import FileState, fingerprint, settle
from library.files.lock import PATIENCE, locked
from library.files.safe_write import (
    clear_unfinished,
    expected_state,
    settle_folder,
    unfinished,
    write_beside,
)


@dataclass(frozen=True)
class ToWrite:
    """One of the files.

    Attributes:
        path: of the file, which is there; a link is followed when it ends inside the library.
        data: what it shall hold.
        expected: the ``fingerprint`` of the bytes that were read earlier.
    """

    path: Path
    data: bytes
    expected: str


class NotTogether(Refused):
    """Not all of the files could be saved, so none was.

    Attributes:
        errors: what stands in the way of each file that could not be saved.
        half_done: whether the disk failed so that some files may hold the new text all the same.
    """

    def __init__(self, errors: Sequence[SaveError], *, half_done: bool = False) -> None:
        super().__init__(" ".join(error.sentence for error in errors))
        self.errors = tuple(errors)
        self.half_done = half_done


@dataclass(frozen=True)
class _Ready:
    """A file with its new text and a copy of its old one beside it."""

    asked: ToWrite
    target: Path
    state: FileState
    new: Path
    old: Path


def write_together(
    files: Sequence[ToWrite], *, root: Path, disk: Disk = DISK, patience: float = PATIENCE
) -> tuple[str, ...]:
    """Save all files or none.

    Under the lock of the library every file is looked at, and its new text and a copy of the old one are laid beside
    it; only when that is done for all are they put in place, one right after the other. Where one of these steps
    fails, those that were put in place are taken back, which needs no more room. A program that is killed just there
    leaves some of the files new and each of them whole; the same table taken again does the rest.

    Args:
        files: each once.
        root: the library folder, which has the lock.
        disk: the calls to use.
        patience: seconds to wait for another program that is saving.

    Returns:
        Warnings, where the disk did not confirm that a file will last.

    Raises:
        NotTogether: with every file that cannot be saved; all are as they were.
    """
    try:
        with locked(root, disk, patience):
            ready = _all_ready(files, root, disk)
            try:
                _put_in_place(ready, disk)
            finally:
                _clear(ready, disk)
            told = (settle_folder(one.asked.path, one.target.parent, disk) for one in ready)
            return tuple(warning for warning in told if warning)
    except SaveError as error:
        raise NotTogether((error,)) from error
    except OSError as error:
        raise NotTogether((refusal(error, root),)) from error


def _all_ready(files: Sequence[ToWrite], root: Path, disk: Disk) -> list[_Ready]:
    ready: list[_Ready] = []
    errors: list[SaveError] = []
    try:
        for folder in {one.path.resolve().parent for one in files}:
            clear_unfinished(folder, disk)
        for one in files:
            try:
                _make_ready(one, settle(one.path, root), ready, disk)
            except SaveError as error:
                errors.append(error)
            except OSError as error:
                errors.append(refusal(error, one.path))
        if errors:
            raise NotTogether(errors)
    except BaseException:
        _clear(ready, disk)
        raise
    return ready


def _make_ready(one: ToWrite, target: Path, ready: list[_Ready], disk: Disk) -> None:
    state = expected_state(one.path, target, one.expected, disk)
    if state is None or state.data == one.data:
        return
    ready.append(_Ready(one, target, state, unfinished(target), unfinished(target)))
    write_beside(one.path, ready[-1].old, state.data, state, disk)
    write_beside(one.path, ready[-1].new, one.data, state, disk)


def _put_in_place(ready: Sequence[_Ready], disk: Disk) -> None:
    done: list[_Ready] = []
    try:
        for one in ready:
            expected_state(one.asked.path, one.target, fingerprint(one.state.data), disk)
        for one in ready:
            done.append(one)
            disk.replace(one.new, one.target)
    except BaseException as error:
        left = [each for each in reversed(done) if not _is_back(each, disk)]
        if not isinstance(error, OSError):
            raise
        if left:
            raise NotTogether((_half_done(error, left),), half_done=True) from error
        raise refusal(error, (done or ready)[-1].asked.path) from error


def _is_back(one: _Ready, disk: Disk) -> bool:
    """Put the old text back where the new one is; says whether that is not there any more."""
    with suppress(OSError):
        if one.target.read_bytes() == one.asked.data:
            disk.replace(one.old, one.target)
        return True
    return False


def _half_done(error: OSError, left: Sequence[_Ready]) -> SaveError:
    names = ", ".join(named(one.asked.path) for one in reversed(left))
    reason = error.strerror or type(error).__name__
    cure = "Make room on the disk" if no_room(error, left[-1].asked.path) else "Look at the disk"
    return SaveError(
        f"The disk stopped half-way ('{reason}') and did not let the files be put back: {names} may hold the new text. "
        f"{cure}, then do the same again.",
        left[-1].asked.path,
    )


def _clear(ready: Sequence[_Ready], disk: Disk) -> None:
    for one in ready:
        for path in (one.new, one.old):
            with suppress(OSError):
                disk.unlink(path)
