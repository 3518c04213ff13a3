"""What the program knows while it runs: the book, the units, and everything that was typed so far."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from library.units.system import METRIC, Display
from tui.keys import Keymap
from tui.theme import Theme, theme
from tui.view.book_page import BookPage, Found

if TYPE_CHECKING:
    from geometry.calculation import Calculation
    from library.book.model import Book, Entry
    from library.book.rows import Rows
    from library.drafts.draft import Draft
    from library.drafts.shelf import Kept
    from tui.view.form import Form, Typed


@dataclass
class Session:
    """One run of the program.

    Attributes:
        theme: how roles are shown on this terminal.
        display: the units that lengths are shown in, and typed in where no unit is given.
        keymap: the keys in force.
        book: the book, once it is read.
        page: the list of the book with its find line.
        units_ready: whether units are loaded, so that writing one costs nothing.
        large_figures: whether the calculator shows its drawings large, in place of the numbers.
        first_start: whether the program was never started here before.
        left_behind: what an earlier run left unsaved.
        wanted: the id of an entry that is to be chosen as soon as the book has it.
    """

    theme: Theme = field(default_factory=theme)
    display: Display = METRIC
    keymap: Keymap = field(default_factory=Keymap)
    book: Book | None = None
    page: BookPage = field(default_factory=BookPage)
    units_ready: bool = False
    large_figures: bool = False
    first_start: bool = False
    left_behind: list[Kept] = field(default_factory=list)
    wanted: str = ""
    _typed: dict[str, Typed] = field(default_factory=dict)
    _forms: dict[tuple[str, str], Form] = field(default_factory=dict)
    _last_sheet: dict[str, str] = field(default_factory=dict)

    def chosen_entry(self) -> Entry | None:
        """The entry that the list points at."""
        row = self.page.chosen
        return self.entry(row.id) if row is not None else None

    def entry(self, name: str) -> Entry | None:
        """An entry by its id; nothing where it is not in the book, or not any more."""
        try:
            return self.book.entries[name] if self.book is not None else None
        except KeyError:
            return None

    def show_wanted(self) -> None:
        """Choose the entry that was just added, where the book has it by now."""
        if self.wanted and self.entry(self.wanted) is not None:
            self.page.reveal(self.wanted)
            self.wanted = ""

    def find(self, rows: Rows, text: str) -> Found:
        """The rows that fit a text with conditions such as ``rake>8``, read in the units that are worked in."""
        from library.search.finding import fitting
        from library.search.query import parse

        query = parse(text, self.display, is_typing=True)
        return Found(fitting(rows, query), " ".join(query.words), " ".join(query.troubles))

    def problem_count(self) -> int:
        """How many problems the book and the user's keys have."""
        return len(self.keymap.problems) + (len(self.book.findings) if self.book is not None else 0)

    def form(self, entry: Entry, sheet: Calculation) -> Form:
        """The form for an entry and a calculation, with all that was typed into it before."""
        from tui.view.form import Form

        self._last_sheet[entry.id] = sheet.name
        key = (entry.id, sheet.name)
        if key not in self._forms:
            self._forms[key] = Form(sheet, entry, self._typed.setdefault(entry.id, {}))
        return self._forms[key]

    def draft(self, entry: Entry) -> Draft:
        """What was typed into the calculator for an entry, to be kept in case the program ends."""
        from library.drafts.draft import Draft

        typed = self._typed.get(entry.id, {})
        return Draft(
            "calculator", entry.id, {key: one.text for key, one in typed.items() if one.text.strip()}
        )

    def sheets_for(self, entry: Entry, opened: str = "") -> list[Calculation]:
        """The calculations that serve an entry's family, those whose main job it is first.

        Args:
            entry: of the book.
            opened: the one in hand; it stays, also where the family has lost it since.
        """
        from geometry.calculations import calculation
        from library.calc.serving import sheets_for

        found = [*sheets_for(self.book.families.get(entry.family) if self.book is not None else None)]
        if opened and opened not in [sheet.name for sheet in found]:
            found.append(calculation(opened))
        return found

    def sheet_for(self, entry: Entry) -> Calculation | None:
        """The calculation to open for an entry: the one used last, else the one most its own."""
        sheets = self.sheets_for(entry)
        last = self._last_sheet.get(entry.id)
        return next((sheet for sheet in sheets if sheet.name == last), sheets[0] if sheets else None)

    def compute(self, form: Form) -> None:
        """Answer a form as it now stands."""
        from library.calc.answer import answer

        form.display = self.display
        for _ in range(2):
            texts = form.texts()
            form.take(answer(form.sheet, texts, entry=form.entry, book=self.book, display=self.display))
            # What was typed for a relief is known only with its surface, which the first answer tells.
            if form.texts() == texts:
                break

    def switch_units(self) -> None:
        """Change between millimetres and inches; what was typed keeps its meaning."""
        old, new = self.display, self.display.other()
        for form in self._forms.values():
            form.switch(old, new, _read)
        self.display = new
        self.page.find_anew()


def _read(text: str, key: str, display: Display) -> float | None:
    from library.calc.fill import reading_of
    from library.units.read import UnitError

    try:
        return reading_of(text, key, display).number
    except UnitError:
        return None
