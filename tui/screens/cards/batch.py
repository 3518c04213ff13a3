"""The plan of a batch of cards: what is set once, and what changes from card to card."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from library.calc.cautions import of_what_is_done
from library.cards.planning import plan
from library.pages.cautions import without_words
from library.pages.life import batch_page
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.lines import Line
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from library.book.model import Book, Caution
    from library.cards.model import Card
    from library.cards.planning import Plan
    from library.units.system import Display
    from tui.services.export import Printed
    from tui.session import Session


class BatchScreen(Reading):
    """The cards in the order that saves set-ups."""

    WHERE = "batch"

    def __init__(self, session: Session, cards: Sequence[Card]) -> None:
        super().__init__(session)
        self._cards = tuple(cards)
        self._made: tuple[Book, Display, Plan] | None = None

    def title_text(self) -> str:
        """How many cards."""
        return f"Plan for {len(self._cards)} cards"

    def text(self, width: int) -> list[Line]:
        """What stays, then card by card what changes."""
        assert self.session.book is not None
        found = self._plan(self.session.book)
        return page_lines(without_words(batch_page(found)), width)

    def warned(self) -> Iterable[Caution]:
        """The cautions of all cards, those of grinding in front."""
        book = self.session.book
        return of_what_is_done(self._plan(book).cautions, "grinding") if book is not None else ()

    def printed(self) -> Printed | None:
        """The plan."""
        book = self.session.book
        return printed_page(batch_page(self._plan(book)), "batch") if book is not None else None

    def do_cautions(self) -> None:
        """Show the cautions of all cards in full."""
        self.heelclear.show_cautions(None, None, lambda book: self._plan(book).cautions)

    def _plan(self, book: Book) -> Plan:
        made, asked = self._made, (book, self.session.display)
        if made is None or made[0] is not book or made[1] != asked[1]:
            self._made = made = (*asked, plan(self._cards, *asked))
        return made[2]
