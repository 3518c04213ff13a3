"""Forms for whole tables of the book: a new entry, a copy, another id, a new family, and the texts of an entry."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from library.drafts.draft import Draft
from library.editing.changes import AddEntry, AddFamily, CopyEntry, RenameEntry, SetText
from tui.screens.form import FormScreen
from tui.view.text_form import Blank, TextForm

if TYPE_CHECKING:
    from library.book.model import Entry
    from library.editing.changes import Change
    from tui.session import Session

_ID = re.compile(r"[a-z0-9]+(?:-[a-z0-9]+)*")
_ID_BLANK = Blank("id", "Id", "Its name in the files and in commands: small letters, digits and hyphens.")
_TITLE_BLANK = Blank("title", "Title", "As it is shown in the list.")


class TableForm(FormScreen):
    """A form with an id that nothing else may have yet."""

    NAME = ""
    TAKEN_BY = "entry"

    def title_text(self) -> str:
        """What the form is for."""
        return self.NAME

    def complaints(self) -> dict[str, str]:
        """An id that cannot be, or that is taken; a line that must not be empty."""
        found = {
            blank.key: "This line must not be empty."
            for blank in self.form.blanks
            if blank.key in self.needed() and not self.value(blank.key)
        }
        name = self.value("id")
        if name and not _ID.fullmatch(name):
            found["id"] = "An id has small letters, digits and hyphens only, such as gun-tap-bronze."
        elif name and name in self._taken():
            found["id"] = f"There is {self.TAKEN_BY} {name} already. Give it another id."
        return found

    def needed(self) -> tuple[str, ...]:
        """The lines that must be filled in."""
        return ("id", "title")

    def value(self, key: str) -> str:
        """What stands in a line."""
        return self.form.values().get(key, "").strip()

    def _taken(self) -> set[str]:
        book = self.session.book
        if book is None:
            return set()
        return set(book.families if self.TAKEN_BY == "family" else book.entries)

    def about(self) -> str:
        """What a draft of it is about."""
        return self.NAME

    def draft(self) -> Draft:
        """What was typed."""
        return Draft("table", self.about(), self.form.values(), self.form.started)


class NewEntryForm(TableForm):
    """A new entry of the shop's own."""

    NAME = "New entry"

    def __init__(self, session: Session, family: str = "") -> None:
        families = tuple(session.book.families) if session.book is not None else ()
        lines = (
            Blank("family", "Family", f"One of: {', '.join(families)}. Left and Right change it.", families),
            _TITLE_BLANK,
            _ID_BLANK,
            Blank(
                "work_material", "Work material", "What it cuts; a material of the book, or your own words."
            ),
        )
        super().__init__(session, TextForm(lines, {"family": family or (families[0] if families else "")}))

    def typed(self, text: str) -> None:
        """Type; the id follows the title until somebody types one."""
        follows = self.value("id") == _id_of(self.value("title"))
        super().typed(text)
        self._let_id_follow(follows)

    def edited(self, key: str) -> None:
        """Edit; the id follows the title until somebody types one."""
        follows = self.value("id") == _id_of(self.value("title"))
        super().edited(key)
        self._let_id_follow(follows)

    def _let_id_follow(self, follows: bool) -> None:
        if follows and self.form.blank.key == "title":
            self.form.fill({"id": _id_of(self.value("title"))})
            self.form.wrong = self.complaints()

    def change(self) -> Change | None:
        """Add it."""
        material = self.value("work_material")
        content = {"work_material": material} if material else {}
        return AddEntry(self.value("id"), self.value("family"), self.value("title"), content)


class CopyForm(TableForm):
    """A copy of an entry under a new id."""

    NAME = "Copy of an entry"

    def __init__(self, session: Session, entry: Entry) -> None:
        lines = (_TITLE_BLANK, _ID_BLANK)
        super().__init__(session, TextForm(lines, {"title": entry.title, "id": f"{entry.id}-ours"}))
        self.entry = entry

    def about(self) -> str:
        """Which form, and of which entry."""
        return f"{self.NAME}.{self.entry.id}"

    def change(self) -> Change | None:
        """Copy it."""
        return CopyEntry(self.entry.id, self.value("id"), self.value("title"))


