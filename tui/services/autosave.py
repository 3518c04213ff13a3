"""Autosave of drafts: a cut line or a killed program loses half a second of typing at most."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from threading import Lock
from typing import TYPE_CHECKING

from library.errors import UNTOUCHED, Refused

if TYPE_CHECKING:
    from textual.timer import Timer

    from library.drafts.draft import Draft
    from library.drafts.draft_store import Drafts, Kept
    from tui.services.host import Host

OF_THIS_RUN = Path()
"""Where a draft lies that was left in this run: wherever the newest of its name does."""

SOON = 0.5
"""Seconds from a key to the writing of what was typed; further keys meanwhile do not put it off."""


class Autosave:
    """The drafts of this run, and those that earlier runs left.

    What is typed stands in memory at once, so that a form that is left and opened again has it. Writing is done in
    a thread; a lock keeps one writer at a time, and each writes what is newest by then.

    Args:
        host: the program.
        folder: where drafts are kept.
        open_drafts: opens that folder; called when the first draft is looked for or kept.
    """

    def __init__(self, host: Host, folder: Path, open_drafts: Callable[[], Drafts]) -> None:
        self._host = host
        self._folder = folder
        self._open_drafts = open_drafts
        self._drafts: Drafts | None = None
        self._newest: dict[str, Draft] = {}
        self._unwritten: dict[str, Draft] = {}
        self._forgotten: list[Kept] = []
        self._lock = Lock()
        self._timer: Timer | None = None
        self._told = False

    def newest(self, name: str) -> Draft | None:
        """The latest draft of that name in this run, written to the disk or not."""
        return self._newest.get(name)

    def keep_soon(self, draft: Draft) -> None:
        """Keep a draft within half a second."""
        if draft.is_unchanged():
            self._newest.pop(draft.name, None)
        else:
            self._newest[draft.name] = draft
        self._unwritten[draft.name] = draft
        if self._timer is None:
            self._timer = self._host.set_timer(SOON, self._write_behind)

    def drop(self, draft: Draft) -> None:
        """Forget a draft, because it was saved or given up."""
        self._newest.pop(draft.name, None)
        self._unwritten[draft.name] = draft
        self._write_behind()

    def drop_saved(self, draft: Draft) -> bool:
        """Forget a draft that was saved, unless more was typed since; returns whether it is forgotten."""
        newest = self._newest.get(draft.name)
        if newest is not None and newest.fields != draft.fields:
            return False
        self.drop(draft)
        return True

    def keep_now(self, *, quietly: bool = False) -> None:
        """Write what waits before anything else happens; returns when it is on the disk.

        Args:
            quietly: to leave what the disk refuses to whoever asks ``is_kept``.
        """
        self._write(quietly=quietly)

    def is_kept(self, draft: Draft) -> bool:
        """Whether a draft is on the disk, as far as it was written by ``keep_now``."""
        return draft.name not in self._unwritten

    def not_kept(self) -> list[Draft]:
        """What was typed into cards and forms and is on no disk, once more tried; it is lost when the program ends."""
        self.keep_now(quietly=True)
        return [one for one in self._newest.values() if one.kind != "calculator" and not self.is_kept(one)]

    def leave(self, draft: Draft) -> Draft | None:
        """The draft of a form that is left unsaved, with its time, to stand beside those of earlier runs; nothing where nothing was typed."""
        if draft.name not in self._newest:
            return None
        self._newest[draft.name] = left = replace(draft, kept=datetime.now().replace(microsecond=0))
        return left

    def end(self, *, orderly: bool) -> None:
        """Keep everything before the program ends.

        What was typed into a calculator is forgotten at an orderly end: figures of the last tool must not
        stand in the fields of the next one.
        """
        if orderly:
            for draft in [one for one in self._newest.values() if one.kind == "calculator"]:
                del self._newest[draft.name]
                self._unwritten[draft.name] = draft
        self._write()
        if self._drafts is not None:
            self._drafts.close()

    def left_behind(self) -> Sequence[Kept]:
        """The drafts that earlier runs left; reads files, so it is called in a thread."""
        if not os.path.isdir(self._folder):
            return ()
        with self._lock:
            return self._shelf().left_behind()

    def of_another_book(self, draft: Draft) -> str:
        """The folder of the other book that a draft was typed in, where it is still there; else nothing."""
        return self._shelf().of_another_book(draft)

    @property
    def troubles(self) -> tuple[str, ...]:
        """What of that could not be offered, a sentence or two each."""
        return self._drafts.troubles if self._drafts is not None else ()

    def forget(self, kept: Kept) -> None:
        """Drop what was left unsaved."""
        if kept.path == OF_THIS_RUN:
            self.drop(kept.draft)
            return
        self._forgotten.append(kept)
        self._write_behind()

    def take_over(self, kept: Kept) -> None:
        """Make what an earlier run left a draft of this run; the old file goes when the new one is written."""
        if kept.path == OF_THIS_RUN:
            return
        self._newest[kept.draft.name] = kept.draft
        self._unwritten[kept.draft.name] = kept.draft
        self._forgotten.append(kept)
        self._write_behind()

    def _shelf(self) -> Drafts:
        if self._drafts is None:
            self._drafts = self._open_drafts()
        return self._drafts

    def _write_behind(self) -> None:
        if self._timer is not None:
            self._timer.stop()
            self._timer = None
        self._host.in_thread(self._write, "drafts")

    def _write(self, *, quietly: bool = False) -> None:
        """Write what is newest of everything that waits; what a disk refuses waits on, and is told of once."""
        refused: dict[str, Draft] = {}
        with self._lock:
            while self._unwritten:
                name, draft = self._unwritten.popitem()
                try:
                    if name in self._newest:
                        self._shelf().keep(self._newest[name])
                    else:
                        self._shelf().drop(draft)
                except Refused as refusal:
                    refused[name] = draft
                    if not quietly:
                        self._tell(refusal.sentence.removesuffix(UNTOUCHED))
            while self._forgotten and not refused:
                self._shelf().forget(self._forgotten.pop())
            self._unwritten = refused | self._unwritten
            self._told = bool(refused) and (self._told or not quietly)

    def _tell(self, refusal: str) -> None:
        if not self._told:
            said = f"What you type is not kept as a draft. {refusal}"
            self._host.on_screen(lambda: self._host.say(said))
