"""Two or more entries of the book side by side."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from tui.screens.reading import Reading
from tui.view.compare_page import columns, compared_lines, heading
from tui.view.lines import Line, rule

if TYPE_CHECKING:
    from library.book.model import Entry
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
        shown = columns(max(self.size.width - 1, 1), len(self.entries), self._first)
        if shown.count == len(self.entries):
            return f"Side by side: {len(self.entries)} entries"
        last = shown.first + shown.count
        return f"Side by side: {shown.first + 1} to {last} of {len(self.entries)}; Left and Right"

    def words(self) -> Iterable[str]:
        """The quantities of all of them, for the help."""
        return dict.fromkeys(key for entry in self.entries for key in entry.values)

    def body(self, width: int, height: int) -> list[Line]:
        """The titles over the comparison."""
        head = heading(self.entries, columns(max(width - 1, 1), len(self.entries), self._first))
        head = [*head[: max(height // 3, 1)], rule(width)]
        return [*head, *super().body(width, height - len(head))]

    def text(self, width: int) -> list[Line]:
        """The comparison."""
        book = self.session.book
        if book is None:
            return []
        return compared_lines(book, self.entries, width, self._first, sources=self._sources)

    def book_changed(self) -> None:
        """Take the entries as they are in the book now; one that is gone is left out."""
        self.entries = [now for one in self.entries if (now := self.session.entry(one.id)) is not None]
        self.is_gone = len(self.entries) < 2

    def do_sources(self) -> None:
        """Show the source of every value below it, or hide it again."""
        self._sources = not self._sources

    def do_columns_left(self) -> None:
        """Show the entry before."""
        self._move(-1)

    def do_columns_right(self) -> None:
        """Show the next entry."""
        self._move(1)

    def _move(self, by: int) -> None:
        self._first = columns(max(self.size.width - 1, 1), len(self.entries), self._first + by).first
