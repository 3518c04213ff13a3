"""One recommended value of an entry, to be changed in the shop's own book."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.quantities import quantity
from library.drafts.draft import Draft
from library.editing.changes import SetValue
from library.editing.checking import FIELDS, as_written, complaints
from library.units.grammar import example
from tui.screens.form import FormScreen
from tui.view.text_form import Blank, TextForm

if TYPE_CHECKING:
    from library.book.model import Entry, Measure, Value
    from library.editing.changes import Change
    from tui.session import Session


class ValueFormScreen(FormScreen):
    """Range, source and note of one quantity."""

    NUMBERS = ("low", "usual", "high")

    def __init__(self, session: Session, entry: Entry, key: str) -> None:
        super().__init__(session, TextForm(blanks(key), texts_of(entry.values.get(key))))
        self.entry = entry
        self.key = key

    def title_text(self) -> str:
        """The quantity and the entry."""
        return f"Change {quantity(self.key).title.lower()}: {self.entry.title}"

    def typed(self, text: str) -> None:
        """Type into the line in hand."""
        super().typed(text)
        self._own_it()

    def edited(self, key: str) -> None:
        """Edit the line in hand."""
        super().edited(key)
        self._own_it()

    def _own_it(self) -> None:
        """Name the shop as the source of a number that somebody changed: the old source never said it."""
        started, now = self.form.started, self.form.values()
        is_old = (now["source"], now["place"]) == (started["source"], started["place"])
        if is_old and any(now.get(key) != started.get(key) for key in self.NUMBERS):
            self.form.fill({"source": "shop", "place": ""})
            self.form.wrong = self.complaints()

    def complaints(self) -> dict[str, str]:
        """What the reader of the book will say of it."""
        book = self.session.book
        if book is None:
            return {}
        found = complaints(book, self.entry.id, self.entry.family, self.key, self.form.values())
        return {key if key in FIELDS else "": text for key, text in found.items()}

    def change(self) -> Change | None:
        """The fields that are different now."""
        written, old = as_written(self.key, self.form.values()), as_written(self.key, self.form.started)
        fields = {field: written.get(field) for field in FIELDS if written.get(field) != old.get(field)}
        return SetValue(self.entry.id, self.key, fields) if fields else None

    def draft(self) -> Draft:
        """What was typed."""
        return Draft("value", f"{self.entry.id}.{self.key}", self.form.values(), self.form.started)


def blanks(key: str) -> tuple[Blank, ...]:
    """The lines of the form for a quantity."""
    row = quantity(key)
    source = (
        "Where it comes from: shop (decided or measured here), common practice, from memory, or the id of a source "
        "of the book."
    )
    last = (
        Blank("source", "Source", source, overtype=True),
        Blank("place", "Place in it", "Chapter, section, table or page, where a published source is named."),
        Blank("note", "Note", "A remark on this value, on one line."),
    )
    if row.choices:
        return (
            Blank(
                "usual", "Usual", f"One of: {', '.join(row.choices)}. Left and Right change it.", row.choices
            ),
            *last,
        )
    written = f"Such as {example(row.kind)}. {row.measured}"
    return (
        Blank("low", "Least", written, overtype=True),
        Blank("usual", "Usual", f"What to take first. {written}", overtype=True),
        Blank("high", "Most", written, overtype=True),
        *last,
    )


def texts_of(value: Value | None) -> dict[str, str]:
    """A value of the book as the texts of the form."""
    if value is None:
        return {"source": "shop"}
    citation = value.citation
    source = citation.document if citation.label == "published" else citation.label
    return {
        "low": _text(value.low),
        "usual": _text(value.usual),
        "high": _text(value.high),
        "source": "" if source == "missing" else source,
        "place": citation.place,
        "note": value.note,
    }


def _text(measure: Measure | None) -> str:
    return measure.text if measure is not None else ""
