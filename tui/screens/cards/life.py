"""The life of one physical tool: every card of it, its size each time, and how many sharpenings are left."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.sentences import Kind
from library.cards.history import History
from library.units.show import show
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, wrap
from tui.view.table import table

if TYPE_CHECKING:
    from tui.session import Session


class LifeScreen(Reading):
    """A tool from its first card to its last."""

    WHERE = "life"

    def __init__(self, session: Session, found: History) -> None:
        super().__init__(session)
        self._found = found

    def title_text(self) -> str:
        """Which tool."""
        return f"The life of {self._found.name}"

    def text(self, width: int) -> list[Line]:
        """A row for each sharpening, then what is left."""
        found = self._found
        rows = [
            (
                visit.card.id,
                self._shown(visit.before),
                self._shown(visit.after),
                visit.card.minutes,
                visit.card.result,
            )
            for visit in found.visits
        ]
        lines = [*table(("card", "came with", "left with", "time", "result"), rows), EMPTY]
        if found.size is not None:
            lines += wrap(f"Last measured: {self._shown(found.size)}.", width)
        if found.left is None:
            said = "Sharpenings left: not known. Fill in 'Size lost in sharpening' on a card of this tool."
        else:
            said = f"Sharpenings left: {found.left}, as of card {found.left_as_of}."
        return [*lines, *wrap(said, width, "strong")]

    def _shown(self, value: float | None) -> str:
        return "" if value is None else show(value, Kind.LENGTH, self.session.display)
