"""The plan of a batch of cards: what is set once, and what changes from card to card."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from library.cards.planning import Turn, plan
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from library.cards.model import Card
    from library.cards.settings_lines import SettingLine
    from tui.session import Session


class BatchScreen(Reading):
    """The cards in the order that saves set-ups."""

    WHERE = "batch"

    def __init__(self, session: Session, cards: Sequence[Card]) -> None:
        super().__init__(session)
        self._cards = tuple(cards)

    def title_text(self) -> str:
        """How many cards."""
        return f"Plan for {len(self._cards)} cards"

    def text(self, width: int) -> list[Line]:
        """What stays, then card by card what changes."""
        assert self.session.book is not None
        found = plan(self._cards, self.session.book, self.session.display)
        lines = [
            line(Piece("Set once, and leave", "head")),
            *_settings(found.stays, width, "nothing is the same for all"),
        ]
        for number, turn in enumerate(found.turns, 1):
            lines += [EMPTY, *wrap(_named(number, turn), width, "head")]
            lines += _settings(turn.changes, width, "nothing to change")
        many = f"{found.changes} setting{' changes' if found.changes == 1 else 's change'} between the cards"
        saved = found.changes_as_given - found.changes
        said = f"{many}, {saved} fewer than in the order in which they were marked." if saved else f"{many}."
        return [*lines, EMPTY, *wrap(said, width, "strong")]


def _named(number: int, turn: Turn) -> str:
    parts = [f"{number}. {turn.card.id}  {turn.card.title}"]
    if turn.flutes:
        parts.append(f"{turn.flutes} flute{'s' if turn.flutes > 1 else ''}")
    if turn.left is not None:
        parts.append(f"{turn.left} sharpening{'' if turn.left == 1 else 's'} left after it")
    return ", ".join(parts)


def _settings(settings: Iterable[SettingLine], width: int, nothing: str) -> list[Line]:
    lines: list[Line] = []
    for one in settings:
        said = f"{one.title}: {one.value}" + (f", {one.graduation}" if one.graduation else "")
        lines += wrap(said, width, first="   ", rest="     ")
    return lines or [line(Piece(f"   {nothing}", "quiet"))]
