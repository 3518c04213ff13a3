"""The history of one entry from the commits of its files: who gave which value when."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from library.book.parsing import decoded
from library.book.walking import LEFT_ALONE
from library.editing.steps import same, tables
from library.files.file_state import LARGEST
from library.history.work_tree import WorkTree
from library.sanitize import sanitize
from library.toml.limits import loads
from library.toml.pieces import split

Table = Mapping[str, object]

MOST_COMMITS = 300
"""Commits that are looked at, counted from the newest of those that changed a file of the book other than a card."""

_NO_ENTRIES = tuple(f":(exclude){name}" for name in sorted(LEFT_ALONE))
"""Left out, for a shop records many cards for each change of its book, and their folder holds no entry."""

_TOGETHER = 64
"""Files that are read with one call of git."""


@dataclass(frozen=True)
class KeyChange:
    """What a commit did to one key of an entry.

    Attributes:
        key: the key.
        before: its value before; nothing when it was added.
        after: its value afterwards; nothing when it was removed.
    """

    key: str
    before: object
    after: object


@dataclass(frozen=True)
class Revision:
    """One commit that changed an entry.

    Attributes:
        commit: its full number.
        who: the author's name, safe to show.
        when: the author's time.
        message: its first line, safe to show.
        changes: what it did, key by key.
    """

    commit: str
    who: str
    when: datetime
    message: str
    changes: tuple[KeyChange, ...]


@dataclass(frozen=True)
class _Commit:
    """A commit as git lists it; ``files`` has for each changed file the blobs before (one per parent) and after."""

    number: str
    who: str
    when: str
    message: str
    files: tuple[tuple[tuple[str, ...], str], ...]


def history(
    tree: WorkTree, entry: str, array: str = "entry", most: int = MOST_COMMITS
) -> tuple[Revision, ...]:
    """Every commit that changed an entry, the newest first.

    The entry is followed by its id through all files of the book, so that moving it to another file is no
    end of its history. A merge is listed where it made something that neither side had.

    Args:
        tree: the work tree.
        entry: the id.
        array: the kind of table.
        most: commits that are looked at; those that changed nothing but cards do not count.

    Raises:
        GitRefused: when git does not answer.
    """
    if not tree.head():
        return ()
    commits = list(_commits(tree, most))
    blobs = {blob for commit in commits for before, after in commit.files for blob in (*before, after)}
    found = _tables(tree, blobs, array, entry)
    revisions = []
    for commit in commits:
        changes = _changes(commit, found)
        if changes:
            who, message = sanitize(commit.who), sanitize(commit.message)
            revisions.append(
                Revision(commit.number, who, datetime.fromisoformat(commit.when), message, changes)
            )
    return tuple(revisions)


def _commits(tree: WorkTree, most: int) -> Iterator[_Commit]:
    told = tree.git.do(
        "--no-literal-pathspecs", "log", "-z", "--raw", "--no-abbrev", "--no-renames", "--cc", "--full-history",
        "--no-ext-diff", "--no-textconv", "--no-show-signature", "--ignore-submodules=all", f"--max-count={most}",
        "--format=commit%x00%H%x00%an%x00%aI%x00%s", "--", ".", *_NO_ENTRIES,
    )  # fmt: skip
    words = iter(os.fsdecode(word) for word in told.out.split(b"\0"))
    head: list[str] = []
    files: list[tuple[tuple[str, ...], str]] = []
    for word in words:
        if word == "commit":
            if head:
                yield _Commit(head[0], head[1], head[2], head[3], tuple(files))
            head, files = [next(words, "") for _ in range(4)], []
        elif word.lstrip("\n").startswith(":"):
            blobs = _blobs(word.lstrip("\n"))
            if next(words, "").endswith(".toml"):
                files.append(blobs)
    if head:
        yield _Commit(head[0], head[1], head[2], head[3], tuple(files))


def _blobs(raw: str) -> tuple[tuple[str, ...], str]:
    """The blobs before and after in a line such as ``:100644 100644 1f.. 2e.. M``; a merge has a colon per parent."""
    parents = len(raw) - len(raw.lstrip(":"))
    numbers = raw.split(" ")[parents + 1 : 2 * parents + 2]
    return tuple(numbers[:parents]), numbers[parents]


def _tables(tree: WorkTree, blobs: Iterable[str], array: str, entry: str) -> dict[str, Table]:
    """The entry's table in each blob that has one."""
    wanted = sorted(blob for blob in blobs if blob.strip("0"))
    found = {}
    for start in range(0, len(wanted), _TOGETHER):
        some = wanted[start : start + _TOGETHER]
        told = tree.git.do("cat-file", "--batch", given="".join(f"{blob}\n" for blob in some).encode())
        for blob, raw in _batch(told.out):
            table = _table(raw, array, entry)
            if table is not None:
                found[blob] = table
    return found


def _batch(out: bytes) -> Iterator[tuple[str, bytes]]:
    at = 0
    while at < len(out):
        end = out.index(b"\n", at)
        blob, kind, *size = out[at:end].decode().split(" ")
        length = int(size[0]) if size else 0
        at = end + 1
        if kind == "blob":
            yield blob, out[at : at + length]
        at += length + 1 if size else 0


def _table(raw: bytes, array: str, entry: str) -> Table | None:
    """The table of that kind and id in a file; only the pieces that may be it are read, for speed."""
    if entry.encode("utf-8", "surrogateescape") not in raw or len(raw) > LARGEST:
        return None
    text = decoded(raw)
    for piece in split(text):
        part = text[piece.start : piece.end]
        if piece.array == array and entry in part:
            found = tables(loads(part) or {}, array)
            if found and found[0].get("id") == entry:
                return found[0]
    return None


def _changes(commit: _Commit, found: Mapping[str, Table]) -> tuple[KeyChange, ...]:
    """What the commit did to the entry, compared with each of its parents; only what differs from all of them counts."""
    parents = max((len(before) for before, _ in commit.files), default=0)
    after = next((found[blob] for _, blob in commit.files if blob in found), {})
    sides = []
    for number in range(parents):
        blobs = [before[number] for before, _ in commit.files if number < len(before)]
        sides.append(next((found[blob] for blob in blobs if blob in found), {}))
    keys = dict.fromkeys(key for table in (*sides, after) for key in table)
    return tuple(
        KeyChange(key, sides[0].get(key), after.get(key))
        for key in keys
        if all(not same(side.get(key), after.get(key)) for side in sides)
    )
