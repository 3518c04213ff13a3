"""The service of the book's git work tree: its state, its history, commit, pull and push.

Each of these asks git, so it is called in a thread; each returns what came of it, and refuses with a sentence.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from library.history.auto_commit import commits_each_save, set_commits_each_save
from library.history.entry_history import Revision, history
from library.history.git import GitRefused
from library.history.merge_commits import FileChoice
from library.history.recording import record
from library.history.sharing import PullConflicts, Pulled, pull, push
from library.history.trust import trust
from library.history.work_tree import WorkTree, find_work_tree

NO_GIT = (
    "The book's folder is in no git work tree, or git is not installed. Run 'git init' in that folder, and name "
    "another copy with 'git remote add origin'. Without git all else works."
)


@dataclass(frozen=True)
class GitState:
    """The state of the book's git work tree, as the screens show it.

    Attributes:
        is_in_git: whether git looks after the folder.
        records_each_save: whether the shop wants every save recorded.
        unrecorded: the files that changed and are in no commit yet.
        trouble: a sentence where git is there and cannot say.
        asks: what the book names of programs, where it is not trusted and so neither recorded nor shared.
    """

    is_in_git: bool = False
    records_each_save: bool = False
    unrecorded: tuple[Path, ...] = ()
    trouble: str = ""
    asks: tuple[str, ...] = ()


class GitService:
    """The commands of git for the book of one shop.

    Args:
        shop: the shop's folder.

    Attributes:
        state: how the book stood at the last look; nothing before the first one has ended.
    """

    def __init__(self, shop: Path) -> None:
        self._shop = shop
        self.state: GitState | None = None

    def look(self) -> GitState:
        """Read the state of the work tree."""
        try:
            tree = find_work_tree(self._shop)
            if tree is None:
                return GitState()
            return GitState(True, commits_each_save(self._shop), tree.uncommitted(), asks=tree.asks)
        except GitRefused as refused:
            return GitState(True, trouble=refused.sentence)

    def trust(self) -> None:
        """Remember that the person trusts the book, so that git may run what it names."""
        trust(self._tree().top)

    def history(self, entry: str) -> Sequence[Revision]:
        """What git remembers of an entry."""
        return history(self._tree(), entry)

    def record_now(self) -> Sequence[Path]:
        """Record what was changed by hand, or saved while recording was off, as one commit; returns its files."""
        tree = self._tree()
        files = tree.uncommitted()
        names = ", ".join(path.name for path in files)
        if files:
            record(tree, files, f"The book as it stands: {names}")
        return files

    def change_habit(self) -> bool:
        """Turn recording of every save on or off for this book; returns whether it is on now."""
        wanted = not commits_each_save(self._shop)
        set_commits_each_save(self._shop, wanted=wanted)
        return wanted

    def pull(self, choices: Sequence[FileChoice] = ()) -> Pulled | PullConflicts:
        """Bring in what others pushed, or return what both changed and nobody has answered yet."""
        return pull(self._tree(), choices)

    def push(self) -> tuple[Path, ...]:
        """Send what is recorded here to the other copy; returns the files that are not recorded."""
        tree = self._tree()
        push(tree)
        return tree.uncommitted()

    def _tree(self) -> WorkTree:
        tree = find_work_tree(self._shop)
        if tree is None:
            raise GitRefused(NO_GIT)
        return tree
