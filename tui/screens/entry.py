"""One entry of the book in full."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.pages.entry import Convert, entry_page
from tui import later, screens
from tui.screens.cards.card_navigation import begin_card
from tui.screens.reading import Reading
from tui.view.lines import Line, Piece, line
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from collections.abc import Iterable

    from library.book.model import Book, Entry
    from tui.session import Session


class EntryScreen(Reading):
    """Every value with its range and source, the cautions, the notes and the family."""

    WHERE = "entry"

    def __init__(self, session: Session, entry: Entry) -> None:
        super().__init__(session)
        self.entry = entry

    def title_text(self) -> str:
        """The entry's title."""
        return self.entry.title

    def text(self, width: int) -> list[Line]:
        """The entry, lengths also in the unit that is worked in."""
        book = self.session.book
        return page_lines(entry_page(book, self.entry, self._convert()), width) if book is not None else []

    def book_changed(self) -> None:
        """Take the entry as it is in the book now."""
        now = self.session.entry(self.entry.id)
        self.entry, self.is_gone = now or self.entry, now is None

    def words(self) -> Iterable[str]:
        """The quantities that the entry has values for."""
        return self.entry.values

    def do_change(self) -> None:
        """List what can be changed of it."""
        self.app.push_screen(screens.ChangesScreen(self.session, self.entry))

    def do_calculate(self) -> None:
        """Open the calculator, filled from this entry."""
        self.heelclear.calculate(self.entry)

    def do_calculate_on(self) -> None:
        """The same, by Enter."""
        self.do_calculate()

    def do_begin_card(self) -> None:
        """Begin a job card from this entry."""
        begin_card(self, self.entry)

    def do_cautions(self) -> None:
        """Show the cautions alone."""
        self.heelclear.show_cautions(None, self.entry)

    def do_next_entry(self) -> None:
        """Show the next entry of the list."""
        self._go(1)

    def do_previous_entry(self) -> None:
        """Show the entry before in the list."""
        self._go(-1)

    def _go(self, by: int) -> None:
        self.session.page.view.move(by)
        entry = self.session.chosen_entry()
        if entry is self.entry:
            self.say(
                "That was the last entry of the list." if by > 0 else "That was the first entry of the list."
            )
        elif entry is not None:
            self.entry = entry
            self.view.top = 0

    def _convert(self) -> Convert | None:
        if not self.session.units_ready:
            return None
        display = self.session.display
        return lambda number, kind: later.show(number, kind, display)


def preview_of(book: Book, entry: Entry, width: int) -> list[Line]:
    """An entry as it stands beside the list of the book."""
    return [line(Piece(entry.title, "head")), *page_lines(entry_page(book, entry), width)]
