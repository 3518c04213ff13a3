"""Background tasks: one at a time in a thread, with a sentence on the screen while it runs."""

from __future__ import annotations

import sys
from collections.abc import Callable
from typing import TYPE_CHECKING, TypeVar

from library.errors import Refused

if TYPE_CHECKING:
    from tui.services.host import Host

PATIENCE = 0.2
"""Seconds after which it is said what is going on; a quick disk needs no sentence."""

Outcome = TypeVar("Outcome")


class Background:
    """Runs one task at a time in a thread, and its outcome on the screen's own thread.

    Args:
        host: the program.

    Attributes:
        sentence: what goes on, once it has taken longer than a moment; else empty.
    """

    def __init__(self, host: Host) -> None:
        self._host = host
        self._doing = ""
        self.sentence = ""

    @property
    def is_busy(self) -> bool:
        """Whether a task is running."""
        return bool(self._doing)

    def begin(
        self,
        doing: str,
        work: Callable[[], Outcome],
        then: Callable[[Outcome], None],
        *,
        elsewhere: str = "",
    ) -> None:
        """Start a task; while another one is running, say so and start nothing.

        Args:
            doing: a sentence that says what goes on.
            work: done in a thread; it touches no screen. What it refuses is said to the person.
            then: done on the screen with what came of it.
            elsewhere: said in place of ``then`` where another screen is in front by then; empty where that
                makes no difference.
        """
        if self._doing:
            self._host.say(f"{self._doing} Wait until that has ended.")
            return
        self._doing = doing
        asked_on = self._host.front

        def unless_elsewhere(outcome: Outcome) -> None:
            if elsewhere and self._host.front is not asked_on:
                self._host.say(elsewhere)
            else:
                then(outcome)

        def run() -> None:
            follow = _following(work, unless_elsewhere, self._host.say)
            self._host.on_screen(lambda: self._end(follow))

        self._host.set_timer(PATIENCE, lambda: self._tell(doing))
        self._host.in_thread(run, "background")

    def _tell(self, doing: str) -> None:
        if self._doing is doing:
            self.sentence = doing
            self._host.draw_front()

    def _end(self, follow: Callable[[], None]) -> None:
        """Call what follows from the task, on the thread of the screens."""
        self._doing = self.sentence = ""
        follow()
        self._host.draw_front()

    def end(self) -> None:
        """Wait no longer for another machine, for the program is about to end."""
        git = sys.modules.get("library.history.git")
        if git is not None:
            git.end_remote()


def _following(
    work: Callable[[], Outcome], then: Callable[[Outcome], None], say: Callable[[str], None]
) -> Callable[[], None]:
    """Run the task; returns what is to be called with its outcome."""
    try:
        outcome = work()
    except Refused as refused:
        sentence = refused.sentence
    except OSError as error:
        sentence = f"The system could not do it: {error.strerror or type(error).__name__}. Nothing was changed; try again."
    else:
        return lambda: then(outcome)
    return lambda: say(sentence)
