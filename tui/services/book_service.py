"""The service that changes the shop's book: plan, save, commit, undo. Nothing here touches a screen."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from library.book import folders
from library.editing.changes import Change, SetTable, SetText, SetValue
from library.editing.concurrent_edit import concurrent_edits
from library.editing.locate import find
from library.editing.merging import Choice, Conflict
from library.editing.plan import Plan
from library.editing.planning import plan
from library.editing.saving import Conflicts, Done, save, undone
from library.history.auto_commit import commits_each_save
from library.history.git import GitRefused
from library.history.recording import record
from library.history.work_tree import WorkTree, find_work_tree


@dataclass(frozen=True)
class FieldConflicts:
    """The outcome of a plan that meets an edit conflict: fields that somebody else saved since a person began.

    Attributes:
        by_field: the conflict in each field of what is changed.
    """

    by_field: Mapping[str, Conflict]


class BookService:
    """Plans, saves, undoes and commits the changes of one shop's book.

    Args:
        shop: the shop's folder.

    Attributes:
        last: the last save, which can be taken back.
    """

    def __init__(self, shop: Path) -> None:
        self.shop = shop
        self.last: Done | None = None

    def plan(self, change: Change, began: Mapping[str, object] | None = None) -> Plan | FieldConflicts:
        """Work out what a change would write.

        Args:
            change: what is wanted.
            began: what the person found when he began, where somebody may have changed it since.

        Returns:
            The plan; or what both changed.

        Raises:
            EditRefused: when it cannot be made.
            SaveError: when a file cannot be read.
        """
        shipped = folders.shipped_folder()
        if began is not None and isinstance(change, SetValue | SetText | SetTable):
            both = concurrent_edits(change, began, self.shop, shipped)
            if both:
                return FieldConflicts(both)
        return plan(change, self.shop, shipped)

    def save(self, plan: Plan, choices: Sequence[Choice] = ()) -> Done | Conflicts:
        """Save a plan, and remember it for an undo."""
        saved = save(plan, choices)
        if isinstance(saved, Done):
            self.last = saved
        return saved

    def table(self, array: str, name: str, *, is_shipped: bool = False) -> Mapping[str, object] | None:
        """The keys of a table as the files have it, the shop's over what came with the program; nothing where it is gone.

        Args:
            array: the kind of table, such as ``machine``.
            name: its id.
            is_shipped: whether only what came with the program is wanted.

        Raises:
            EditRefused: when it stands where it cannot be read, or twice.
        """
        folders_of = (folders.shipped_folder(), *(() if is_shipped else (self.shop,)))
        found = [one for one in (find(folder, array, name) for folder in folders_of) if one is not None]
        return {key: value for one in found for key, value in one.table.items()} if found else None

    def undo(self) -> Plan | None:
        """The plan that undoes the last save, or nothing where nothing was saved yet."""
        if self.last is None:
            return None
        back, again, told = "Taken back: ", "Done again: ", self.last.plan.sentence
        plan = undone(self.last)
        return replace(plan, sentence=again + told.removeprefix(back)) if told.startswith(back) else plan

    def work_tree(self) -> WorkTree | None:
        """The git work tree that the shop's folder is in, where there is one and git is installed."""
        return find_work_tree(self.shop)

    def record(self, done: Done) -> str:
        """Record a save as one commit where the shop wants that; returns a sentence about it, or nothing."""
        if not commits_each_save(self.shop):
            return ""
        try:
            tree = self.work_tree()
            if tree is None:
                return "It is not recorded: the folder is in no git work tree, or git is not installed."
            record(tree, [done.plan.path], done.plan.sentence)
        except GitRefused as refused:
            return refused.sentence
        return "It is recorded in git."
