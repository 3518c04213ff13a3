"""One table of the book that is no entry, to be read; a key opens the form that changes it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from library.pages.cautions import at_arms_length
from library.pages.entry import converting
from library.pages.own_tables import cautions_of_table, own_table_page
from library.pages.page import Section
from tui.screens.beside import display_for
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.screens.table_ways import can_change, change_table, open_file_of, own_place
from tui.view.lines import Line
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from collections.abc import Iterable

    from library.book.model import Caution
    from library.pages.page import Page
    from tui.screens.base_screen import Needs
    from tui.services.export import Printed
    from tui.session import Session


class OwnTableScreen(Reading):
    """A trouble, a set-up, a wheel, a machine or a thread in full, with its sources.

    Args:
        session: of the program.
        array: the kind of table.
        name: its id.
    """

    WHERE = "own-table"

    def __init__(self, session: Session, array: str, name: str) -> None:
        super().__init__(session)
        self.array, self.own_id = array, name
        self._title = name

    def page(self) -> Page | None:
        """What is shown; nothing where it is gone."""
        book = self.session.book
        return (
            own_table_page(book, self.array, self.own_id, converting(display_for(self.session)))
            if book is not None
            else None
        )

    def title_text(self) -> str:
        """What it is called."""
        page = self.page()
        self._title = page.title if page is not None else self._title
        return self._title

    def text(self, width: int) -> list[Line]:
        """All of it."""
        page = self.page()
        return page_lines(page, width) if page is not None else []

    def warned(self) -> Iterable[Caution]:
        """The cautions of what it tells to do."""
        book = self.session.book
        return cautions_of_table(book, self.array, self.own_id) if book is not None else ()

    def do_cautions(self) -> None:
        """Show those cautions in full; the general ones where it has none of its own."""
        if not tuple(self.warned()):
            super().do_cautions()
            return
        array, name = self.array, self.own_id
        self.heelclear.show_cautions(None, None, lambda book: cautions_of_table(book, array, name))

    def book_changed(self) -> None:
        """Go back where it is not in the book any more."""
        self.is_gone = self.page() is None

    def needs(self) -> Needs:
        """A form, and a file of the shop that has it."""
        app, array, name = self.heelclear, self.array, self.own_id
        return {
            **super().needs(),
            "change": lambda: can_change(app, array, name),
            "open-file": lambda: own_place(app, array, name),
        }

    def printed(self) -> Printed | None:
        """What is shown."""
        page = self.page()
        found = tuple(self.warned())
        if page is not None and found:
            page = replace(page, sections=(*page.sections, Section("", (at_arms_length(found),))))
        return printed_page(page, self.own_id) if page is not None else None

    def do_change(self) -> None:
        """Open the form that changes it."""
        change_table(self.heelclear, self.array, self.own_id)

    def do_open_file(self) -> None:
        """Open its file in the editor, where that is the shop's."""
        open_file_of(self.heelclear, self.array, self.own_id)
