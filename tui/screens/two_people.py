"""Two people changed the same thing: base, mine and theirs, and which to keep."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from library.editing.merging import Choice, Conflict, Side
from library.editing.telling import told, words
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from tui.session import Session


class TwoPeopleScreen(Reading):
    """One conflict after the other; nothing is saved before all are answered."""

    WHERE = "two-people"

    def __init__(
        self, session: Session, conflicts: Sequence[Conflict], answered: Callable[[list[Choice]], None]
    ) -> None:
        super().__init__(session)
        self.conflicts = list(conflicts)
        self.choices: list[Choice] = []
        self._answered = answered

    def title_text(self) -> str:
        """Which of how many."""
        return f"Both of you changed this ({len(self.choices) + 1} of {len(self.conflicts)})"

    def text(self, width: int) -> list[Line]:
        """The three values."""
        conflict = self.conflicts[len(self.choices)]
        what = f"{words(conflict.key)} of {conflict.id}" if conflict.key else conflict.id
        lines = [*wrap(what, width, "head"), EMPTY]
        for name, value in (("It was", conflict.base), ("Mine", conflict.mine), ("Theirs", conflict.theirs)):
            said = "nothing" if value is None else told(value)
            lines += [line(Piece(name, "strong")), *wrap(said, width, first="    ", rest="    "), EMPTY]
        return lines + wrap("F2 keeps mine, F3 keeps theirs. Until you have chosen, nothing is saved.", width)

    def do_keep_mine(self) -> None:
        """Mine."""
        self._choose("mine")

    def do_keep_theirs(self) -> None:
        """Theirs."""
        self._choose("theirs")

    def _choose(self, side: Side) -> None:
        self.choices.append(Choice(self.conflicts[len(self.choices)], side))
        self.view.top = 0
        if len(self.choices) == len(self.conflicts):
            self.app.pop_screen()
            self._answered(self.choices)
