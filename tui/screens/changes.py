"""What can be changed of one entry: its values, its texts, and the entry as a whole."""

from __future__ import annotations

from datetime import date
from typing import TYPE_CHECKING

from geometry.quantities import QUANTITIES
from library.calc.measured import TOLD, is_guess
from library.calc.wording import span
from library.editing.changes import RemoveEntry, RemoveValue
from library.guidance.setups import for_entry
from tui import screens
from tui.actions import action
from tui.screens.change_flow import ChangeRequest, preview
from tui.screens.chooser import Choice, Chooser
from tui.screens.in_editor import open_file, write_notes
from tui.screens.left_behind import left_of
from tui.screens.texts_form import TEXTS, text_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from library.book.model import Entry, Value
    from library.history.entry_history import Revision
    from tui.session import Session

_VALUE, _BACK, _TEXT, _DO, _MEASURE = "value:", "back:", "text:", "do:", "measure:"


class ChangesScreen(Chooser):
    """Everything that can be changed, the values that are there first."""

    WHERE = "changes"
    NAME_WIDTH = 26

    def __init__(self, session: Session, entry: Entry, place: int = 0) -> None:
        """Make the screen.

        Args:
            session: what the program knows.
            entry: what is changed.
            place: of the value that is chosen to begin with, among its values.
        """
        super().__init__(session)
        self.entry = entry
        # Those above it stay in sight as far as there is room.
        row = self._row_of(place)
        self.view.resize(row + 1, row + 1)
        self.view.choose(row)

    def title_text(self) -> str:
        """Of which entry."""
        return f"Change {self.entry.title}"

    def book_changed(self) -> None:
        """Take the entry as it is in the book now."""
        found, now = self.found(), self.session.entry(self.entry.id)
        chosen = found[min(self.view.chosen, len(found) - 1)].id if found else ""
        self.entry, self.is_gone = now or self.entry, now is None
        self._stand_on(chosen)

    def _stand_on(self, chosen: str) -> None:
        """Choose the same line again, wherever it stands now; in place of one that is gone the value that it was of."""
        ids = [choice.id for choice in self.found()]
        same = (one for one in (chosen, _VALUE + chosen.partition(":")[2]) if one in ids)
        self.view.resize(len(ids), self.view.height)
        if (one := next(same, "")) != "":
            self.view.choose(ids.index(one))

    def choices(self) -> list[Choice]:
        """Values that are there, texts, what can be done with the entry, and values that are not there yet."""
        entry = self.entry
        back = [
            Choice(_BACK + key, f"Back: {_title(key)}", _what_comes_back(value))
            for key, value in entry.values.items()
            if value.layer == "shop" and value.by_rule is None
        ]
        missing = [
            Choice(
                _VALUE + key, _title(key), self._unsaved("value", key) or f"Not given yet. {row.definition}"
            )
            for key, row in QUANTITIES.items()
            if key not in entry.values
        ]
        return [*self._there(), *back, *self._texts(), *self._whole(), *missing]

    def _there(self) -> list[Choice]:
        """The values that are there; before each guess stands that a new tool can be measured instead."""
        found = []
        for key, value in self.entry.values.items():
            if is_guess(value):
                found.append(Choice(_MEASURE + key, "Measure a new tool", _measured(key)))
            found.append(Choice(_VALUE + key, _title(key), self._unsaved("value", key) or _said(value)))
        return found

    def _row_of(self, place: int) -> int:
        """In which row the measuring of a value stands, where it is a guess, else the value itself."""
        values = [*self.entry.values.values()]
        return min(place, len(values)) + sum(map(is_guess, values[:place]))

    def _unsaved(self, kind: str, key: str) -> str:
        """A sentence where something was typed for this and is not saved."""
        name = f"{kind} {self.entry.id}.{key}"
        is_kept = self.heelclear.autosave.newest(name) is not None or left_of(self, name) is not None
        return "Typed and not saved yet; Enter goes on with it." if is_kept else ""

    def _texts(self) -> list[Choice]:
        notes = " ".join(self.entry.notes.split()) or "none yet"
        return [
            *(
                Choice(
                    _TEXT + key, label, self._unsaved("text", key) or text_of(self.entry, key) or "none yet"
                )
                for key, label in TEXTS.items()
            ),
            Choice(_DO + "notes", "Notes", f"Opens them in your editor: {notes}"),
        ]

    def _whole(self) -> list[Choice]:
        found = [
            Choice(_DO + "copy", "Copy", "Makes a copy of this entry under a new id, as the shop's own.")
        ]
        if self.entry.layer == "shop":
            place = self.entry.place
            found += [
                Choice(_DO + "rename", "Another id", "Gives this entry another id."),
                Choice(
                    _DO + "remove", "Remove", "Takes it out of the shop's book; what is shipped comes back."
                ),
                Choice(
                    _DO + "editor", "Editor", f"Opens {place.file.name} at line {place.line} in your editor."
                ),
            ]
        else:
            found.append(Choice(_DO + "editor", "Editor", "Opens the shop's own lines of it in your editor."))
        return [
            *found,
            *self._work(),
            Choice(_DO + "history", "History", "Who changed what, and when, as git remembers it."),
        ]

    def _work(self) -> list[Choice]:
        """What the book tells of the work on such tools."""
        book = self.session.book
        setup = for_entry(book, self.entry) if book is not None else None
        how = f"Changes the set-up: {setup.title}." if setup is not None else "Lists the set-ups of the book."
        return [
            Choice(_DO + "setup", "How it is ground", how),
            Choice(
                _DO + "troubles", "Troubles", "Lists those of such tools: what is seen, and what to change."
            ),
        ]

    def take(self, choice: Choice) -> None:
        """Open the form for it, or do it."""
        kind, _, name = choice.id.partition(":")
        match f"{kind}:":
            case "value:":
                self.app.push_screen(screens.ValueFormScreen(self.session, self.entry, name))
            case "back:":
                below = self.entry.values[name].replaces if name in self.entry.values else None
                rule = below.by_rule.id if below is not None and below.by_rule is not None else ""
                preview(self.heelclear, ChangeRequest(RemoveValue(self.entry.id, name, rule)))
            case "measure:":
                self._measure(name)
            case "text:":
                self.app.push_screen(screens.TextsForm(self.session, self.entry, name))
            case _:
                self._do(name)

    def _measure(self, key: str) -> None:
        """Open what a guess is measured with: the calculation that tells it, else the form for what is read off a tool."""
        if key in TOLD:
            self.heelclear.measure(self.entry, key)
            return
        place = f"measured on {date.today():%Y-%m-%d}"
        self.app.push_screen(screens.ValueFormScreen(self.session, self.entry, key, place))

    def _do(self, name: str) -> None:
        match name:
            case "notes":
                write_notes(self.heelclear, self.entry)
            case "copy":
                self.app.push_screen(screens.CopyForm(self.session, self.entry))
            case "rename":
                self.app.push_screen(screens.RenameForm(self.session, self.entry))
            case "remove":
                preview(self.heelclear, ChangeRequest(RemoveEntry(self.entry.id)))
            case "setup":
                self._open_setup()
            case "troubles":
                book = self.session.book
                family = book.families.get(self.entry.family) if book is not None else None
                title = family.title if family is not None else ""
                self.app.push_screen(screens.opened_by(action("troubles"))(self.session, title))
            case "editor":
                self._open_editor()
            case _:
                self._show_history()

    def _open_setup(self) -> None:
        book = self.session.book
        setup = for_entry(book, self.entry) if book is not None else None
        if setup is not None:
            screens.open_form(self.heelclear, "setup", setup.id)
        else:
            self.app.push_screen(screens.opened_by(action("setups"))(self.session))

    def _show_history(self) -> None:
        app, entry = self.heelclear, self.entry

        def show(revisions: Sequence[Revision]) -> None:
            app.push_screen(screens.EntryHistoryScreen(self.session, entry, revisions))

        app.background.begin(
            "Asking git for the history.",
            lambda: app.git_service.history(entry.id),
            show,
            elsewhere="The history is here; ask for it again.",
        )

    def _open_editor(self) -> None:
        if self.entry.layer == "shop":
            open_file(self.heelclear, self.entry.place)
        else:
            self.say(
                "The shop's book has no line of this entry yet, and the file that came with the program is never changed. "
                "Change a value or the notes here, or copy the entry; then there is something of yours to open."
            )


def _measured(key: str) -> str:
    told = f"The book's {_title(key).lower()} is from memory; a new tool of the same kind tells a better one."
    return told if key in TOLD else f"{told} {QUANTITIES[key].measured}"


def _title(key: str) -> str:
    return QUANTITIES[key].title


def _said(value: Value) -> str:
    layer = "the shop" if value.layer == "shop" else "shipped"
    by = f", {value.by_rule.in_words}" if value.by_rule is not None else ""
    return f"{span(value)}; {layer}{by}. Enter changes it{' for this tool alone' if by else ''}."


def _what_comes_back(value: Value) -> str:
    if value.replaces is None:
        return "Takes the shop's value out; nothing is shipped in its place."
    if value.replaces.by_rule is not None:
        back = f"{span(value.replaces)} comes back, {value.replaces.by_rule.in_words}"
        return f"Takes the shop's {span(value)} out; {back}."
    return f"Takes the shop's {span(value)} out; the shipped {span(value.replaces)} comes back."
