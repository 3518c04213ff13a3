"""Forms for whole tables of the book: a new entry, a copy, another id, a new family."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from itertools import count
from typing import TYPE_CHECKING

from geometry.surfaces import SURFACES
from library.drafts.draft import Draft
from library.editing.changes import AddEntry, AddFamily, CopyEntry, RenameEntry
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
    NEEDED: tuple[str, ...] = ("id", "title")
    ID_FOLLOWS = True
    """Whether the id follows the title until somebody types one."""

    def __init__(self, session: Session, blanks: tuple[Blank, ...], started: Mapping[str, str]) -> None:
        super().__init__(session)
        self._started = started
        self._title = started.get("title", "")
        self.form = TextForm(blanks, started)

    def title_text(self) -> str:
        """What the form is for."""
        return self.NAME

    def current(self) -> Mapping[str, str]:
        """What it is opened with."""
        return self._started

    def value(self, key: str) -> str:
        """What stands in a line."""
        return self.form.values().get(key, "").strip()

    def look_over(self) -> None:
        """Let the id follow the title, and look at both."""
        follows = self.ID_FOLLOWS and self.value("id") == id_of(self._title)
        if follows and self.form.focus == "title":
            self.form.fill({"id": id_of(self.value("title"))})
        self._title = self.value("title")
        super().look_over()

    def complaints(self) -> dict[str, str]:
        """An id that cannot be, or that is taken; a line that must not be empty."""
        found = {key: "This line must not be empty." for key in self.NEEDED if not self.value(key)}
        name = self.value("id")
        if name and not _ID.fullmatch(name):
            found["id"] = "An id has small letters, digits and hyphens only, such as gun-tap-bronze."
        elif name and self.is_taken(name):
            found["id"] = f"There is {_a(self.TAKEN_BY)} {name} already. Give this one another id."
        return found

    def is_taken(self, name: str) -> bool:
        """Whether something of the book has the id."""
        return _is_taken(self.session, self.TAKEN_BY, name)

    def about(self) -> str:
        """What a draft of it is about."""
        return self.NAME

    def draft(self) -> Draft:
        """What was typed."""
        return Draft(
            "table",
            self.about(),
            self.form.values(),
            dict(self.form.started),
            units=self.session.display.lengths,
        )


class NewEntryForm(TableForm):
    """A new entry of the shop's own."""

    NAME = "New entry"
    NEEDED = ("family", "id", "title")

    def __init__(self, session: Session, family: str = "") -> None:
        families = tuple(session.book.families) if session.book is not None else ()
        lines = (
            Blank("family", "Family", f"One of: {', '.join(families)}. Left and Right change it.", families),
            _TITLE_BLANK,
            _ID_BLANK,
            Blank("work_material", "Work material", hint_of_materials(session)),
        )
        chosen = family if family in families else next(iter(families), "")
        super().__init__(session, lines, {"family": chosen})

    def change(self) -> Change | None:
        """Add it."""
        material = self.value("work_material")
        content = {"work_material": material} if material else {}
        return AddEntry(self.value("id"), self.value("family"), self.value("title"), content)


class NewFamilyForm(TableForm):
    """A new family of tools."""

    NAME = "New family"
    TAKEN_BY = "family"

    def __init__(self, session: Session) -> None:
        families = tuple(session.book.families) if session.book is not None else ()
        lines = (
            _TITLE_BLANK,
            _ID_BLANK,
            Blank("what", "What it is", "What these tools are, in a sentence or two."),
            Blank("like", "Ground like", f"One of: {', '.join(families)}. Left and Right change it. Calculations, cautions "
                  "and the order of work are then those of that family.", ("", *families)),
            Blank("surfaces", "Surfaces", f"Those that are relieved, mostly ground first: {', '.join(SURFACES)}. "
                  "Where they are ground like no other, these say which calculations there are."),
        )  # fmt: skip
        super().__init__(session, lines, {})

    def complaints(self) -> dict[str, str]:
        """A surface that there is not, besides what any table may have wrong."""
        odd = [one for one in self._surfaces() if one not in SURFACES]
        wrong = {"surfaces": f"There is no surface {odd[0]}; there are {', '.join(SURFACES)}."} if odd else {}
        return super().complaints() | wrong

    def change(self) -> Change | None:
        """Add it."""
        said = {"like": self.value("like"), "surfaces": self._surfaces(), "what": self.value("what")}
        return AddFamily(
            self.value("id"), self.value("title"), {key: one for key, one in said.items() if one}
        )

    def _surfaces(self) -> list[str]:
        return self.value("surfaces").replace(",", " ").split()


class OfAnEntry(TableForm):
    """A form about an entry that is there already."""

    ID_FOLLOWS = False

    def __init__(
        self, session: Session, entry: Entry, blanks: tuple[Blank, ...], started: Mapping[str, str]
    ) -> None:
        super().__init__(session, blanks, started)
        self.entry = entry

    def title_text(self) -> str:
        """What the form is for, and the entry."""
        return f"{self.NAME}: {self.entry.title}"

    def about(self) -> str:
        """Which form, and of which entry."""
        return f"{self.NAME}.{self.entry.id}"


class CopyForm(OfAnEntry):
    """A copy of an entry under a new id."""

    NAME = "Copy of an entry"

    def __init__(self, session: Session, entry: Entry) -> None:
        names = (f"{entry.id}-ours{'' if number == 1 else f'-{number}'}" for number in count(1))
        free = next(name for name in names if not _is_taken(session, "entry", name))
        super().__init__(session, entry, (_TITLE_BLANK, _ID_BLANK), {"title": entry.title, "id": free})

    def change(self) -> Change | None:
        """Copy it."""
        rules = {key: one.by_rule.id for key, one in self.entry.values.items() if one.by_rule is not None}
        return CopyEntry(self.entry.id, self.value("id"), self.value("title"), rules)


class RenameForm(OfAnEntry):
    """Another id for one of the shop's own entries."""

    NAME = "Another id"
    NEEDED = ("id",)

    def __init__(self, session: Session, entry: Entry) -> None:
        super().__init__(session, entry, (_ID_BLANK,), {"id": entry.id})

    def is_taken(self, name: str) -> bool:
        """Its own id is no other's."""
        return name != self.entry.id and super().is_taken(name)

    def change(self) -> Change | None:
        """Rename it."""
        return RenameEntry(self.entry.id, self.value("id")) if self.form.is_changed() else None


FORMS_OF_THE_BOOK: Mapping[str, Callable[[Session], FormScreen]] = {
    form.NAME: form for form in (NewEntryForm, NewFamilyForm)
}
"""Forms that are about nothing that is there yet, by name."""

FORMS_OF_AN_ENTRY: Mapping[str, Callable[[Session, Entry], FormScreen]] = {
    form.NAME: form for form in (CopyForm, RenameForm)
}
"""Forms that are about an entry as a whole, by name."""


def hint_of_materials(session: Session) -> str:
    """What may stand in a line for the work material."""
    names = ", ".join(session.book.materials) if session.book is not None else ""
    return f"What it cuts: {names}; or your own words." if names else "What it cuts, in your own words."


def id_of(title: str) -> str:
    """The id that goes well with a title.

    Example:
        >>> id_of("Tap for 5/8-11, bronze")
        'tap-for-5-8-11-bronze'
    """
    return "-".join(re.findall(r"[a-z0-9]+", title.casefold()))


def _is_taken(session: Session, kind: str, name: str) -> bool:
    book = session.book
    return book is not None and name in (book.families if kind == "family" else book.entries)


def _a(noun: str) -> str:
    return f"{'an' if noun[0] in 'aeiou' else 'a'} {noun}"
