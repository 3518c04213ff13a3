"""Polling the files of the book for changes that somebody else made, every few seconds in a thread."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from library.files.watching import Watch

if TYPE_CHECKING:
    from tui.services.background import Background
    from tui.services.host import Host

EVERY = 3.0
"""Seconds between two looks; the only clock that runs while nobody types."""


class FileWatch:
    """Polls the shop's folder, one poll at a time.

    What a look finds is told only if no reading of the book began meanwhile: what this program saves itself is read
    again, and is nobody else's. Such a reading shows all that the look has seen, whoever changed it.

    Args:
        host: the program.
        background: may be saving, which is nobody else's change.
        shop: the folder.
        tell: takes the files that somebody else changed.
    """

    def __init__(
        self, host: Host, background: Background, shop: Path, tell: Callable[[Sequence[Path]], None]
    ) -> None:
        self._host = host
        self._background = background
        self._shop = shop
        self._tell = tell
        self._watch: Watch | None = None
        self._is_looking = False
        self._untold: set[Path] = set()

    @property
    def has_untold(self) -> bool:
        """Whether changes were seen and not reported yet."""
        return bool(self._untold)

    def begin(self) -> None:
        """Start polling."""
        self._host.set_interval(EVERY, self.look)

    def forget(self) -> None:
        """Discard the changes seen so far, for the book is about to be read again."""
        self._watch = None
        self._untold.clear()

    def take_as_known(self) -> None:
        """Take the files as they are now as the state to compare with; called in a thread, before the book is read and not after.

        What is changed while it is read is so noticed at the next look.
        """
        self._watch = Watch(self._shop)

    def look(self) -> None:
        """Poll once in a thread, unless a poll is running or the program itself may be saving."""
        if self._watch is None or self._is_looking or self._background.is_busy:
            return
        self._is_looking = True
        watch = self._watch

        def work() -> None:
            changed = watch.changed()
            self._host.on_screen(lambda: self._end(watch, changed))

        self._host.in_thread(work, "watch")

    def _end(self, watch: Watch, changed: tuple[Path, ...]) -> None:
        self._is_looking = False
        if watch is not self._watch:
            return
        self._untold.update(changed)
        if self._untold and not self._background.is_busy:  # Else the next look tells, if nothing was saved.
            told = sorted(self._untold)
            self._untold.clear()
            self._tell(told)
