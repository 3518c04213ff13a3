"""Another copy of the book in a folder of this machine: what it would have git run here when something is sent to it.

Git receives there as this person, with that copy's own settings and hooks. A copy on another machine runs its own
there, which is not this machine's affair; fetching runs nothing of either.
"""

from __future__ import annotations

import os
import re
import shlex
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from library.errors import named
from library.history.git import Git, GitRefused
from library.history.programs import Setting, hooks_of, settings_of
from library.history.trust import is_trusted
from library.history.work_tree import WorkTree, listed
from library.sanitize import sanitize

_WHOEVER_OWNS_IT = {
    "GIT_CONFIG_COUNT": "1",
    "GIT_CONFIG_KEY_0": "safe.directory",
    "GIT_CONFIG_VALUE_0": "*",
}
"""Looking runs nothing, so it does not matter whose the copy is; git asks that before it tells anything."""

# By the handbook of git: what receiving may run, with a copy whose files are brought up to date too.
_RUNS = re.compile(
    r"filter\..*\.(?:clean|smudge|process)|core\.(?:hookspath|alternaterefscommand|fsmonitor)"
    r"|gpg\.(?:.*\.)?program|hook\..*\.command",
    re.DOTALL,
)
_OF_THE_COPY = frozenset({"local", "worktree"})


@dataclass(frozen=True)
class Copy:
    """A copy of the book on this machine.

    Attributes:
        folder: the top of its work tree, or its git folder where it has none; it is trusted by this path.
        programs: its own settings and hooks by which git would run something when it receives.
    """

    folder: Path
    programs: tuple[str, ...] = ()


def copy_in(folder: Path, program: str = "git") -> Copy | None:
    """The copy in a folder; nothing where there is none, or no git.

    Args:
        folder: of the copy.
        program: the name of the git program.
    """
    if not os.path.isdir(folder):
        return None
    git = Git(folder, program, held_back=_WHOEVER_OWNS_IT)
    try:
        top = git.ask("rev-parse", "--show-toplevel")
        found = top if top.code == 0 else git.ask("rev-parse", "--absolute-git-dir")
        if found.code != 0 or not found.text:
            return None
        settings = settings_of(git)
        return Copy(Path(found.text), (*_settings_that_run(settings), *hooks_of(git, settings)))
    except GitRefused as refused:
        if isinstance(refused.__cause__, OSError):
            return None
        raise


def _settings_that_run(settings: tuple[Setting, ...]) -> tuple[str, ...]:
    own = (one.key for one in settings if one.scope in _OF_THE_COPY and _RUNS.fullmatch(one.key))
    return tuple(key for key in dict.fromkeys(own))


def require_trusted_copies(tree: WorkTree, remote: str) -> None:
    """See that nothing is run on this machine by sending to another copy, unless that copy is trusted.

    Args:
        tree: the work tree that is sent from.
        remote: git's name for the other copy.

    Raises:
        GitRefused: when it lies on this machine, names programs and is not trusted.
    """
    for address in _addresses(tree, remote):
        for folder in _folders(address, tree.top):
            copy = copy_in(folder, tree.git.program)
            if copy is not None and copy.programs and not is_trusted(copy.folder):
                raise GitRefused(_told(copy))


def _addresses(tree: WorkTree, remote: str) -> Iterator[str]:
    """Where things for that copy are sent, as git works it out from its settings.

    Git tells each in a line; one may hold a line end itself, so that any lines that stand together may be one.
    """
    told = tree.git.ask("remote", "get-url", "--push", "--all", "--", remote)
    lines = told.text.split("\n") if told.code == 0 else [remote]
    for start in range(len(lines)):
        for end in range(start + 1, len(lines) + 1):
            yield "\n".join(lines[start:end])


def _folders(address: str, top: Path) -> Iterator[Path]:
    """The folders that git would try for an address; none for one of another machine.

    Example:
        >>> [str(one) for one in _folders("/srv/book", Path("/here"))]
        ['/srv/book', '/srv/book.git']
        >>> list(_folders("shop.example:book.git", Path("/here")))
        []
    """
    path = address.removeprefix("file://")
    if path != address or ":" not in path.partition("/")[0]:
        yield top / path
        yield top / f"{path}.git"


def _told(copy: Copy) -> str:
    return (
        f"The other copy of the book, {named(copy.folder)}, names programs ({listed(copy.programs)}) that git would run on "
        "this machine. Nothing was sent. If you trust whoever keeps that copy, type: "
        f"heelclear trust {sanitize(shlex.quote(str(copy.folder)))}"
    )
