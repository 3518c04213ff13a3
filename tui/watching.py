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
    """Looks at the shop's folder.

    Args:
        app: the program.
        shop: the folder.
    """

    def __init__(self, app: Heelclear, shop: Path) -> None:
        self._app = app
        self._shop = shop
        self._watch: Watch | None = None

    def begin(self) -> None:
        """Look from now on."""
        self._app.set_interval(EVERY, self._look_soon)

    def take_as_known(self) -> None:
        """Take the files as they are now for known; called in a thread, before the book is read and not after.

        What is changed while it is read is so noticed at the next look.
        """
        from library.files.watching import Watch

        self._watch = Watch(self._shop)

    def _look_soon(self) -> None:
        if not self._app.behind.is_busy:  # What this program saves itself is read again anyway.
            self._app.run_worker(self._look, thread=True, group="watch", exclusive=True)

    def _look(self) -> None:
        changed = self._watch.changed() if self._watch is not None else ()
        if changed:
            self._app.post_message(self._app.FilesChanged(changed))
