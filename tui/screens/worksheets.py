"""The calculations that serve a family of tools."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from geometry.worksheets import worksheet
from tui.screens.chooser import Choice, Chooser
from tui.session import sheets_for

if TYPE_CHECKING:
    from geometry.worksheet import Worksheet
    from library.book.model import Entry
    from tui.session import Session


class WorksheetsScreen(Chooser):
    """Title and question of each calculation; Enter opens it."""

    WHERE = "worksheets"
    NAME_WIDTH = 46

    def __init__(
        self, session: Session, entry: Entry, chosen: str, open_it: Callable[[Worksheet], None]
    ) -> None:
        super().__init__(session)
        self.entry = entry
        self._open = open_it
        names = [choice.id for choice in self.choices()]
        self.view.count = len(names)
        self.view.chosen = names.index(chosen)

    def title_text(self) -> str:
        """What they are for."""
        return f"Calculations for {self.entry.title}"

    def choices(self) -> list[Choice]:
        """The worksheets of the family."""
        return [Choice(sheet.name, sheet.title, sheet.question) for sheet in sheets_for(self.entry.family)]

    def take(self, choice: Choice) -> None:
        """Go back to the calculator with it."""
        self._open(worksheet(choice.id))
        self.app.pop_screen()
