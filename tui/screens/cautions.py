"""The cautions of a tool and a calculation, in full."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.calc.answer import cautions_for
from library.calc.report import cited
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from geometry.calculation import Calculation
    from library.book.model import Entry
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
        about = self.entry.title if self.entry is not None else "any grinding"
        return f"Before you grind: {about}"

    def text(self, width: int) -> list[Line]:
        """The cautions, one after the other."""
        book = self.session.book
        if book is None:
            return []
        lines: list[Line] = []
        for caution in cautions_for(self.sheet, self.entry, book):
            lines += [line(Piece(caution.title, "watch")), *wrap(caution.text, width, first="  ", rest="  ")]
            lines += wrap(f"Source: {cited(book, caution.citation)}", width, "quiet", first="  ", rest="  ")
            lines.append(EMPTY)
        return lines
