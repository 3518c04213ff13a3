"""Commit one save, with that file and nothing else."""

from __future__ import annotations

import os
from collections.abc import Sequence
from pathlib import Path

from library.history.git import GitRefused
from library.history.work_tree import WorkTree


def record(tree: WorkTree, paths: Sequence[Path], message: str) -> str:
    """Commit some files of the book as they are now.

    What the shop has staged of other files stays staged and is not committed. The shop's hooks are run, in
    a book that the person trusts; one that is not trusted and names programs is not recorded.

    Args:
        tree: the work tree.
        paths: the files; one that is gone is committed as removed.
        message: what was done, such as a plan's sentence.

    Returns:
        The number of the commit; empty when the files hold nothing new.

    Raises:
        NotTrusted: when the book names programs and is not trusted.
        GitRefused: when the commit is not made; the files are saved all the same.
    """
    tree.require_trust()
    tree.branch()
    names = tree.relative(paths)
    if not tree.git.do(
        "status", "--porcelain=v1", "-z", "--no-renames", "--ignore-submodules=all", "--", *names
    ).out:
        return ""
    unknown = _unknown(tree, names)
    if unknown:
        tree.git.do("add", "--intent-to-add", "--", *unknown)
    done = tree.git.ask(
        "commit", "--quiet", "--only", "--cleanup=whitespace", "--file=-", "--", *names,
        given=message.encode("utf-8", "replace"),
    )  # fmt: skip
    if done.code != 0:
        if unknown:
            tree.git.ask("rm", "--quiet", "--cached", "--force", "--", *unknown)
        if _was_recorded(tree, names):
            return ""
        raise GitRefused(f"The change is saved in its file, but not recorded in git. {done.reason('commit')}")
    return tree.head()


def _was_recorded(tree: WorkTree, names: Sequence[str]) -> bool:
    """Whether the last commit holds the files as they are; then git's list of files is brought up to it.

    Git is broken off so between its commit and its list: it calls the files changed, and finds nothing to commit.
    """
    tried = tree.git.ask("commit", "--dry-run", "--only", "--", *names)
    return (
        tried.code == 1 and not tried.complaints and tree.git.ask("reset", "--quiet", "--", *names).code == 0
    )


def _unknown(tree: WorkTree, names: Sequence[str]) -> list[str]:
    """Which of the files git does not know yet."""
    listed = tree.git.do("ls-files", "-z", "--", *names).out
    known = {name for name in listed.split(b"\0") if name}
    return [
        name
        for name in names
        if name.encode("utf-8", "surrogateescape") not in known and os.path.exists(tree.folder / name)
    ]
