"""What git remembers of one entry."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.editing.telling import told, words
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from collections.abc import Sequence

    from library.book.model import Entry
    from library.history.following import Revision
    from tui.session import Session


class EntryHistoryScreen(Reading):
    """Who changed which value, and when."""

    WHERE = "history"

    def __init__(self, session: Session, entry: Entry, revisions: Sequence[Revision]) -> None:
        super().__init__(session)
        self.entry = entry
        self.revisions = revisions

    def title_text(self) -> str:
        """Of which entry."""
        return f"History: {self.entry.title}"

    def text(self, width: int) -> list[Line]:
        """One commit after the other, the newest first."""
        if not self.revisions:
            return wrap("The shop's book has no change of this entry on record.", width)
        lines: list[Line] = []
        for revision in self.revisions:
            lines.append(line(Piece(f"{revision.when:%Y-%m-%d %H:%M}  {revision.who}", "strong")))
            lines += wrap(revision.message, width, "quiet", first="  ", rest="  ")
            for change in revision.changes:
                before, after = (
                    "nothing" if value is None else told(value) for value in (change.before, change.after)
                )
                said = f"{words(change.key)}: {before} -> {after}"
                lines += wrap(said, width, first="    ", rest="      ")
            lines.append(EMPTY)
        return lines
