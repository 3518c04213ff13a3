"""The plan of a batch of cards: what is set once, and what changes from card to card."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from library.cards.planning import plan
from library.pages.life import batch_page
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.lines import Line
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from library.book.model import Book
    from library.cards.model import Card
    from library.cards.planning import Plan
    from tui.services.export import Printed
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
        found = self._plan(self.session.book)
        return page_lines(batch_page(found, self.in_full), width)

    def printed(self) -> Printed | None:
        """The plan."""
        book = self.session.book
        return printed_page(batch_page(self._plan(book)), "batch") if book is not None else None

    def do_cautions(self) -> None:
        """Show the cautions of all cards in full."""
        self.heelclear.show_cautions(None, None, lambda book: self._plan(book).cautions)

    def _plan(self, book: Book) -> Plan:
        return plan(self._cards, book, self.session.display)