class RenameForm(TableForm):
    """Another id for one of the shop's own entries."""

    NAME = "Another id"

    def __init__(self, session: Session, entry: Entry) -> None:
        super().__init__(session, TextForm((_ID_BLANK,), {"id": entry.id}))
        self.entry = entry

    def about(self) -> str:
        """Which form, and of which entry."""
        return f"{self.NAME}.{self.entry.id}"

    def needed(self) -> tuple[str, ...]:
        """The id alone."""
        return ("id",)

    def _taken(self) -> set[str]:
        return super()._taken() - {self.entry.id}

    def change(self) -> Change | None:
        """Rename it."""
        return RenameEntry(self.entry.id, self.value("id")) if self.form.is_changed() else None


class NewFamilyForm(TableForm):
    """A new family of tools."""

    NAME = "New family"
    TAKEN_BY = "family"

    def __init__(self, session: Session) -> None:
        lines = (
            _TITLE_BLANK,
            _ID_BLANK,
            Blank("what", "What it is", "What these tools are, in a sentence or two."),
        )
        super().__init__(session, TextForm(lines, {}))

    def change(self) -> Change | None:
        """Add it."""
        what = self.value("what")
        return AddFamily(self.value("id"), self.value("title"), {"what": what} if what else {})


TEXTS = {
    "title": "Title",
    "work_material": "Work material",
    "synonyms": "Other words",
    "cautions": "Cautions",
}
"""The texts of an entry that are changed on one line; notes are changed in an editor."""

_LISTS = ("synonyms", "cautions")


class TextsForm(TableForm):
    """One text of an entry."""

    def __init__(self, session: Session, entry: Entry, key: str) -> None:
        hint = "Parted by commas." if key in _LISTS else ""
        super().__init__(session, TextForm((Blank(key, TEXTS[key], hint),), {key: _text_of(entry, key)}))
        self.entry = entry
        self.key = key

    def title_text(self) -> str:
        """What is changed, and of which entry."""
        return f"Change {TEXTS[self.key].lower()}: {self.entry.title}"

    def needed(self) -> tuple[str, ...]:
        """A title must be there; the others may be empty."""
        return ("title",)

    def complaints(self) -> dict[str, str]:
        """Cautions must be in the book."""
        found = super().complaints()
        book = self.session.book
        if self.key == "cautions" and book is not None:
            unknown = [name for name in _parted(self.value("cautions")) if name not in book.cautions]
            if unknown:
                found["cautions"] = (
                    f"The book has no caution {unknown[0]}; it has {', '.join(book.cautions)}."
                )
        return found

    def change(self) -> Change | None:
        """Set it."""
        if not self.form.is_changed():
            return None
        text = self.value(self.key)
        return SetText(self.entry.id, self.key, _parted(text) if self.key in _LISTS else text)

    def draft(self) -> Draft:
        """What was typed."""
        return Draft("text", f"{self.entry.id}.{self.key}", self.form.values(), self.form.started)


FORMS_OF_THE_BOOK: Mapping[str, Callable[[Session], FormScreen]] = {
    form.NAME: form for form in (NewEntryForm, NewFamilyForm)
}
"""Forms that are about nothing that is there yet, by name."""

FORMS_OF_AN_ENTRY: Mapping[str, Callable[[Session, Entry], FormScreen]] = {
    form.NAME: form for form in (CopyForm, RenameForm)
}
"""Forms that are about an entry as a whole, by name."""


def _text_of(entry: Entry, key: str) -> str:
    value = getattr(entry, key)
    return value if isinstance(value, str) else ", ".join(value)


def _parted(text: str) -> list[str]:
    return [part.strip() for part in text.split(",") if part.strip()]


def _id_of(title: str) -> str:
    return "-".join(re.findall(r"[a-z0-9]+", title.casefold()))
