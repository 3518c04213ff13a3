"""One entry of the book in full."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.pages.entry import in_hand
from tui import screens
from tui.screens.beside import display_for, whose
from tui.screens.cards.card_navigation import begin_card
from tui.screens.paned import TOOL, PanedScreen
from tui.view.entry_page import EntryPage
from tui.view.lines import Line

if TYPE_CHECKING:
    from collections.abc import Iterable

    from library.book.model import Book, Entry
    from tui.screens.base_screen import Needs
    from tui.services.export import Printed
    from tui.session import Session


class EntryScreen(PanedScreen):
    """A line for each value, what is told of the one in hand, what to grind and how, and the cautions."""

    WHERE = "entry"
    PLACE = TOOL

    def __init__(self, session: Session, entry: Entry) -> None:
        super().__init__(session)
        self.page = EntryPage(entry, session.page.find.text)
        self.page.whole = f"{self.key_of('help')} in full"

    @property
    def entry(self) -> Entry:
        """The entry that is shown."""
        return self.page.entry

    def title_text(self) -> str:
        """The entry's title."""
        return self.entry.title

    def state_text(self) -> str:
        """Whose entry it is, and the unit of lengths."""
        return f"{whose(self.entry)}  {super().state_text()}"

    def body(self, width: int, height: int) -> list[Line]:
        """The entry, lengths in the unit that is worked in."""
        book = self.session.book
        if book is None:
            return []
        return self.page.body(book, display_for(self.session), width, height)

    def foot(self, width: int, height: int) -> list[Line]:
        """Its cautions."""
        book = self.session.book
        cautions = self.page.cautions(book, width, self.in_full) if book is not None else []
        return [*self.guided(width), *cautions]

    def needs(self) -> Needs:
        """A calculation that serves such tools; an entry after it in the list, or before it."""
        session, view = self.session, self.session.page.view
        return {
            **super().needs(),
            "calculate": lambda: session.is_served(self.entry),
            "go-on": lambda: session.is_served(self.entry),
            "next": lambda: view.chosen + 1 < view.count,
            "previous": lambda: view.chosen > 0,
        }

    def tool(self) -> Entry:
        """The entry that is shown."""
        return self.entry

    def book_changed(self) -> None:
        """Take the entry as it is in the book now."""
        now = self.session.entry(self.entry.id)
        self.page.take(now or self.entry)
        self.is_gone = now is None

    def words(self) -> Iterable[str]:
        """The quantities that the entry has values for."""
        return self.entry.values

    def word_in_hand(self) -> str:
        """The quantity of the value in hand."""
        return self.page.key

    def told_in_hand(self) -> str:
        """All that the book tells of the value in hand."""
        book, value = self.session.book, self.entry.values.get(self.page.key)
        return (
            in_hand(book, value, display_for(self.session)) if book is not None and value is not None else ""
        )

    def do_down(self) -> None:
        """To the next value, and past the last one a line further down the text."""
        self.page.move(1)

    def do_up(self) -> None:
        """The same the other way."""
        self.page.move(-1)

    def do_page_up(self) -> None:
        """Part of the text above."""
        self.page.view.scroll(-max(self.page.view.height - 1, 1))

    def do_page_down(self) -> None:
        """Part of the text below."""
        self.page.view.scroll(max(self.page.view.height - 1, 1))

    def do_first(self) -> None:
        """To the first value and the beginning of the text."""
        self.page.take(self.entry, anew=True)

    def do_last(self) -> None:
        """To the end of the text."""
        self.page.view.scroll(self.page.view.count)

    def printed(self) -> Printed | None:
        """The entry with its sources and cautions in full."""
        return screens.printed_entry(self.session, self.entry)

    def do_change(self) -> None:
        """List what can be changed of it, the value in hand chosen."""
        self.app.push_screen(screens.ChangesScreen(self.session, self.entry, self.page.chosen))

    def do_calculate(self) -> None:
        """Open the calculator, filled from this entry."""
        self.heelclear.calculate(self.entry)

    def do_go_on(self) -> None:
        """The same, by Enter."""
        self.do_calculate()

    def do_begin_card(self) -> None:
        """Begin a job card from this entry."""
        begin_card(self, self.entry)

    def do_cautions(self) -> None:
        """Show the cautions alone."""
        self.heelclear.show_cautions(None, self.entry)

    def do_next(self) -> None:
        """Show the next entry of the list."""
        self._go(1)

    def do_previous(self) -> None:
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
            self.page.take(entry, anew=True)


def cautions_of(book: Book, entry: Entry, width: int, in_full: str) -> list[Line]:
    """The cautions of an entry in two lines."""
    return EntryPage(entry).cautions(book, width, in_full)
