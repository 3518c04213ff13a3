"""Merge two lines of commits inside git's object store, without touching a file of the book.

Nothing of it shows until the branch is moved forward to the joined commit, in one step that git itself
guards; so a question can be asked, or the power can fail, with the book as it was.
"""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from library.editing.document import EditRefused
from library.editing.merging import Choice, Conflict
from library.editing.plan import Plan
from library.editing.saving import Conflicts, rebased
from library.errors import named
from library.history.beside_git import beside_git
from library.history.git import GitRefused
from library.history.work_tree import WorkTree

BASE, OURS, THEIRS = "1", "2", "3"
"""Git's numbers for the three states of a file that both sides changed."""


@dataclass(frozen=True)
class FileConflict:
    """A key that both sides changed, and the file it stands in."""

    path: Path
    conflict: Conflict


@dataclass(frozen=True)
class FileChoice:
    """A person's answer to a file conflict."""

    path: Path
    choice: Choice


@dataclass(frozen=True)
class Joined:
    """The outcome of a merge.

    Attributes:
        commit: that has both sides as parents; empty while there is something to ask.
        conflicts: what to ask.
    """

    commit: str
    conflicts: tuple[FileConflict, ...] = ()


@dataclass(frozen=True)
class _Blob:
    mode: str
    number: str


def join(tree: WorkTree, ours: str, theirs: str, choices: Sequence[FileChoice] = ()) -> Joined:
    """Make the merge commit of both sides.

    A file that one side changed is taken from it. A file of the book that both changed is put together key
    by key, with the remarks of both; another file line by line.

    Args:
        tree: the work tree; its files are neither read nor written.
        ours: the commit of this machine.
        theirs: the commit of the other.
        choices: answers to conflicts of an earlier attempt.

    Raises:
        GitRefused: when the sides have nothing in common, or a file cannot be put together.
    """
    base = tree.git.ask("merge-base", ours, theirs)
    if base.code != 0:
        raise GitRefused(
            "The two copies of the book have no common beginning, so they cannot be joined. Begin one of them as a clone "
            "of the other (git clone), and copy your files into it."
        )
    with beside_git(tree) as folder:
        index = {"GIT_INDEX_FILE": str(folder / "index")}
        tree.git.do(
            "read-tree", "-i", "-m", "--aggressive", base.text.split("\n")[0], ours, theirs, extra=index
        )
        conflicts, lines = _put_together(tree, index, folder, choices)
        if conflicts:
            return Joined("", tuple(conflicts))
        if lines:
            tree.git.do("update-index", "-z", "--index-info", given=b"".join(lines), extra=index)
        written = tree.git.do("write-tree", extra=index).text
    message = "Join the book's changes of two machines\n"
    return Joined(
        tree.git.do("commit-tree", written, "-p", ours, "-p", theirs, "-F", "-", given=message.encode()).text
    )


def _put_together(
    tree: WorkTree, index: Mapping[str, str], folder: Path, choices: Sequence[FileChoice]
) -> tuple[list[FileConflict], list[bytes]]:
    """The conflicts of all files, and what the index has to be told of each that is put together."""
    conflicts: list[FileConflict] = []
    lines: list[bytes] = []
    for name, stages in _unmerged(tree, index).items():
        path = tree.path_of(name)
        answers = [answer.choice for answer in choices if answer.path == path]
        made = _file(tree, path, stages, folder, answers)
        if isinstance(made, Conflicts):
            conflicts += [FileConflict(path, conflict) for conflict in made.conflicts]
            continue
        key = os.fsencode(name)
        lines.append(b"0 " + b"0" * 40 + b"\t" + key + b"\0")
        if made is not None:
            blob = tree.git.do("hash-object", "-w", "--stdin", given=made).text
            mode = (stages.get(THEIRS) or stages[OURS]).mode
            lines.append(f"{mode} {blob}\t".encode() + key + b"\0")
    return conflicts, lines


def _unmerged(tree: WorkTree, index: Mapping[str, str]) -> dict[str, dict[str, _Blob]]:
    """By file, as named from the top of the work tree: its state in the base and on the two sides."""
    told = replace(tree.git, folder=tree.top).do("ls-files", "--unmerged", "-z", extra=index)
    found: dict[str, dict[str, _Blob]] = {}
    for entry in told.out.split(b"\0"):
        if entry:
            facts, _, name = entry.partition(b"\t")
            mode, number, stage = facts.decode().split(" ")
            found.setdefault(os.fsdecode(name), {})[stage] = _Blob(mode, number)
    return found


def _file(
    tree: WorkTree, path: Path, stages: Mapping[str, _Blob], folder: Path, choices: Sequence[Choice]
) -> bytes | Conflicts | None:
    """The bytes of a file that both sides changed; nothing when it goes."""
    states = {stage: tree.git.do("cat-file", "blob", blob.number).out for stage, blob in stages.items()}
    if (
        path.suffix != ".toml"
        or not path.is_relative_to(tree.folder)
        or ".." in path.parts[len(tree.folder.parts) :]
    ):
        return _by_lines(tree, path, states, folder)
    plan = Plan(path, tree.folder, states.get(BASE), states.get(OURS), "")
    try:
        found = rebased(plan, states.get(THEIRS), choices)
    except EditRefused as refused:
        try:
            return _by_lines(tree, path, states, folder)
        except GitRefused:
            raise GitRefused(
                f"Both copies changed {named(Path(path.name))}, and one of them cannot be read. {refused.sentence}"
            ) from refused
    return found if isinstance(found, Conflicts) else found.after


def _by_lines(tree: WorkTree, path: Path, states: Mapping[str, bytes], folder: Path) -> bytes:
    """Git's own merge by lines, for a file that is not of the book or cannot be parsed."""
    files = []
    for stage in (OURS, BASE, THEIRS):
        file = folder / stage
        file.write_bytes(states.get(stage, b""))
        files.append(str(file))
    done = tree.git.ask("merge-file", "-p", "-q", *files)
    if done.code != 0 or OURS not in states or THEIRS not in states:
        raise GitRefused(
            f"Both copies changed the same lines of {named(path)}, which this program cannot put together. Do it by hand "
            "with git pull, then come back."
        )
    return done.out
