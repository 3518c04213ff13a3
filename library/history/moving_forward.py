"""Put the files of another commit into the work tree, each in one step, before git moves the branch there.

Git itself takes a file away and writes the new one under its name; whoever is killed there leaves a book with a file
that is cut or gone. So what is plain is done here, and git then finds it done. What is not plain (links, programs,
large files) and everything that stands in the way is left to git, which says so or does it as ever.
"""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace
from pathlib import Path

from library.errors import SaveError
from library.files.disk import Disk
from library.files.file_state import LARGEST, FileState, fingerprint, look
from library.files.safe_write import (
    clear_unfinished,
    expected_state,
    settle_folder,
    unfinished,
    write_beside,
)
from library.history.beside_git import beside_git, told
from library.history.git import Git, GitRefused
from library.history.work_tree import WorkTree

_PLAIN = frozenset({"100644", "000000"})
"""Git's modes of an ordinary file and of none."""

_TOGETHER = 64
"""Files that git is asked about with one call."""


@dataclass(frozen=True)
class _Move:
    """A file that differs between both commits.

    Attributes:
        name: as git names it from the top of the work tree.
        path: of the file.
        old: git's number of the text before; empty where there was no file.
        new: of the text afterwards; empty where there is none.
    """

    name: str
    path: Path
    old: str
    new: str


def put_files_forward(tree: WorkTree, ours: str, target: str, disk: Disk) -> None:
    """Put the plain files of a later commit in place, where nothing stands in the way of it.

    Whoever is stopped on the way leaves each file old or new; done once more, it goes on from there.

    Args:
        tree: the work tree; the caller holds the lock of its book.
        ours: the commit that is checked out; empty before the first one.
        target: the commit to go to.
        disk: the calls to use.

    Raises:
        GitRefused: when a file cannot be written.
    """
    git = replace(tree.git, folder=tree.top)
    before = ours or git.do("hash-object", "-w", "-t", "tree", "--stdin").text
    moves = [move for move in _moves(git, before, target) if _is_plain(move, tree.top)]
    now = _numbers_now(git, moves)
    if not moves or any(now[move.name] not in (move.old, move.new) for move in moves):
        return
    done = [move for move in moves if now[move.name] == move.new]
    rest = [move for move in moves if now[move.name] != move.new]
    with beside_git(tree, disk) as folder:
        texts = _new_texts(git, rest, target, folder)
        _tell_index(git, done)
        git.ask("update-index", "-q", "--refresh")
        if texts is None or git.ask("read-tree", "-m", "-u", "--dry-run", before, target).code != 0:
            return
        for place in {move.path.parent for move in moves}:
            clear_unfinished(place, disk)
        _put(rest, texts, disk)
    _tell_index(git, rest)


def _moves(git: Git, before: str, target: str) -> Iterator[_Move]:
    told = git.do("diff-tree", "-r", "-z", "--raw", "--no-abbrev", "--no-renames", before, target)
    words = iter(os.fsdecode(word) for word in told.out.split(b"\0"))
    for word in words:
        if word.startswith(":"):
            old_mode, new_mode, old, new, _ = word[1:].split(" ")
            name = next(words, "")
            if {old_mode, new_mode} <= _PLAIN:
                yield _Move(name, git.folder / name, old.strip("0") and old, new.strip("0") and new)


def _is_plain(move: _Move, top: Path) -> bool:
    """Whether what stands there is an ordinary file, or nothing, in folders that are no links."""
    folder = move.path.parent
    if os.path.realpath(folder) != os.path.join(os.path.realpath(top), os.path.dirname(move.name)).rstrip(
        "/"
    ):
        return False
    try:
        status = move.path.lstat()
    except FileNotFoundError:
        return True
    except OSError:
        return False
    return (
        stat.S_ISREG(status.st_mode)
        and status.st_nlink == 1
        and status.st_size <= LARGEST
        and bool(status.st_mode & 0o222)
    )


def _numbers_now(git: Git, moves: Sequence[_Move]) -> dict[str, str]:
    """Git's number of each file as it stands there; empty where there is none."""
    found = {move.name: "" for move in moves}
    there = [move.name for move in moves if os.path.lexists(move.path)]
    for start in range(0, len(there), _TOGETHER):
        some = there[start : start + _TOGETHER]
        found |= zip(some, git.do("hash-object", "--", *some).text.split("\n"), strict=True)
    return found


def _new_texts(git: Git, moves: Sequence[_Move], target: str, folder: Path) -> Mapping[str, bytes] | None:
    """The files as git would write them; nothing where it does not."""
    wanted = [move.name for move in moves if move.new]
    index = {"GIT_INDEX_FILE": str(folder / "index")}
    made = folder / "files"
    asked = git.ask("read-tree", target, extra=index)
    if asked.code == 0 and wanted:
        asked = git.ask(
            "checkout-index", "--quiet", "-z", "--stdin", f"--prefix={made}/",
            given=b"".join(os.fsencode(name) + b"\0" for name in wanted), extra=index,
        )  # fmt: skip
    if asked.says("no space left", "disk quota exceeded"):
        raise GitRefused(asked.reason("checkout-index"))
    if asked.code != 0 or any((made / name).is_symlink() or not (made / name).is_file() for name in wanted):
        return None
    return {name: (made / name).read_bytes() for name in wanted}


def _tell_index(git: Git, moves: Sequence[_Move]) -> None:
    """Let git take note that these files are as they shall be."""
    if moves:
        names = b"".join(os.fsencode(move.name) + b"\0" for move in moves)
        git.do("update-index", "--add", "--remove", "-z", "--stdin", given=names)


def _put(moves: Sequence[_Move], texts: Mapping[str, bytes], disk: Disk) -> None:
    """Lay each new text beside its place, and when all are there, put one after the other in."""
    ready: list[tuple[_Move, FileState | None, Path]] = []
    at = moves[0].path if moves else Path()
    try:
        for move in moves:
            at = move.path
            state = look(at, disk)
            ready.append((move, state, unfinished(at)))
            if move.new:
                _make_folder(at.parent, disk)
                write_beside(at, ready[-1][2], texts[move.name], state, disk)
        for move, state, beside in ready:
            at = move.path
            expected_state(at, at, fingerprint(None if state is None else state.data), disk)
            if move.new:
                disk.replace(beside, at)
            elif state is not None:
                disk.unlink(at)
                _remove_empty(at.parent, move.name.count("/"), disk)
        for folder in {move.path.parent for move in moves if move.path.parent.is_dir()}:
            settle_folder(at, folder, disk)
    except SaveError as refused:
        raise GitRefused(refused.sentence) from refused
    except OSError as error:
        raise GitRefused(told(error, at)) from error
    finally:
        for _, _, beside in ready:
            with suppress(OSError):
                disk.unlink(beside)


def _make_folder(folder: Path, disk: Disk) -> None:
    if not folder.is_dir():
        _make_folder(folder.parent, disk)
        disk.mkdir(folder)


def _remove_empty(folder: Path, depth: int, disk: Disk) -> None:
    """Remove a folder in which nothing is left, and those around it, up to the top of the work tree."""
    with suppress(OSError):
        for _ in range(depth):
            disk.rmdir(folder)
            folder = folder.parent
