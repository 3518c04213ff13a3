"""The git work tree that a book's folder is a part of."""

from __future__ import annotations

import os
import shlex
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from library.errors import named
from library.history.git import Git, GitRefused
from library.history.programs import hooks_of, settings_of, settings_that_run, without_programs
from library.history.trust import is_trusted
from library.sanitize import sanitize


class NotTrusted(GitRefused):
    """The book names programs that git would run, and nobody has said that they may.

    Args:
        folder: of the book.
        programs: their names.
    """

    def __init__(self, folder: Path, programs: Sequence[str]) -> None:
        super().__init__(
            f"The book's own git folder names programs ({listed(programs)}). None of them is run, and the book is neither "
            "recorded, pulled nor pushed, until you say that you trust whoever made it. To say so, type: "
            f"heelclear trust {sanitize(shlex.quote(str(folder.absolute())))}"
        )


def listed(programs: Sequence[str], most: int = 4) -> str:
    """The names of programs in one line, safe to show.

    Example:
        >>> listed(["gpg.program", "hook pre-push"])
        'gpg.program, hook pre-push'
    """
    rest = len(programs) - most
    told = [sanitize(name) for name in programs[:most]] + ([f"and {rest} more"] if rest > 0 else [])
    return ", ".join(name if len(name) <= 60 else f"{name[:60]}..." for name in told)


@dataclass(frozen=True)
class WorkTree:
    """A book's folder that git looks after.

    Attributes:
        folder: of the book.
        prefix: the way from the top of the work tree to it, with a slash at its end; empty at the top.
        git: git, running in the folder; in a book that is not trusted it runs nothing that the book names.
        programs: the book's own settings and hooks by which git would run something.
        is_trusted: whether the person said that it may.
    """

    folder: Path
    prefix: str
    git: Git
    programs: tuple[str, ...] = ()
    is_trusted: bool = False

    @property
    def asks(self) -> tuple[str, ...]:
        """What the book names and may not run yet; nothing in an ordinary book."""
        return () if self.is_trusted else self.programs

    def require_trust(self) -> None:
        """See that git may do more in the book than look.

        Raises:
            NotTrusted: when the book names programs and the person has not said that he trusts it.
        """
        if self.asks:
            raise NotTrusted(self.folder, self.asks)

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
            "status",
            "--porcelain=v1",
            "-z",
            "--no-renames",
            "--untracked-files=all",
            "--ignore-submodules=all",
            "--",
            ".",
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
    if not os.path.isdir(folder):
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
    return _with_programs(WorkTree(folder, git.do("rev-parse", "--show-prefix").text, git))


def _with_programs(tree: WorkTree) -> WorkTree:
    """The work tree with what the book names of programs; git is held back from them where it is not trusted."""
    settings = settings_of(tree.git)
    named_there = settings_that_run(settings)
    programs = (*named_there, *hooks_of(tree.git, settings))
    if not programs:
        return tree
    if is_trusted(tree.top):
        return replace(tree, programs=programs, is_trusted=True)
    held_back = replace(tree.git, held_back=without_programs(named_there))
    return replace(tree, git=held_back, programs=programs)
