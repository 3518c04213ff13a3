"""What can be changed of the book as a whole, and sharing it through git."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from library.history.merge_commits import FileChoice
from library.history.sharing import PullConflicts, Pulled
from library.history.work_tree import listed
from tui import screens
from tui.actions import action
from tui.screens.change_flow import take_back
from tui.screens.chooser import Choice, Chooser
from tui.screens.confirming import ask
from tui.services.git_service import NO_GIT, GitState

if TYPE_CHECKING:
    from library.editing.merging import Choice as Kept


TABLES = ("machines", "setups", "book-wheels", "troubles", "own-threads")
"""The actions that list the tables of the book that are no entries."""


class ChangeBookScreen(Chooser):
    """New tables, the last save, and git."""

    WHERE = "changes"
    NAME_WIDTH = 22

    def title_text(self) -> str:
        """Which book."""
        return f"The shop's book: {self.heelclear.shop}"

    def came_back(self) -> None:
        """See how the book stands with git, each time that this comes to the front."""
        super().came_back()
        self._look()

    def choices(self) -> list[Choice]:
        """What can be done."""
        entry = self.session.chosen_entry()
        this = (
            [Choice("this", "This entry", f"Changes {entry.title}: its values, its texts, its id.")]
            if entry
            else []
        )
        return [
            *this,
            Choice("entry", "New entry", "Adds a new tool of your own to the book."),
            Choice("family", "New family", "Adds a family of tools."),
            *(Choice(one.id, one.title.capitalize(), one.help) for one in map(action, TABLES)),
            Choice("undo", "Take back", self._undo_text()),
            *_shared(self.heelclear.git_service.state),
        ]

    def _undo_text(self) -> str:
        last = self.heelclear.book_service.last
        if last is None:
            return "Takes back the last save; nothing was saved yet since the program was started."
        return f"Takes back the last save: {last.plan.sentence}"

    def take(self, choice: Choice) -> None:
        """Do it."""
        match choice.id:
            case "this":
                entry = self.session.chosen_entry()
                if entry is not None:
                    self.app.push_screen(screens.ChangesScreen(self.session, entry))
            case "entry":
                chosen = self.session.page.chosen
                self.app.push_screen(screens.NewEntryForm(self.session, chosen.family if chosen else ""))
            case "family":
                self.app.push_screen(screens.NewFamilyForm(self.session))
            case name if name in TABLES:
                self.app.push_screen(screens.opened_by(action(name))(self.session))
            case "undo":
                take_back(self.heelclear)
            case "pull":
                self._if_trusted(self._pull)
            case "push":
                self._if_trusted(self._push)
            case "record":
                self._if_trusted(self._record)
            case "habit":
                self._turn_habit()
            case _:
                self.say(choice.text)

    def _look(self) -> None:
        """See how the book stands with git, in the background of what goes on."""
        app, git = self.heelclear, self.heelclear.git_service

        def take(state: GitState) -> None:
            git.state = state
            app.draw_front()

        def work() -> None:
            state = git.look()
            app.on_screen(lambda: take(state))

        app.in_thread(work, "git-state", exclusive=True)

    def _if_trusted(self, do: Callable[[], None]) -> None:
        """Do something for which git may run what the book names, once the person has said that it may."""
        app, git = self.heelclear, self.heelclear.git_service
        if git.state is None or not git.state.asks:
            do()
            return

        def trusted(_: None) -> None:
            self._look()
            do()

        ask(
            self,
            f"Trust this book, and let git run {listed(git.state.asks, 2)}?",
            "Trust it",
            f"Git then runs what came with {app.shop}: {listed(git.state.asks)}. It is asked once.",
            lambda: app.background.begin("Remembering that it is trusted.", git.trust, trusted),
        )

    def _record(self) -> None:
        def tell(files: Sequence[Path]) -> None:
            count = len(files)
            self.heelclear.say(
                f"Recorded: {count} file{'s' if count > 1 else ''}."
                if count
                else "Everything is recorded already."
            )
            self._look()

        self.heelclear.background.begin(
            "Recording the book in git.", self.heelclear.git_service.record_now, tell
        )

    def _turn_habit(self) -> None:
        state = self.heelclear.git_service.state
        if state is not None and state.records_each_save:
            self._change_habit()
        else:
            self._if_trusted(self._change_habit)

    def _change_habit(self) -> None:
        def tell(is_on: bool) -> None:
            self.heelclear.say(
                "From now on every save is recorded as one commit."
                if is_on
                else "Saves are not recorded any more."
            )
            self._look()

        self.heelclear.background.begin("Writing the setting.", self.heelclear.git_service.change_habit, tell)

    def _pull(self, choices: Sequence[FileChoice] = ()) -> None:
        """Bring in what others pushed, asking where both changed the same."""

        def take(done: Pulled | PullConflicts) -> None:
            if isinstance(done, PullConflicts):
                self._ask(done, choices)
                return
            self.heelclear.read_again(_came(done))
            self._look()

        git = self.heelclear.git_service
        self.heelclear.background.begin("Pulling from the other copy.", lambda: git.pull(choices), take)

    def _ask(self, asked: PullConflicts, choices: Sequence[FileChoice]) -> None:
        if not isinstance(self.app.screen, ChangeBookScreen):
            self.heelclear.say(
                "Both copies changed the same thing, so nothing was pulled yet. Pull again to choose which to keep."
            )
            return

        def answered(chosen: list[Kept]) -> None:
            new = [FileChoice(one.path, choice) for one, choice in zip(asked.conflicts, chosen, strict=True)]
            self._pull((*choices, *new))

        conflicts = [one.conflict for one in asked.conflicts]
        self.app.push_screen(screens.ConflictScreen(self.session, conflicts, answered, "the other copy"))

    def _push(self) -> None:
        def tell(left: tuple[Path, ...]) -> None:
            names = ", ".join(path.name for path in left)
            rest = f" Not recorded yet, and so not sent: {names}." if left else ""
            self.heelclear.say(f"Sent to the other copy.{rest}")

        self.heelclear.background.begin("Pushing to the other copy.", self.heelclear.git_service.push, tell)


def _came(done: Pulled) -> str:
    if not done.commits:
        return "Nothing new was there."
    came = "1 commit came in" if done.commits == 1 else f"{done.commits} commits came in"
    return (
        f"{came}."
        if not done.joined
        else f"{came} and joined with yours; push, so that the others have both."
    )


def _shared(state: GitState | None) -> list[Choice]:
    """What git can do for the book."""
    if state is None:
        return [Choice("git", "Share", "Asking git how the book stands.")]
    if state.trouble or not state.is_in_git:
        return [Choice("git", "Share", state.trouble or NO_GIT)]
    names = ", ".join(path.name for path in state.unrecorded)
    return [
        Choice("pull", "Pull", "Brings in what others changed and pushed; nothing of either side is lost."),
        Choice("push", "Push", "Sends what is recorded here to the other copy."),
        Choice(
            "record",
            "Record now",
            f"Changed and not recorded in git yet: {names}. Enter records it as one commit."
            if names
            else "Everything is recorded in git.",
        ),
        Choice(
            "habit",
            "Commit each save",
            f"{'On' if state.records_each_save else 'Off'}. Whether every save is recorded in git as one commit by itself; "
            "Enter changes it for this book.",
        ),
    ]
