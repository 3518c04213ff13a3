"""One recommended value of an entry, to be changed in the shop's own book."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import TYPE_CHECKING

from geometry.quantities import quantity
from library.cards.bare_numbers import with_its_unit
from library.drafts.draft import Draft
from library.editing.changes import SetValue
from library.editing.checking import FIELDS, as_it_stands, as_written, complaints
from library.editing.form_words import as_in_a_form
from library.issue import Issue
from library.units.grammar import example
from tui.screens.form import FormScreen
from tui.view.text_form import Blank, TextForm

if TYPE_CHECKING:
    from library.book.model import Entry, Measure, Value
    from library.editing.changes import Change
    from tui.session import Session


class ValueFormScreen(FormScreen):
    """Range, source and note of one quantity.

    Args:
        session: has the book.
        entry: that the value belongs to.
        key: the quantity.
        place: what stands beside the shop as the source of a number that is typed here, such as the day of measuring.
    """

    NUMBERS = ("low", "usual", "high")

    def __init__(self, session: Session, entry: Entry, key: str, place: str = "") -> None:
        super().__init__(session)
        self.entry = entry
        self.key = key
        self._place = place
        self.form = TextForm(blanks(key), self.current())
        self.form.focus = "usual"
        self._gone: dict[str, str] = {}
        self.form.fill(self._measured())

    def _measured(self) -> dict[str, str]:
        """What stands from the beginning where the value is measured now: the shop as the source, and no limits of another."""
        if not self._place:
            return {}
        return {"source": "shop", "place": self._place, "note": "", "low": "", "high": ""}

    def _start_over(self) -> None:
        super()._start_over()
        self._gone = {}
        self.form.fill(self._measured())

    def title_text(self) -> str:
        """The quantity and the entry."""
        return f"Change {quantity(self.key).title.lower()}: {self.entry.title}"

    def words(self) -> tuple[str, ...]:
        """The quantity, for the help."""
        return (self.key,)

    def current(self) -> Mapping[str, str]:
        """The value as the book has it; where a part of it cannot be read, as it stands in its file."""
        value = self.entry.values.get(self.key)
        if value is not None and self._mistake() is not None:
            return as_it_stands(value, self.entry.id)
        return texts_of(value)

    def _mistake(self) -> Issue | None:
        """What the book has to say against the value, if anything."""
        spot = f"{self.entry.id}.{self.key}"
        findings = self.session.book.findings if self.session.book is not None else ()
        return next((one for one in findings if f"{one.way}.".startswith(f"{spot}.")), None)

    def on_mount(self) -> None:
        """Say what is wrong with the value in its file, if anything."""
        super().on_mount()
        mistake = self._mistake()
        if mistake is not None and not self.said:
            where = f"{mistake.place.file.name}, line {mistake.place.line}"
            self.say(f"In {where}: {mistake.wrong} {mistake.fix}")

    def look_over(self) -> None:
        """Name the shop as the source of a number that somebody changed: the old source never said it.

        What else that source said goes with it: its remark, and the range round a usual value that is another now.
        """
        now, started = self.form.values(), self.form.started
        in_hand = self.form.focus
        if in_hand in self.NUMBERS:
            is_other = now[in_hand].strip() != started[in_hand].strip()
            measured = self._measured()
            is_old = all(now[key] == measured.get(key, started[key]) for key in SAID)
            if is_other and is_old and started["source"] != "shop":
                ends = [key for key in self._ends(in_hand) if started[key] and now[key] == started[key]]
                self._gone = {**dict.fromkeys(ends, ""), "source": "shop", "place": self._place, "note": ""}
                self.form.fill(self._gone)
            elif self._gone and self._has_the_numbers_of_the_book(now):
                back = [key for key, text in self._gone.items() if now[key] == text]
                self.form.fill({key: measured.get(key, started[key]) for key in back})
                self._gone = {}
        super().look_over()

    def _has_the_numbers_of_the_book(self, now: Mapping[str, str]) -> bool:
        """Whether every number is the book's again, but for those that went with another one and were not typed since."""
        started = self.form.started
        went = {key for key, text in self._gone.items() if now[key] == text}
        return all(
            key in went or now[key].strip() == started[key].strip() for key in self.NUMBERS if key in now
        )

    def _ends(self, in_hand: str) -> tuple[str, ...]:
        """The ends of the range round the usual value, where that is in hand."""
        return ("low", "high") if in_hand == "usual" and "low" in self.form.typed else ()

    def besides(self) -> str:
        """What went with the old source, where anything did."""
        started = self.form.started
        if self._place and (started.get("low") or started.get("high")):
            return "Type here what was measured. The range of the old source went with it, as nobody measured that."
        ends = [key for key in self._gone if key in self.NUMBERS]
        went = [*(["its range"] if ends else []), *(["its remark"] if self._gone and started["note"] else [])]
        numbers = "numbers" if "low" in self.form.typed else "number"
        told = f"{' and '.join(went)} went with the old one, and {'come' if len(went) > 1 else 'comes'} back with its {numbers}."
        return f"The source is the shop now; {told}" if went else ""

    def complaints(self) -> dict[str, str]:
        """What the reader of the book will say of it."""
        book = self.session.book
        if book is None:
            return {}
        found = complaints(book, self.entry.id, self.entry.family, self.key, self.values())
        return {self._line_of(key, text): _by_label(text, self.key) for key, text in found.items()}

    def _line_of(self, key: str, text: str) -> str:
        """The line under which a complaint stands; a source that is missing is missed on its own."""
        if not key and "has no source" in text:
            return "source"
        return key if key in self.form.typed else ""

    def values(self) -> dict[str, str]:
        """What stands in the form, a number without a unit in that of lengths that is worked in, or in degrees."""
        typed, display = self.form.values(), self.session.display
        return typed | {
            key: with_its_unit(self.key, typed[key].strip(), display)
            for key in self.NUMBERS
            if typed.get(key)
        }

    def change(self) -> Change | None:
        """The fields that are different now."""
        written, old = as_written(self.key, self.values()), self.began()
        fields = {field: written.get(field) for field in FIELDS if written.get(field) != old.get(field)}
        value = self.entry.values.get(self.key)
        rule = value.by_rule.id if value is not None and value.by_rule is not None else ""
        if (
            value is not None
            and value.bands
            and value.layer == "shipped"
            and fields.keys() & set(self.NUMBERS)
        ):
            fields["bands"] = None  # A number of the shop's own is for every size.
        if value is not None and value.citation.speaks_of and "source" in fields:
            fields["speaks_of"] = None  # The new source never spoke of that.
        return SetValue(self.entry.id, self.key, fields, rule) if fields else None

    def began(self) -> Mapping[str, object]:
        """The value as it was when the person began."""
        return as_written(self.key, self.form.started)

    def draft(self) -> Draft:
        """What was typed."""
        return Draft(
            "value",
            f"{self.entry.id}.{self.key}",
            self.form.values(),
            dict(self.form.started),
            units=self.session.display.lengths,
        )

    def book_changed(self) -> None:
        """Take the entry as it is in the book now."""
        self.entry = self.session.entry(self.entry.id) or self.entry
        super().book_changed()


