"""Keeping what is being typed, so that a cut line or a killed program loses half a second of it at most."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from textual.timer import Timer

if TYPE_CHECKING:
    from library.drafts.draft import Draft
    from library.drafts.shelf import Drafts, Kept
    from tui.app import Heelclear

QUIET = 0.5
"""Seconds after the last key in which nothing is typed and the draft is written."""


class Drafting:
    """The drafts of this run, and those that earlier runs left.

    Args:
        app: the program.
        folder: where drafts are kept.
    """

    def __init__(self, app: Heelclear, folder: Path) -> None:
        self._app = app
        self._folder = folder
        self._drafts: Drafts | None = None
        self._waiting: dict[str, Draft] = {}
        self._kept: dict[str, Draft] = {}
        self._timer: Timer | None = None

    @property
    def drafts(self) -> Drafts:
        """The shelf of drafts, made when it is first needed."""
        if self._drafts is None:
            from library.drafts.shelf import Drafts

            self._drafts = Drafts(self._folder)
        return self._drafts

    def keep_soon(self, draft: Draft) -> None:
        """Keep a draft as soon as nothing has been typed for a moment."""
        self._waiting[draft.name] = draft
        if self._timer is not None:
            self._timer.stop()
        self._timer = self._app.set_timer(QUIET, self.keep_now)

    def keep_now(self) -> None:
        """Write what waits; a disk that refuses is told once and does not stop the work."""
        from library.files.refusals import SaveRefused

        waiting, self._waiting = self._waiting, {}
        for name, draft in waiting.items():
            try:
                if draft.is_unchanged():
                    self.drafts.drop(draft)
                    self._kept.pop(name, None)
                else:
                    self.drafts.keep(draft)
                    self._kept[name] = draft
            except SaveRefused as refused:
                self._app.say(f"What you type is not kept as a draft. {refused.sentence}")

    def drop(self, draft: Draft) -> None:
        """Forget a draft, because it was saved."""
        self._waiting.pop(draft.name, None)
        if self._kept.pop(draft.name, None) is not None:
            self.drafts.drop(draft)

    def end(self, *, orderly: bool) -> None:
        """Keep everything before the program ends.

        What was typed into a calculator is forgotten at an orderly end: figures of the last tool must not
        stand in the fields of the next one.
        """
        self.keep_now()
        if orderly:
            for draft in [one for one in self._kept.values() if one.kind == "calculator"]:
                self.drop(draft)
        if self._drafts is not None:
            self._drafts.close()

    def left_behind(self) -> Sequence[Kept]:
        """The drafts that earlier runs left; reads files, so it is called in a thread."""
        return self.drafts.left_behind() if self._folder.is_dir() else ()

    def forget(self, kept: Kept) -> None:
        """Drop one of them."""
        self.drafts.forget(kept)

    def recover(self, kept: Kept) -> None:
        """Open the form that a draft belongs to, as it was left."""
        from tui.recovering import recovered

        screen = recovered(self._app.session, kept.draft)
        if screen is None:
            self._app.say(
                "What this draft was about is not in the book any more; the draft stays where it is."
            )
            return
        self.keep_soon(kept.draft)
        self.keep_now()
        self.forget(kept)
        self._app.push_screen(screen)
