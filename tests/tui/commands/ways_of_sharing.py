"""Every way in which the program lets git write: recording, pulling and pushing, each with what stands there before.

A book of three files in a work tree, a bare copy of it that is trusted and has a hook, and a second machine.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from library.editing.merging import Choice
from library.errors import Refused
from library.history.merge_commits import FileChoice
from library.history.sharing import PullConflicts
from library.history.trust import trust
from tui.services.git_service import GitService

BOOK, COPY, OTHER = Path("here/book"), Path("copy.git"), Path("there/book")

ENTRY = '[[entry]]\nid = "{0}-tap"\nfamily = "tap"\ntitle = "Tap {0}"\nrake_angle = {{ usual = "4 deg", source = "shop" }}\nthread_relief_angle = {{ usual = "3 deg", source = "shop" }}\n'
FILES = {
    name: f"# Taps of {name}.\nschema = 1\n\n{ENTRY.format(name)}" for name in ("alder", "birch", "cedar")
}


def git(folder: Path, *words: str) -> str:
    done = subprocess.run(["git", "-C", str(folder), *words], check=True, capture_output=True, text=True)
    return done.stdout.removesuffix("\n")


def lay() -> None:
    """Both machines and the copy between them, all at the same commit."""
    BOOK.mkdir(parents=True)
    for name, text in FILES.items():
        (BOOK / f"{name}.toml").write_text(text)
    (BOOK.parent / ".gitignore").write_text(".lock\n.heelclear-*\n")
    (BOOK.parent / "readme.txt").write_text("The book of the yard.\n")
    git(Path(), "init", "-q", "-b", "main", "--template=", str(BOOK.parent))
    git(BOOK.parent, "add", "-A")
    git(BOOK.parent, "commit", "-qm", "begun")
    git(Path(), "clone", "-q", "--bare", "--template=", str(BOOK.parent), str(COPY))
    git(BOOK.parent, "remote", "add", "origin", str(COPY.absolute()))
    git(BOOK.parent, "fetch", "-q", "origin")
    git(BOOK.parent, "branch", "-q", "--set-upstream-to", "origin/main")
    git(Path(), "clone", "-q", "--template=", str(COPY), str(OTHER.parent))
    hook = COPY / "hooks" / "post-receive"
    hook.parent.mkdir(exist_ok=True)
    hook.write_text("#!/bin/sh\nexit 0\n")
    hook.chmod(0o755)
    trust(COPY.absolute())


def change(folder: Path, name: str, old: str, new: str) -> None:
    path = folder / f"{name}.toml"
    text = path.read_text()
    assert old in text
    path.write_text(text.replace(old, new))


def commit(folder: Path, message: str) -> None:
    git(folder, "add", "-A", ".")
    git(folder, "commit", "-qm", message)


def others_pushed() -> None:
    """On the other machine a file was changed, one came, one went, and so did a file beside the book."""
    change(OTHER, "alder", "4 deg", "5 deg")
    (OTHER / "elder.toml").write_text(f"schema = 1\n\n{ENTRY.format('elder')}")
    (OTHER / "cedar.toml").unlink()
    (OTHER.parent / "readme.txt").write_text("The book of both yards.\n")
    commit(OTHER.parent, "from there")
    git(OTHER, "push", "-q")


def unrecorded() -> None:
    """A file changed, one new, one removed, and nothing of it in git."""
    change(BOOK, "alder", "4 deg", "6 deg")
    (BOOK / "new.toml").write_text(f"schema = 1\n\n{ENTRY.format('new')}")
    (BOOK / "birch.toml").unlink()


def _ahead() -> None:
    unrecorded()
    commit(BOOK, "from here")


def _both_with_other_keys() -> None:
    others_pushed()
    change(BOOK, "alder", "3 deg", "2 deg")
    change(BOOK, "birch", "3 deg", "2 deg")
    commit(BOOK, "from here")


def _both_with_the_same_key() -> None:
    others_pushed()
    change(BOOK, "alder", "4 deg", "7 deg")
    commit(BOOK, "from here")


def _with_something_unrecorded() -> None:
    others_pushed()
    change(BOOK, "birch", "4 deg", "8 deg")


def _unfollowed() -> None:
    _ahead()
    git(BOOK, "branch", "-q", "--unset-upstream")


def service() -> GitService:
    return GitService(BOOK.absolute())


def _pull() -> None:
    """Pull, and answer every question with what was written here, as a person does on the screens."""
    done = service().pull()
    if isinstance(done, PullConflicts):
        service().pull([FileChoice(one.path, Choice(one.conflict, "mine")) for one in done.conflicts])


def _told(work: Callable[[], object]) -> Callable[[], int]:
    def run() -> int:
        try:
            work()
        except Refused as error:
            print(error.sentence, file=sys.stderr)
            return 2
        return 0

    return run


@dataclass(frozen=True)
class Sharing:
    """What is done, and what stands there before."""

    run: Callable[[], int]
    before: Callable[[], object] = field(default=lambda: None)


WAYS: Mapping[str, Sharing] = {
    "record": Sharing(_told(lambda: service().record_now()), unrecorded),
    "pull, forward": Sharing(_told(_pull), others_pushed),
    "pull, forward, with something unrecorded": Sharing(_told(_pull), _with_something_unrecorded),
    "pull, other keys": Sharing(_told(_pull), _both_with_other_keys),
    "pull, the same key": Sharing(_told(_pull), _both_with_the_same_key),
    "push": Sharing(_told(lambda: service().push()), _ahead),
    "push for the first time": Sharing(_told(lambda: service().push()), _unfollowed),
}
