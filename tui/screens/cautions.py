"""The cautions of a tool and a calculation, in full."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.calc.cautions import cautions_for
from library.pages.cautions import HEADING, cautions_page
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.lines import Line
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from geometry.calculation import Calculation
    from library.book.model import Book, Caution, Entry
    from library.pages.page import Page
    from tui.services.export import Printed
    from tui.session import Session


class CautionsScreen(Reading):
    """Each caution with its text and its source."""

    WHERE = "cautions"

    def __init__(
        self,
        session: Session,
        sheet: Calculation | None,
        entry: Entry | None,
        found: Callable[[Book], Iterable[Caution]] | None = None,
    ) -> None:
        """Make the screen.

        Args:
            session: what the program knows.
            sheet: the calculation.
            entry: the tool.
            found: gives the cautions where they belong to more than one calculation and one tool.
        """
        super().__init__(session)
        self.entry = entry
        self._found = found or (lambda book: cautions_for(sheet, entry, book))

    def title_text(self) -> str:
        """What the cautions are for."""
        book = self.session.book
        return self._page(book).title if book is not None else HEADING

    def text(self, width: int) -> list[Line]:
        """The cautions, one after the other."""
        book = self.session.book
        return page_lines(self._page(book), width) if book is not None else []

    def printed(self) -> Printed | None:
        """The cautions that are shown."""
        book = self.session.book
        return printed_page(self._page(book), "cautions") if book is not None else None

    def _page(self, book: Book) -> Page:
        about = self.entry.title if self.entry is not None else "any grinding"
        return cautions_page(self._found(book), book, about)
