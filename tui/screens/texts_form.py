"""One text of an entry, to be changed on one line: title, work material, other words, cautions."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from library.drafts.draft import Draft
from library.editing.changes import SetText
from tui.screens.form import FormScreen, as_text
from tui.screens.table_forms import hint_of_materials
from tui.view.text_form import Blank, TextForm

if TYPE_CHECKING:
    from library.book.model import Entry
    from library.editing.changes import Change
    from tui.session import Session

TEXTS = {
    "title": "Title",
    "work_material": "Work material",
    "synonyms": "Other words",
    "cautions": "Cautions",
}
"""The texts of an entry that are changed on one line; notes are changed in an editor."""

_LISTS = ("synonyms", "cautions")


class TextsForm(FormScreen):
    """One text, or several with commas between them."""

    def __init__(self, session: Session, entry: Entry, key: str) -> None:
        super().__init__(session)
        self.entry = entry
        self.key = key
        self.form = TextForm((Blank(key, TEXTS[key], self._hint()),), self.current())

    def title_text(self) -> str:
        """What is changed, and of which entry."""
        return f"Change {TEXTS[self.key].lower()}: {self.entry.title}"

    def current(self) -> Mapping[str, str]:
        """The text as the book has it."""
        return {self.key: text_of(self.entry, self.key)}

    def _hint(self) -> str:
        match self.key:
            case "title":
                return "As it is shown in the list."
            case "work_material":
                return hint_of_materials(self.session)
            case "synonyms":
                return "Other words that it is found by, with commas between them."
            case _:
                names = ", ".join(self.session.book.cautions) if self.session.book is not None else ""
                return f"With commas between them. The book has: {names}."

    def complaints(self) -> dict[str, str]:
        """A title must be there, and cautions must be in the book."""
        text, book = self.form.values()[self.key].strip(), self.session.book
        if self.key == "title" and not text:
            return {"title": "A title must not be empty."}
        if self.key == "cautions" and book is not None:
            unknown = next((name for name in parted(text) if name not in book.cautions), None)
            if unknown is not None:
                return {"cautions": f"The book has no caution {unknown}; it has {', '.join(book.cautions)}."}
        return {}

    def change(self) -> Change | None:
        """Set it."""
        value = self._value(self.form.values()[self.key])
        return SetText(self.entry.id, self.key, value) if value != self.began()[self.key] else None

    def began(self) -> Mapping[str, object]:
        """The text as it was when the person began."""
        return {self.key: self._value(self.form.started[self.key])}

    def _value(self, text: str) -> str | list[str]:
        return parted(text) if self.key in _LISTS else text.strip()

    def draft(self) -> Draft:
        """What was typed."""
        return Draft(
            "text",
            f"{self.entry.id}.{self.key}",
            self.form.values(),
            dict(self.form.started),
            units=self.session.display.lengths,
        )

    def book_changed(self) -> None:
        """Take the entry as it is in the book now."""
        self.entry = self.session.entry(self.entry.id) or self.entry
        super().book_changed()


def text_of(entry: Entry, key: str) -> str:
    """One text of an entry as a line.

    Example:
        >>> from library.book.model import Entry
        >>> text_of(Entry("a", "tap", "A tap", synonyms=("gun tap", "plug")), "synonyms")
        'gun tap, plug'
    """
    return as_text(getattr(entry, key))


def parted(text: str) -> list[str]:
    """The words between the commas.

    Example:
        >>> parted("gun tap, , plug ")
        ['gun tap', 'plug']
    """
    return [part.strip() for part in text.split(",") if part.strip()]
