"""Noticing that somebody else changed the book: a look at the files every few seconds, in a thread."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from library.files.watching import Watch
    from tui.app import Heelclear

EVERY = 3.0
"""Seconds between two looks; the only clock that runs while nobody types."""


class Watching:
    """Looks at the shop's folder, one look at a time.

    What a look finds is told only if no reading of the book began meanwhile: what this program saves itself is read
    again, and is nobody else's. Such a reading shows all that the look has seen, whoever changed it.

    Args:
        app: the program.
        shop: the folder.
    """

    def __init__(self, app: Heelclear, shop: Path) -> None:
        self._app = app
        self._shop = shop
        self._watch: Watch | None = None
        self._is_looking = False
        self._untold: set[Path] = set()

    @property
    def has_untold(self) -> bool:
        """Whether changes were seen that could not be told yet."""
        return bool(self._untold)

    def begin(self) -> None:
        """Look from now on."""
        self._app.set_interval(EVERY, self.look)

    def forget(self) -> None:
        """What changed until now is nobody's business any more, for the book is about to be read again."""
        self._watch = None
        self._untold.clear()

    def take_as_known(self) -> None:
        """Take the files as they are now for known; called in a thread, before the book is read and not after.

        What is changed while it is read is so noticed at the next look.
        """
        from library.files.watching import Watch

        self._watch = Watch(self._shop)

    def look(self) -> None:
        """Look once, behind the screen, unless a look is under way or the program itself may be saving."""
        if self._watch is None or self._is_looking or self._app.behind.is_busy:
            return
        self._is_looking = True
        watch = self._watch

        def work() -> None:
            changed = watch.changed()
            self._app.post_message(self._app.Follow(lambda: self._end(watch, changed)))

        self._app.run_worker(work, thread=True, group="watch")

    def _end(self, watch: Watch, changed: tuple[Path, ...]) -> None:
        self._is_looking = False
        if watch is not self._watch:
            return
        self._untold.update(changed)
        if self._untold and not self._app.behind.is_busy:  # Else the next look tells, if nothing was saved.
            self._app.post_message(self._app.FilesChanged(sorted(self._untold)))
            self._untold.clear()
