"""A form to fill in, whose change is looked at before it is saved."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.screens.board import Board
from tui.view.lines import Line
from tui.view.text_form import TextForm

if TYPE_CHECKING:
    from textual import events

    from library.drafts.draft import Draft
    from library.editing.changes import Change
    from tui.session import Session


class FormScreen(Board):
    """Lines of text; a subclass says what is wrong with them and which change they ask for."""

    WHERE = "form"
    NUMBERS: tuple[str, ...] = ()
    """Lines in which ``?`` asks for help, because it is never a part of what belongs there."""

    def __init__(self, session: Session, form: TextForm) -> None:
        super().__init__(session)
        self.form = form

    def complaints(self) -> dict[str, str]:
        """What is wrong with what stands there now, by line."""
        return {}

    def change(self) -> Change | None:
        """The change that is asked for, or nothing where there is none."""
        raise NotImplementedError

    def draft(self) -> Draft | None:
        """What to keep in case the program ends before it is saved."""
        return None

    def body(self, width: int, height: int) -> list[Line]:
        """The form."""
        return self.form.draw(width)

    def on_key(self, event: events.Key) -> None:
        """A question mark is a character where text belongs, and asks for help elsewhere."""
        if event.character == "?" and self.form.blank.key not in self.NUMBERS:
            event.stop()
            event.prevent_default()
            self.typed("?")
            self.draw()
        else:
            super().on_key(event)

    def typed(self, text: str) -> None:
        """Type into the line in hand, and look at it."""
        self.form.type(text)
        self._look_over()

    def edited(self, key: str) -> None:
        """Edit the line in hand, and look at it."""
        self.form.edit(key)
        self._look_over()

    def do_next_field(self) -> None:
        """To the next line."""
        self.form.move(1)

    def do_previous_field(self) -> None:
        """To the line before."""
        self.form.move(-1)

    def do_clear_field(self) -> None:
        """Empty the line in hand."""
        self.form.clear()
        self._look_over()

    def _look_over(self) -> None:
        self.form.wrong = self.complaints()
        draft = self.draft()
        if draft is not None:
            self.heelclear.drafting.keep_soon(draft)

    def do_look(self) -> None:
        """Show what would change in the file."""
        self.form.wrong = self.complaints()
        if self.form.wrong:
            self.say("Mend what is marked with ! first; nothing is saved yet.")
            return
        change = self.change()
        if change is None:
            self.say("Nothing was changed.")
            return
        self.heelclear.changing.look(change, self.draft())
