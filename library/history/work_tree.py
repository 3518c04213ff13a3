"""The git work tree that a book's folder is a part of."""

from __future__ import annotations

import os
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path

from library.errors import named
from library.history.git import Git, GitRefused


@dataclass(frozen=True)
class WorkTree:
    """A book's folder that git looks after.

    Attributes:
        folder: of the book.
        prefix: the way from the top of the work tree to it, with a slash at its end; empty at the top.
        git: git, running in the folder.
    """

    folder: Path
    prefix: str
    git: Git

    @property
    def top(self) -> Path:
        """The top of the work tree."""
        return self.folder.joinpath(*[".."] * self.prefix.count("/"))

    def path_of(self, name: str) -> Path:
        """The path of a file that git names from the top of the work tree."""
        inside = name.startswith(self.prefix)
        return self.folder / name[len(self.prefix) :] if inside else self.top / name

    def branch(self) -> str:
        """The full name of the branch that is checked out.

        Raises:
            GitRefused: when there is none, for a commit that no branch leads to is soon lost.
        """
        found = self.git.ask("symbolic-ref", "-q", "HEAD")
        if found.code != 0:
            raise GitRefused(
                "The book stands at an old commit and at no branch, so a new one could get lost. Go back to the branch with "
                "git switch, then try again."
            )
        return found.text

    def head(self) -> str:
        """The commit that is checked out; empty before the first one."""
        found = self.git.ask("rev-parse", "-q", "--verify", "HEAD^{commit}")
        return found.text if found.code == 0 else ""

    def uncommitted(self) -> tuple[Path, ...]:
        """The files of the book that were changed, added or removed since the last commit."""
        told = self.git.do(
            "status", "--porcelain=v1", "-z", "--no-renames", "--untracked-files=all", "--", "."
        )
        entries = [entry for entry in told.out.split(b"\0") if entry]
        names = [os.fsdecode(entry[3:]) for entry in entries]
        return tuple(self.path_of(name) for name in names if name.endswith(".toml"))

    def relative(self, paths: Iterable[Path]) -> list[str]:
        """Paths of files as git wants them in this folder.

        Raises:
            GitRefused: for a file that lies outside.
        """
        inside = []
        for path in paths:
            if not path.is_relative_to(self.folder):
                raise GitRefused(f"{named(path)} does not lie in the book's folder. Move it there first.")
            inside.append(str(path.relative_to(self.folder)))
        return inside


def find_work_tree(folder: Path, program: str = "git") -> WorkTree | None:
    """The work tree that a book's folder belongs to.

    Args:
        folder: of the book.
        program: the name of the git program.

    Returns:
        The work tree; nothing where there is no git or no work tree, and then the book works without.

    Raises:
        GitRefused: when git is there and does not trust the folder, or does not answer.
    """
    if not folder.is_dir():
        return None
    git = Git(folder, program)
    try:
        inside = git.ask("rev-parse", "--is-inside-work-tree")
    except GitRefused as refused:
        if isinstance(refused.__cause__, OSError):
            return None
        raise
    if inside.says("dubious ownership"):
        git.do("rev-parse", "--is-inside-work-tree")
    if inside.code != 0 or inside.text != "true":
        return None
    return WorkTree(folder, git.do("rev-parse", "--show-prefix").text, git)
