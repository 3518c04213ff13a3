"""The history of one entry: each commit that changed it, with the values before and after."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING

from library.editing.wording import words
from tui.screens.conflict import spelt_out
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from library.book.model import Entry
    from library.history.entry_history import Revision
    from tui.session import Session

_LOOKED_AT = "the last 300 changes of the book in git"
"""As ``MOST_COMMITS`` of ``library.history.entry_history`` has it, which is loaded only when git is asked."""


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
        return history_lines(self.revisions, width)


def history_lines(revisions: Sequence[Revision], width: int) -> list[Line]:
    """What git remembers of an entry, and whether there may be more.

    Args:
        revisions: the newest first.
        width: of the screen.
    """
    if not revisions:
        return wrap(f"The shop's book has no change of this entry on record, in {_LOOKED_AT}.", width)
    lines: list[Line] = []
    for revision in revisions:
        lines.append(line(Piece(f"{revision.when:%Y-%m-%d %H:%M}  {revision.who}", "strong")))
        lines += wrap(revision.message, width, "quiet", first="  ", rest="  ")
        for change in revision.changes:
            for name, before, after in differences(change.key, change.before, change.after):
                lines += wrap(f"{name}: {before} -> {after}", width, first="    ", rest="      ")
        lines.append(EMPTY)
    if not _is_the_beginning(revisions[-1]):
        lines += wrap(f"What is older than {_LOOKED_AT} is not shown here; git log has it.", width)
    return lines


def _is_the_beginning(revision: Revision) -> bool:
    """Whether the entry was put into the book there."""
    return any(change.key == "id" and change.before is None for change in revision.changes)


def differences(key: str, before: object, after: object) -> Iterator[tuple[str, str, str]]:
    """What a change did, field by field: the name of the field, what it was, and what it became.

    Example:
        >>> list(differences("rake_angle", {"usual": "5 deg", "source": "shop"}, {"usual": "6 deg", "source": "shop"}))
        [('rake angle usual', '5 deg', '6 deg')]
    """
    sides = [side if isinstance(side, Mapping) else None for side in (before, after)]
    if all(side is None for side in sides):
        yield words(key), "; ".join(spelt_out(before)), "; ".join(spelt_out(after))
        return
    old, new = (
        table if table is not None else {} if raw is None else {"usual": raw}
        for table, raw in zip(sides, (before, after), strict=True)
    )
    for field in dict.fromkeys([*old, *new]):
        if old.get(field) != new.get(field):
            name = words(f"{key} {field}")
            yield name, "; ".join(spelt_out(old.get(field))), "; ".join(spelt_out(new.get(field)))
