"""What can be changed of the book as a whole, and sharing it."""

from __future__ import annotations

from tui.screens.chooser import Choice, Chooser
from tui.screens.table_forms import NewEntryForm, NewFamilyForm


class ChangeBookScreen(Chooser):
    """New tables, the last save, and git."""

    WHERE = "changes"
    NAME_WIDTH = 18

    def title_text(self) -> str:
        """Which book."""
        return f"The shop's book: {self.heelclear.changing.desk.shop}"

    def choices(self) -> list[Choice]:
        """What can be done."""
        found = [
            Choice("entry", "New entry", "Adds an entry of your own."),
            Choice("family", "New family", "Adds a family of tools."),
            Choice("undo", "Take back", self._undo_text()),
        ]
        if self.heelclear.changing.desk.work_tree() is None:
            return [*found, Choice("git", "Share", _NO_GIT)]
        habit = self.heelclear.changing.records_each_save()
        return [
            *found,
            Choice(
                "pull", "Pull", "Brings in what others changed and pushed; nothing of either side is lost."
            ),
            Choice("push", "Push", "Sends what is recorded here to the other copy."),
            Choice(
                "record",
                f"Record: {'on' if habit else 'off'}",
                "Whether every save is recorded in git as one commit. Enter changes it for this book.",
            ),
        ]

    def _undo_text(self) -> str:
        last = self.heelclear.changing.desk.last
        return (
            f"Takes back: {last.plan.sentence}" if last else "Takes back the last save; there was none yet."
        )

    def take(self, choice: Choice) -> None:
        """Do it."""
        changing = self.heelclear.changing
        match choice.id:
            case "entry":
                self.app.push_screen(NewEntryForm(self.session))
            case "family":
                self.app.push_screen(NewFamilyForm(self.session))
            case "undo":
                changing.take_back()
            case "pull":
                changing.pull()
            case "push":
                changing.push()
            case "record":
                changing.change_habit()
            case _:
                self.say("Run 'git init' in that folder, and name another copy with 'git remote add origin'.")


_NO_GIT = (
    "The folder is in no git work tree, or git is not installed. With git the book has a history and can be shared "
    "by pulling and pushing; without it all else works."
)