LABELS = {"low": "Min.", "usual": "Usual", "high": "Max."}
"""What the ends of a range are called on the form."""

SAID = ("source", "place", "note")
"""What belongs to a number as its source said it."""

_END = re.compile(r"\b(low|usual|high)\b(?= is ['\"]|, which is)")

_OTHERWISE = {
    "This value has neither low, usual nor high. Give one of them.": "There is no value yet. Fill in a line above.",
    "Give low and high instead.": "Give Min. and Max. instead.",
}
"""What the reader says of a file, and how it is said on the form."""


def _by_label(text: str, key: str) -> str:
    """What the reader of the book says of a quantity, it and the ends of its range called as on the form."""
    for said, otherwise in _OTHERWISE.items():
        text = text.replace(said, otherwise)
    if text.startswith(f"{key} is "):
        text = f"{quantity(key).title}{text.removeprefix(key)}"
    return as_in_a_form(_END.sub(lambda found: LABELS[found[1]], text))


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
        turned = f"One of: {', '.join(row.choices)}. Left and Right change it."
        return (Blank("usual", "Usual", turned, row.choices), *last)
    written = f"Such as {example(row.kind)}. {row.measured}"
    return (
        Blank("low", LABELS["low"], written, overtype=True),
        Blank("usual", LABELS["usual"], f"What to take first. {written}", overtype=True),
        Blank("high", LABELS["high"], written, overtype=True),
        *last,
    )


def texts_of(value: Value | None) -> dict[str, str]:
    """A value of the book as the texts of the form; empty where the book has none."""
    if value is None:
        return {}
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
