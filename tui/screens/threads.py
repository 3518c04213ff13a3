"""The standard threads, to fill a calculation from one of them."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from library.shop_threads.laying import own_threads
from library.threads import Thread, all_threads, find_threads
from tui.screens.chooser import Choice, Chooser

if TYPE_CHECKING:
    from library.book.model import Book
    from tui.session import Session


FIRST = ("iso-metric-coarse", "unified-coarse", "unified-fine", "iso-metric-fine")
"""The series that stand first in the list; all others follow by their names."""


class ThreadsScreen(Chooser):
    """Designation, sizes and tap drill of each; Enter takes it.

    Args:
        session: of the program.
        take_it: what is done with the chosen one.
    """

    WHERE = "threads"
    NAME_WIDTH = 18

    def __init__(self, session: Session, take_it: Callable[[Thread], None]) -> None:
        super().__init__(session)
        self._take = take_it
        self._own = own_threads(session.book)
        self._named: dict[str, Thread] = {}
        self._threads = {thread.id: thread for thread in in_order(session.book)}
        self._choices = [
            Choice(thread.id, thread.title, described(thread)) for thread in self._threads.values()
        ]

    def title_text(self) -> str:
        """What these are."""
        return "Standard threads; type to find one"

    def choices(self) -> list[Choice]:
        """Every thread of the shop's book, then those of the tables."""
        return self._choices

    def found(self) -> list[Choice]:
        """The threads that have every word typed; before them those that are called so with their hand or their starts."""
        named = [
            one for one in find_threads(self.find.text, self._own) if one.title != self._threads[one.id].title
        ]
        self._named = {one.title: one for one in named}
        return [*(Choice(one.title, one.title, described(one)) for one in named), *super().found()]

    def take(self, choice: Choice) -> None:
        """Go back to the calculator with it."""
        self.app.pop_screen()
        self._take(self._named.get(choice.id) or self._threads[choice.id])


def in_order(book: Book | None) -> list[Thread]:
    """The threads of the shop's book, then the standard ones that it does not cover, the usual series first."""
    own = own_threads(book)
    covered = {thread.id for thread in own}
    standard = (thread for thread in all_threads().values() if thread.id not in covered)
    return sorted((*own, *standard), key=lambda thread: (not thread.is_own, _place(thread.series.id)))


def described(thread: Thread) -> str:
    """A thread in one line: its other names count when it is sought.

    Example:
        >>> described(all_threads()["m12"])
        'diameter 12 mm, pitch 1.75 mm; tap drill 10.2 mm or 10.3 mm; ISO metric, coarse; m12, M12x1.75, M12'
    """
    pitch = f"pitch {thread.pitch}" if thread.pitch else thread.threads_per_inch
    drills = [drill for drill in (thread.tap_drill, *thread.other_tap_drills) if drill]
    parts = [
        f"diameter {thread.diameter}, {pitch}",
        f"{thread.starts} starts" if thread.starts != 1 else "",
        f"{thread.hand} hand" if thread.hand else "",
        f"tap drill {' or '.join(drills)}" if drills else "",
        thread.series.title,
        ", ".join((thread.id, *thread.synonyms)),
        thread.note,
    ]
    return "; ".join(part for part in parts if part)


def _place(series: str) -> int:
    return FIRST.index(series) if series in FIRST else len(FIRST)
