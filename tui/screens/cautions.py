"""The cautions of a tool and a calculation, in full."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.calc.cautions import cautions_for
from library.pages.cautions import HEADING, cautions_page
from tui.screens.reading import Reading
from tui.view.lines import Line
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from geometry.calculation import Calculation
    from library.book.model import Book, Entry
    from library.pages.page import Page
    from tui.session import Session


class CautionsScreen(Reading):
    """Each caution with its text and its source."""

    WHERE = "cautions"

    def __init__(self, session: Session, sheet: Calculation | None, entry: Entry | None) -> None:
        super().__init__(session)
        self.sheet = sheet
        self.entry = entry

    def title_text(self) -> str:
        """What the cautions are for."""
        book = self.session.book
        return self._page(book).title if book is not None else HEADING

    def text(self, width: int) -> list[Line]:
        """The cautions, one after the other."""
        book = self.session.book
        return page_lines(self._page(book), width) if book is not None else []

    def _page(self, book: Book) -> Page:
        about = self.entry.title if self.entry is not None else "any grinding"
        return cautions_page(cautions_for(self.sheet, self.entry, book), book, about)
