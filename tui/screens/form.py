"""The base of forms that change the book: validated at every key, kept as a draft, previewed before it is saved."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

from tui.screens.base_screen import BaseScreen
from tui.screens.change_flow import ChangeRequest, preview
from tui.screens.choosing import list_choices
from tui.screens.confirming import ask
from tui.screens.left_behind import left_of, take_over
from tui.view.lines import EMPTY, Line, wrap
from tui.view.text_form import TextForm

if TYPE_CHECKING:
    from library.drafts.draft import Draft
    from library.editing.changes import Change
    from library.editing.merging import Choice
    from tui.screens.base_screen import Needs
    from tui.services.book_service import FieldConflicts


class FormScreen(BaseScreen):
    """Lines of text; a subclass makes the form, and says what is wrong with it and which change it asks for."""

    WHERE = "form"
    NUMBERS: tuple[str, ...] = ()
    """Lines in which ``?`` asks for help, because it is never a part of what belongs there."""

    form: TextForm

    def current(self) -> Mapping[str, str]:
        """What the lines would hold if the form were opened now."""
        return {}

    def complaints(self) -> dict[str, str]:
        """What is wrong with what stands there now, by line."""
        return {}

    def change(self) -> Change | None:
        """The change that is asked for, or nothing where there is none."""
        raise NotImplementedError

    def began(self) -> Mapping[str, object] | None:
        """What stood in the book when the person began, by field, where somebody else may change it too."""
        return None

    def draft(self) -> Draft:
        """What to keep in case the program ends before it is saved."""
        raise NotImplementedError

    def on_mount(self) -> None:
        """Take up what was typed here before and is not saved yet."""
        name = self.draft().name
        typed = self.heelclear.autosave.newest(name)
        if typed is None and (kept := left_of(self, name)) is not None:
            take_over(self, kept)
            typed = kept.draft
        if typed is None:
            return
        self.form.take_up(typed.fields, typed.started)
        self.form.wrong = self.complaints()
        self.say(
            f"What you typed here before is back. {self.key_of('start-over')} puts the book's own words in its place."
        )

    def body(self, width: int, height: int) -> list[Line]:
        """The form, or as much of it as there is room for around the line in hand."""
        lines = self.form.draw(width)
        told = f"{self.key_of('save')} shows what would change in the file, to be saved with {self.key_of('go-on')}."
        if self.form.choices():
            told = f"{self.key_of('change')} lists what this line can hold. {told}"
        lines += [EMPTY, *wrap(f"{self.besides()} {told}".lstrip(), width, "quiet")]
        in_hand = next((at for at, one in enumerate(lines) if one and one[0].text == "> "), 0)
        return lines[max(0, min(in_hand - 2, len(lines) - height)) :]

    def besides(self) -> str:
        """What the form has done by itself, to be told as long as it holds."""
        return ""

    def is_text(self, key: str) -> bool:
        """A question mark is a character where text belongs, and asks for help elsewhere."""
        return key == "?" and self.form.focus not in self.NUMBERS

    def needs(self) -> Needs:
        """Something that was typed; faults stand in no way, for they are told."""
        return {
            **super().needs(),
            "save": lambda: self.complaints() or self.change() is not None,
            "start-over": self.form.is_changed,
            "empty": lambda: self.form.in_hand.text and not self.form.choices(),
            "change": self.form.choices,
        }

    def room(self) -> int:
        """Characters that the line in hand still takes."""
        return self.form.room

    def typed(self, text: str) -> None:
        """Type into the line in hand, and look at it."""
        self.form.type(text)
        self.look_over()
        self.say_choices(self.form)

    def edited(self, key: str) -> None:
        """Edit the line in hand, and look at it."""
        self.form.edit(key)
        self.look_over()

    def do_down(self) -> None:
        """To the next line."""
        self.form.move(1)

    def do_go_on(self) -> None:
        """To the next line, and from the last one to the first."""
        self.form.go_round()

    def do_up(self) -> None:
        """To the line before."""
        self.form.move(-1)

    def do_change(self) -> None:
        """List what the line in hand can hold, where it is one of several."""
        if not list_choices(self, self.form.blank.label, self.form, self._put):
            self.say("There is nothing to list for this line; type what belongs there.")

    def _put(self, text: str) -> None:
        self.form.put(text)
        self.look_over()

    def do_page_up(self) -> None:
        """To the first line."""
        self.form.focus = self.form.blanks[0].key

    def do_page_down(self) -> None:
        """To the last line."""
        self.form.focus = self.form.blanks[-1].key

    def do_empty(self) -> None:
        """Empty the line in hand."""
        self.form.clear()
        self.look_over()

    def do_start_over(self) -> None:
        """Put back what the book has, once it is confirmed that what was typed is to be forgotten."""
        if not self.form.is_changed():
            self.say("Nothing was typed here, so there is nothing to start over.")
            return
        typed = [
            f"{blank.label}: {self.form.values()[blank.key] or 'emptied'}"
            for blank in self.form.blanks
            if self.form.values()[blank.key] != self.form.started.get(blank.key, "")
        ]
        ask(
            self,
            f"{self.title_text()}: start over?",
            "Start over",
            f"Forgets what was typed: {'; '.join(typed)}.",
            self._start_over,
        )

    def _start_over(self) -> None:
        self.form.start_over(self.current())
        self.form.wrong = {}
        self.heelclear.autosave.drop(self.draft())

    def look_over(self) -> None:
        """Say what is wrong with the lines as they are, and keep them."""
        self.form.wrong = self.complaints()
        self.heelclear.autosave.keep_soon(self.draft())

    def do_save(self) -> None:
        """Show what would change in the file."""
        self.form.wrong = self.complaints()
        if self.form.wrong:
            self.say("Fix what is marked with ! first; nothing is saved yet.")
            return
        change = self.change()
        if change is None:
            self.say("Nothing was changed, so there is nothing to save.")
            return
        draft = self.draft()
        preview(
            self.heelclear,
            ChangeRequest(change, self.began(), self.take_answers, lambda: self._saved(draft)),
        )

    def take_answers(self, conflicts: FieldConflicts, choices: Sequence[Choice]) -> None:
        """Take what the person keeps where somebody else changed the same, and go on."""
        for (field, conflict), choice in zip(conflicts.by_field.items(), choices, strict=True):
            theirs = as_text(conflict.theirs)
            self.form.started[field] = theirs
            if choice.side == "theirs":
                self.form.fill({field: theirs})
        self.look_over()
        self.do_save()

    def _saved(self, draft: Draft) -> None:
        """Leave the form, unless something was typed since the change that is saved now."""
        if not self.heelclear.autosave.drop_saved(draft):
            self.form.started.update(draft.fields)
        elif self.is_current:
            self.app.pop_screen()

    def book_changed(self) -> None:
        """Take what the book has now into the lines that nobody touched, and tell of those that both changed."""
        both = self.form.follow(self.current())
        self.form.wrong = self.complaints() if self.form.is_changed() else {}
        if both:
            names = " and ".join(label.lower() for label in both)
            self.say(
                f"Somebody else changed {names} while you type. Yours stays here; before saving you are asked which to keep."
            )


def as_text(value: object) -> str:
    """A text or list of the book as it stands in a line of a form.

    Example:
        >>> as_text(["gun tap", "bull-nose tap"]), as_text(None), as_text(4)
        ('gun tap, bull-nose tap', '', '4')
    """
    if value is None:
        return ""
    return ", ".join(map(str, value)) if isinstance(value, list | tuple) else str(value)
