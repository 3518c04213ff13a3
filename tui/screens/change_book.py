"""What can be changed of the book as a whole, and sharing it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.screens.chooser import Choice, Chooser
from tui.screens.table_forms import NewEntryForm, NewFamilyForm
from tui.sharing import NO_GIT

if TYPE_CHECKING:
    from tui.sharing import Standing


class ChangeBookScreen(Chooser):
    """New tables, the last save, and git."""

    WHERE = "changes"
    NAME_WIDTH = 18

    def title_text(self) -> str:
        """Which book."""
        return f"The shop's book: {self.heelclear.changing.desk.shop}"

    def on_screen_resume(self) -> None:
        """See how the book stands with git, each time that this comes to the front."""
        super().on_screen_resume()
        self.heelclear.sharing.look()

    def choices(self) -> list[Choice]:
        """What can be done."""
        return [
            Choice("entry", "New entry", "Adds an entry of your own."),
            Choice("family", "New family", "Adds a family of tools."),
            Choice("undo", "Take back", self._undo_text()),
            *_shared(self.heelclear.sharing.standing),
        ]

    def _undo_text(self) -> str:
        last = self.heelclear.changing.desk.last
        if last is None:
            return "Takes back the last save; nothing was saved yet since the program was started."
        return f"Takes back the last save: {last.plan.sentence}"

    def take(self, choice: Choice) -> None:
        """Do it."""
        sharing = self.heelclear.sharing
        match choice.id:
            case "entry":
                chosen = self.session.page.chosen
                self.app.push_screen(NewEntryForm(self.session, chosen.family if chosen else ""))
            case "family":
                self.app.push_screen(NewFamilyForm(self.session))
            case "undo":
                self.heelclear.changing.take_back()
            case "pull":
                sharing.pull()
            case "push":
                sharing.push()
            case "record":
                sharing.record_now()
            case "habit":
                sharing.change_habit()
            case _:
                self.say(choice.text)


def _shared(standing: Standing | None) -> list[Choice]:
    """What git can do for the book."""
    if standing is None:
        return [Choice("git", "Share", "Asking git how the book stands.")]
    if standing.trouble or not standing.is_in_git:
        return [Choice("git", "Share", standing.trouble or NO_GIT)]
    names = ", ".join(path.name for path in standing.unrecorded)
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
            f"{'On' if standing.records_each_save else 'Off'}. Whether every save is recorded in git as one commit by itself; "
            "Enter changes it for this book.",
        ),
    ]
