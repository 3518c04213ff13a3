"""Which calculations serve a tool, and which of them is the one to open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from geometry.calculations import calculation
from geometry.thread.nut_limits import CLASSES
from library.calc.by_family import sheets_for
from library.guidance.main_job import main_job_first

if TYPE_CHECKING:
    from collections.abc import Sequence

    from geometry.calculation import Calculation
    from library.book.model import Book, Entry
    from library.search.sizes import Size
    from tui.session import Session

CLASS_OF_HOLE, MARK_OF_TAP = "hole_tolerance", "tap_limit"

THREAD_CLASSES = frozenset(CLASSES)


class Serving:
    """The calculations of each entry, found once as long as it and the book stay the same.

    Args:
        session: has the book.
    """

    def __init__(self, session: Session) -> None:
        self._session = session
        self._found: dict[str, tuple[Book, Entry, Sequence[Calculation]]] = {}

    def all_of(self, entry: Entry, opened: str = "") -> list[Calculation]:
        """The calculations that serve an entry's family, the one for what is ground on this tool first.

        Args:
            entry: of the book.
            opened: the one in hand; it stays, also where the family has lost it since.
        """
        found = [*self._of(entry)]
        if opened and opened not in [sheet.name for sheet in found]:
            found.append(calculation(opened))
        return found

    def _of(self, entry: Entry) -> Sequence[Calculation]:
        book = self._session.book
        if book is None:
            return ()
        known = self._found.get(entry.id)
        if known is None or known[0] is not book or known[1] is not entry:
            found = main_job_first(book, entry, sheets_for(book.families.get(entry.family)))
            self._found[entry.id] = known = (book, entry, found)
        return known[2]

    def of_class(self, entry: Entry, size: Size) -> Calculation | None:
        """The calculation that tells the limits of a size that has the class of a hole or a thread."""
        asked = CLASS_OF_HOLE if size.tolerance else MARK_OF_TAP if has_class(size) else ""
        return next((one for one in self._of(entry) if asked and one.field(asked)), None)

    def first(self, entry: Entry, last: str = "") -> Calculation | None:
        """The calculation to open for an entry: the one used last, else the one most its own.

        Args:
            entry: of the book.
            last: the name of the one used last.
        """
        sheets = self._of(entry)
        return next((sheet for sheet in sheets if sheet.name == last), sheets[0] if sheets else None)


def has_class(size: Size) -> bool:
    """Whether the name of a thread ends with the class of its nut, such as 2B or 6H.

    Example:
        >>> from library.search.sizes import Size
        >>> has_class(Size("1/2-13 2B", True)), has_class(Size("M12-6H LH", True)), has_class(Size("M12", True))
        (True, True, False)
    """
    words = size.text.upper().replace("-", " ").split()
    return size.is_thread and not THREAD_CLASSES.isdisjoint(words)
