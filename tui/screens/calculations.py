"""The calculations that serve a family of tools."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from geometry.calculations import calculation
from library.search.of_calculations import other_words
from tui.screens.chooser import Choice, Chooser

if TYPE_CHECKING:
    from geometry.calculation import Calculation
    from library.book.model import Entry
    from tui.session import Session


class CalculationsScreen(Chooser):
    """Title and question of each calculation; Enter opens it."""

    WHERE = "calculations"
    NAME_WIDTH = 46

    def __init__(
        self, session: Session, entry: Entry, chosen: str, open_it: Callable[[Calculation], None]
    ) -> None:
        super().__init__(session)
        self.entry = entry
        self._open = open_it
        self._sheets = session.calculators.serving.all_of(entry, chosen)
        self._choices = [Choice(one.name, one.title, one.question, other_words(one)) for one in self._sheets]
        names = [choice.id for choice in self.choices()]
        self.view.count = len(names)
        self.view.chosen = names.index(chosen)

    def title_text(self) -> str:
        """What they are for."""
        return f"Calculations for {self.entry.title}"

    def choices(self) -> list[Choice]:
        """The calculations of the family, found too by what they ask for and answer."""
        return self._choices

    def take(self, choice: Choice) -> None:
        """Go back to the calculator with it."""
        self._open(calculation(choice.id))
        self.app.pop_screen()
