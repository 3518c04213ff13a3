"""Two or more entries of the book side by side."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from library.calc.cautions import cautions_of_all
from library.pages.cautions import at_arms_length
from library.pages.columns import body_lines, columns, heading_lines
from library.pages.comparison import comparison_page, legends, side_by_side
from tui import screens
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, rule, wrap
from tui.view.page_lines import block_lines, reader, shown

if TYPE_CHECKING:
    from library.book.model import Entry
    from library.pages.columns import Columns
    from tui.services.export import Printed
    from tui.session import Session


class CompareScreen(Reading):
    """A column for each entry; their titles stay in sight while the rest scrolls."""

    WHERE = "compare"

    def __init__(self, session: Session, entries: Sequence[Entry]) -> None:
        super().__init__(session)
        self.entries = list(entries)
        self._first = 0
        self._sources = False

    def title_text(self) -> str:
        """How many, and which of them are in sight."""
        seen = self._columns(self.size.width)
        if seen.count == len(self.entries):
            return f"Side by side: {len(self.entries)} entries"
        last = seen.first + seen.count
        return f"Side by side: {seen.first + 1} to {last} of {len(self.entries)}; Left and Right"

    def words(self) -> Iterable[str]:
        """The quantities of all of them, for the help."""
        return dict.fromkeys(key for entry in self.entries for key in entry.values)

    def body(self, width: int, height: int) -> list[Line]:
        """The titles over the comparison."""
        book = self.session.book
        if book is None:
            return super().body(width, height)
        block = side_by_side(book, self.entries, self.session.display)
        head = shown(heading_lines(block, self._columns(width), reader(width - 1)))
        head = [*head[: max(height // 3, 1)], rule(width)]
        warned = block_lines([at_arms_length(cautions_of_all(self.entries, book), self.in_full)], width)
        return [*head, *super().body(width, height - len(head) - len(warned)), *warned]

    def text(self, width: int) -> list[Line]:
        """The comparison."""
        book = self.session.book
        if book is None:
            return []
        block = side_by_side(book, self.entries, self.session.display, sources=self._sources)
        told = shown(body_lines(block, self._columns(width + 1), reader(width)))
        signs = [one for said in legends(book, self.entries) for one in wrap(said, width, "quiet")]
        return [*told, EMPTY, *signs]

    def _columns(self, width: int, by: int = 0) -> Columns:
        """The entries in sight on a screen so wide, or those so many further on."""
        return columns(max(width - 1, 1), len(self.entries), self._first + by)

    def book_changed(self) -> None:
        """Take the entries as they are in the book now; one that is gone is left out.

        Where fewer than two are left, they stay as they were until the screen is left, for it may lie below another.
        """
        left = [now for one in self.entries if (now := self.session.entry(one.id)) is not None]
        self.is_gone = len(left) < 2
        if not self.is_gone:
            self.entries = left
            self._first = min(self._first, len(left) - 1)

    def do_cautions(self) -> None:
        """Show the cautions of all of them in full."""
        self.heelclear.show_cautions(None, None, lambda book: cautions_of_all(self.entries, book))

    def printed(self) -> Printed | None:
        """The comparison, with sources where they are shown."""
        book = self.session.book
        if book is None:
            return None
        page = comparison_page(book, self.entries, self.session.display, sources=self._sources)
        return printed_page(page, "-beside-".join(one.id for one in self.entries))

    def do_change(self) -> None:
        """Change the first entry in sight."""
        self.app.push_screen(screens.ChangesScreen(self.session, self.entries[self._first]))

    def do_sources(self) -> None:
        """Show the source of every value below it, or hide it again."""
        self._sources = not self._sources

    def do_left(self) -> None:
        """Show the entry before."""
        self._move(-1)

    def do_right(self) -> None:
        """Show the next entry."""
        self._move(1)

    def _move(self, by: int) -> None:
        self._first = self._columns(self.size.width, by).first
