"""The way of a change: planned, looked at, saved, asked about, recorded, taken back, shared."""

from __future__ import annotations

import os
import shlex
import subprocess
from collections.abc import Sequence
from typing import TYPE_CHECKING

from tui.book_desk import BookDesk
from tui.screens.before_saving import BeforeSavingScreen

if TYPE_CHECKING:
    from library.book.model import Entry, Place
    from library.drafts.draft import Draft
    from library.editing.changes import Change
    from library.editing.merging import Choice
    from library.editing.plan import Plan
    from library.history.joining import FileChoice
    from tui.app import Heelclear


class Changing:
    """What the screens ask for when something of the book shall change.

    Args:
        app: the program.
        desk: where the book is changed.
    """

    def __init__(self, app: Heelclear, desk: BookDesk) -> None:
        self._app = app
        self.desk = desk

    def look(self, change: Change, draft: Draft | None = None) -> None:
        """Show what a change would write."""
        from library.editing.document import EditRefused
        from library.files.refusals import SaveRefused

        try:
            plan = self.desk.plan(change)
        except (EditRefused, SaveRefused) as refused:
            self._app.say(refused.sentence)
            return
        self._look_at(plan, draft)

    def _look_at(self, plan: Plan, draft: Draft | None) -> None:
        if plan.before == plan.after:
            self._app.say("Nothing would change in the file.")
            return
        screen = BeforeSavingScreen(self._app.session, plan, lambda plan: self._save(plan, draft))
        self._app.push_screen(screen)

    def _save(self, plan: Plan, draft: Draft | None, choices: Sequence[Choice] = ()) -> None:
        from library.editing.document import EditRefused
        from library.editing.saving import Asked
        from library.files.refusals import SaveRefused

        try:
            saved = self.desk.save(plan, choices)
        except (EditRefused, SaveRefused) as refused:
            self._app.say(refused.sentence)
            return
        if isinstance(saved, Asked):
            from tui.screens.two_people import TwoPeopleScreen

            again = TwoPeopleScreen(
                self._app.session,
                saved.conflicts,
                lambda chosen: self._save(plan, draft, [*choices, *chosen]),
            )
            self._app.push_screen(again)
            return
        if draft is not None:
            self._app.drafting.drop(draft)
        self._app.back_from("before-saving", "form", "two-people")
        said = ["Saved.", "What others changed meanwhile is kept too." if saved.merged else "", saved.warning]
        said.append(self.desk.record(saved))
        self._app.read_again(" ".join(part for part in said if part))

    def take_back(self) -> None:
        """Show what taking back the last save would write."""
        plan = self.desk.undo()
        if plan is None:
            self._app.say("Nothing was saved yet, so there is nothing to take back.")
        else:
            self._look_at(plan, None)

    def open_editor(self, place: Place) -> None:
        """Open a file of the book at a line in the person's editor, then read the book again."""
        words = shlex.split(os.environ.get("VISUAL") or os.environ.get("EDITOR") or "")
        if not words:
            self._app.say(
                f"Neither VISUAL nor EDITOR names an editor. The entry is in {place.file}, line {place.line}."
            )
            return
        try:
            with self._app.suspend():
                done = subprocess.run([*words, f"+{place.line}", str(place.file)], check=False)
        except OSError as error:
            self._app.say(f"{words[0]} could not be started: {error.strerror}.")
            return
        finally:
            self._app.repaint()
        told = "" if done.returncode == 0 else f"{words[0]} ended with {done.returncode}. "
        self._app.read_again(f"{told}The book was read again.")

    def show_history(self, entry: Entry) -> None:
        """Show what git remembers of an entry."""
        from library.history.following import history
        from library.history.git import GitRefused
        from tui.screens.entry_history import EntryHistoryScreen

        tree = self.desk.work_tree()
        if tree is None:
            self._app.say(
                "The book's folder is in no git work tree, or git is not installed; there is no history."
            )
            return
        try:
            revisions = history(tree, entry.id)
        except GitRefused as refused:
            self._app.say(refused.sentence)
            return
        self._app.push_screen(EntryHistoryScreen(self._app.session, entry, revisions))

    def records_each_save(self) -> bool:
        """Whether the shop wants every save recorded."""
        from library.history.habit import commits_each_save

        return commits_each_save(self.desk.shop)

    def change_habit(self) -> None:
        """Turn recording on or off for this book."""
        from library.files.refusals import SaveRefused
        from library.history.habit import set_commits_each_save

        wanted = not self.records_each_save()
        try:
            set_commits_each_save(self.desk.shop, wanted=wanted)
        except SaveRefused as refused:
            self._app.say(refused.sentence)
        else:
            self._app.say(
                "From now on every save is one commit." if wanted else "Saves are not recorded any more."
            )

    def pull(self, choices: Sequence[FileChoice] = ()) -> None:
        """Bring in what others pushed, asking where both changed the same."""
        from library.history.git import GitRefused
        from library.history.joining import FileChoice
        from library.history.sharing import PullAsked, pull
        from tui.screens.two_people import TwoPeopleScreen

        tree = self.desk.work_tree()
        if tree is None:
            return
        try:
            done = pull(tree, choices)
        except GitRefused as refused:
            self._app.say(refused.sentence)
            return
        if isinstance(done, PullAsked):
            asked = done.conflicts

            def answered(chosen: list[Choice]) -> None:
                new = [FileChoice(one.path, choice) for one, choice in zip(asked, chosen, strict=True)]
                self.pull([*choices, *new])

            self._app.push_screen(
                TwoPeopleScreen(self._app.session, [one.conflict for one in asked], answered)
            )
            return
        count = done.commits
        told = (
            "Nothing new was there." if count == 0 else f"{count} commit{'s' if count > 1 else ''} came in."
        )
        self._app.read_again(told)

    def push(self) -> None:
        """Send what is recorded here to the other copy."""
        from library.history.git import GitRefused
        from library.history.sharing import push

        tree = self.desk.work_tree()
        if tree is None:
            return
        try:
            push(tree)
        except GitRefused as refused:
            self._app.say(refused.sentence)
        else:
            self._app.say("Sent to the other copy.")
