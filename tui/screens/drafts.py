"""What was typed and not saved when the program last ended."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.screens.chooser import Choice, Chooser

if TYPE_CHECKING:
    from library.drafts.shelf import Kept
    from tui.session import Session

_KINDS = {
    "calculator": "Calculator",
    "value": "Value",
    "text": "Text",
    "table": "Table",
    "job-card": "Job card",
}


class DraftsScreen(Chooser):
    """The drafts that were left behind, the newest first."""

    WHERE = "drafts"
    NAME_WIDTH = 40

    def __init__(self, session: Session, kept: list[Kept]) -> None:
        super().__init__(session)
        self.kept = kept
        self.view.count = len(self.kept)

    def title_text(self) -> str:
        """What they are."""
        return "Left unsaved when the program last ended"

    def choices(self) -> list[Choice]:
        """Each draft with what was typed, and what stood there when it was begun."""
        return [Choice(str(place), _name(kept), _text(kept)) for place, kept in enumerate(self.kept)]

    def take(self, choice: Choice) -> None:
        """Take it up again."""
        kept = self.kept.pop(int(choice.id))
        self.app.pop_screen()
        self.heelclear.drafting.recover(kept)

    def do_drop_draft(self) -> None:
        """Forget it."""
        found = self.found()
        if not found:
            return
        self.heelclear.drafting.forget(self.kept.pop(int(found[self.view.chosen].id)))
        if self.kept:
            self.view.resize(len(self.kept), self.view.height)
            self.say("It is forgotten.")
        else:
            self.app.pop_screen()


def _name(kept: Kept) -> str:
    draft = kept.draft
    return f"{_KINDS.get(draft.kind, draft.kind)}: {draft.about}"


def _text(kept: Kept) -> str:
    draft = kept.draft
    said = [
        f"{key}: {text}" + (f" (was {draft.started[key]})" if draft.started.get(key) else "")
        for key, text in draft.fields.items()
        if text != draft.started.get(key, "")
    ]
    return f"{draft.kept:%Y-%m-%d %H:%M}  " + "; ".join(said)
