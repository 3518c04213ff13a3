"""Forms for tables of the book that are no entries: machines, wheels, set-ups, troubles, threads; new ones, and those there."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from library.drafts.draft import Draft
from library.editing.changes import SetTable
from library.editing.document import EditRefused
from library.editing.typed_tables import SOURCE, TABLES, as_typed, as_written, changed, complaints
from library.equipment.model import machines, wheels
from library.threads.reading import all_threads
from tui.screens.table_forms import TableForm
from tui.view.table_blanks import NOUNS, blanks_for

if TYPE_CHECKING:
    from library.editing.changes import Change
    from tui.app import Heelclear
    from tui.session import Session

EQUIPMENT = ("machine", "wheel")
"""Tables of the equipment of a shop, whose drafts have a kind of their own."""

_OF_A_VALUE = re.compile(r"^[A-Z][^'.:]*? is (?=-?\d)")
"""Begins what is said of a value by the name of its quantity, of which several lines may be, each under its own."""

DRAFTS = ("equipment", "own-table")
"""The kinds of drafts of these forms."""


class OwnTableForm(TableForm):
    """One table: what differs from what is there is written into the shop's own files, over what came with the program.

    Args:
        session: has the book.
        array: the kind of table.
        name: its id; empty for a new one.
        table: its keys as the files have them; none for a new one, and for a standard thread that the shop says nothing of.
        shipped: its keys as they came with the program.
        then: takes the id of the table once it is saved.
    """

    def __init__(
        self,
        session: Session,
        array: str,
        name: str = "",
        table: Mapping[str, object] | None = None,
        shipped: Mapping[str, object] | None = None,
        then: Callable[[str], None] = lambda name: None,
    ) -> None:
        self._then = then
        self.array, self.own_id, self.noun = array, name, NOUNS[array]
        self.ID_FOLLOWS = not name
        self.TAKEN_BY = self.noun
        self._shipped = as_typed(array, shipped or {})
        self._named: set[str] = set()
        lines = blanks_for(array, session.book, name)
        super().__init__(session, lines, self._texts(table or {}))

    def _texts(self, table: Mapping[str, object]) -> dict[str, str]:
        texts = {**as_typed(self.array, table), "id": self.own_id}
        return {one.key: texts.get(one.key, "") for one in blanks_for(self.array, None, self.own_id)}

    def title_text(self) -> str:
        """What it is, and whether it is new."""
        return f"Change the {self.noun} {self.own_id}" if self.own_id else f"New {self.noun}"

    @property
    def NEEDED(self) -> tuple[str, ...]:  # type: ignore[override]
        """Lines that must not be empty; a standard thread has its title already."""
        covers = self.own_id and self.array == "thread"
        return () if covers else ("title",) if self.own_id else ("title", "id")

    def current(self) -> Mapping[str, str]:
        """The lines as the files have them now."""
        if not self.own_id or not self.is_attached:
            return self._started
        try:
            table = self.heelclear.book_service.table(self.array, self.own_id)
        except EditRefused:
            return self._started
        return self._texts(table or {})

    def look_over(self) -> None:
        """Name the shop as the source of words that somebody changed: the old source never said them."""
        key = self.form.focus
        if TABLES[self.array].get(key) == "told":
            self._name_the_shop(key, key + SOURCE)
        elif self.array == "thread" and key not in ("id", "title", "source", "place", "note"):
            self._name_the_shop(key, "source")
        super().look_over()

    def _name_the_shop(self, key: str, source: str) -> None:
        now, started = self.form.values(), self.form.started
        is_other = now[key].strip() != started[key].strip()
        if is_other and now[key].strip() and now[source] == started[source]:
            self.form.fill({source: "shop"})
            self._named.add(source)
        elif source in self._named and now[source] == "shop" and not now[key].strip():
            self.form.fill({source: ""})
        elif source in self._named and not is_other:
            self.form.fill({source: started[source]})
            self._named.discard(source)

    def complaints(self) -> dict[str, str]:
        """What the reader of the book will say of it, besides what any table may have wrong."""
        texts = self.form.values()
        found = complaints(self.array, self.own_id or self.value("id"), texts, self.session.book)
        labels = {one.key: one.label for one in self.form.blanks}
        found = {key: _OF_A_VALUE.sub(f"{labels.get(key, 'This')}: ", text) for key, text in found.items()}
        told = {key if key in texts else "": text for key, text in found.items()} | super().complaints()
        return self._emptied() | told

    def _emptied(self) -> dict[str, str]:
        """A line of what came with the program can be changed, and not left out."""
        texts, started = self.form.values(), self.form.started
        return {
            key: "This came with the program: it can be changed, but not left out."
            for key, text in self._shipped.items()
            if text and not key.endswith(SOURCE) and started.get(key) == text and not texts[key].strip()
        }

    def is_taken(self, name: str) -> bool:
        """Whether the book has one of that id."""
        book = self.session.book
        if book is None:
            return False
        known = {"machine": machines(book), "wheel": wheels(book), "thread": all_threads()}
        return name in known.get(self.array, {}) or name in book.more.get(self.array, {})

    def change(self) -> Change | None:
        """The keys that are different now; all of them for a new one."""
        now = self.form.values()
        if not self.own_id:
            return SetTable(self.array, self.value("id"), as_written(self.array, now), is_new=True)
        fields = changed(self.array, now, self.form.started)
        covers = self.array == "thread" and self.own_id in all_threads()
        return SetTable(self.array, self.own_id, fields, covers=covers) if fields else None

    def began(self) -> Mapping[str, object] | None:
        """The lines as they were when the person began."""
        return dict(self.form.started) if self.own_id else None

    def about(self) -> str:
        """Which one it is."""
        return f"{self.array}.{self.own_id}" if self.own_id else f"New {self.array}"

    def _saved(self, draft: Draft) -> None:
        super()._saved(draft)
        self._then(self.own_id or draft.fields["id"].strip())

    def draft(self) -> Draft:
        """What was typed."""
        kind = DRAFTS[0] if self.array in EQUIPMENT else DRAFTS[1]
        return Draft(kind, self.about(), self.form.values(), dict(self.form.started))


def new_form(session: Session, array: str, then: Callable[[str], None] = lambda name: None) -> OwnTableForm:
    """A form for a new table of a kind, the id of which is taken by ``then`` once it is saved."""
    return OwnTableForm(session, array, then=then)


def made_for(app: Heelclear, array: str, name: str) -> OwnTableForm | None:
    """The form of a table as the files have it now; nothing where it is gone.

    Args:
        app: has the shop's book.
        array: the kind of table.
        name: its id; empty for a new one.

    Raises:
        EditRefused: when it stands where it cannot be read, or twice.
    """
    if not name:
        return new_form(app.session, array)
    table = app.book_service.table(array, name)
    if table is None and not (array == "thread" and name in all_threads()):
        return None
    shipped = app.book_service.table(array, name, is_shipped=True)
    return OwnTableForm(app.session, array, name, table, shipped)


def open_form(app: Heelclear, array: str, name: str = "") -> None:
    """Open the form of a table, or an empty one where no id is given; why there is none is said.

    Args:
        app: of the program.
        array: the kind of table.
        name: its id.
    """
    try:
        form = made_for(app, array, name)
    except EditRefused as refused:
        app.say(str(refused))
        return
    if form is None:
        app.say(f"The {NOUNS[array]} {name} is not in the shop's book any more.")
    else:
        app.push_screen(form)


def form_of_draft(app: Heelclear, draft: Draft) -> OwnTableForm | None:
    """The form that a draft of such a table was typed on; nothing where that is gone or cannot be read."""
    array, _, name = draft.about.removeprefix("New ").partition(".")
    try:
        return made_for(app, array, name) if array in TABLES else None
    except EditRefused:
        return None
