"""The drafts that an earlier run left unsaved: to take up, to compare with the book, or to discard."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui import screens
from tui.screens.chooser import Choice, Chooser
from tui.screens.confirming import ask
from tui.screens.draft_names import label_of, name_of
from tui.screens.draft_screens import is_there, put_away, put_away_old, screen_of, without_unit
from tui.screens.left_behind import opened_again, take_over
from tui.services.autosave import OF_THIS_RUN

if TYPE_CHECKING:
    from library.drafts.draft_store import Kept
    from tui.screens.base_screen import BaseScreen, Needs


class DraftsScreen(Chooser):
    """The drafts that were left behind, the newest first."""

    WHERE = "drafts"
    NAME_WIDTH = 40

    def title_text(self) -> str:
        """What they are."""
        in_this_run = any(one.path == OF_THIS_RUN for one in self.session.left_behind)
        return "Left unsaved" if in_this_run else "Left unsaved when the program last ended"

    def choices(self) -> list[Choice]:
        """Each draft with what was typed, and what stood there when it was begun."""
        kept = self.session.left_behind
        return [
            Choice(str(place), name_of(self.session, one.draft), _text(one)) for place, one in enumerate(kept)
        ]

    def take(self, choice: Choice) -> None:
        """Take it up again."""
        self.take_up(self.session.left_behind[int(choice.id)])

    def needs(self) -> Needs:
        """A chosen draft, to take it up one of this book, which has what it is about."""
        return {
            **super().needs(),
            "go-on": lambda: (chosen := self._chosen()) is not None and self.can_take_up(chosen),
            "compare": lambda: self._chosen() is not None,
            "drop-draft": lambda: self._chosen() is not None,
        }

    def can_take_up(self, kept: Kept) -> bool:
        """Whether it was typed in this book, and that still has what it is about."""
        is_ours = not self.heelclear.autosave.of_another_book(kept.draft)
        return is_ours and is_there(self.heelclear, kept.draft)

    def take_up(self, kept: Kept) -> None:
        """Open the screen that a draft was typed on, as it was left."""
        if self.session.book is None:
            self.say("The book is still being opened; try again in a moment.")
            return
        if other := self.heelclear.autosave.of_another_book(kept.draft):
            self.say(
                f"This was typed in another book, and would be written into the wrong one here. "
                f"Open that one to take it up: heelclear --library {other}"
            )
            return
        newer = self.heelclear.autosave.newest(kept.draft.name)
        if newer is not None and newer is not kept.draft and newer.kind != "calculator":
            self.say(
                "More was typed there since and is not saved. Open that and save it first; this draft stays."
            )
            return
        screen = screen_of(self.heelclear, self.session.book, kept.draft)
        if screen is None:
            self.say(
                "What this was about is not in the book any more. The draft stays, for you to read or to drop."
            )
            return
        take_over(self, kept)
        if not self.session.left_behind:
            # With others left, their list is what is come back to.
            self.app.pop_screen()
        self.app.push_screen(screen)
        if said := without_unit(kept.draft) or opened_again(screen):
            screen.say(said)

    def do_compare(self) -> None:
        """Show what was typed beside what the book has now."""
        chosen = self._chosen()
        if chosen is not None:
            self.app.push_screen(screens.DraftScreen(self.session, chosen, self))

    def do_drop_draft(self) -> None:
        """Forget the chosen one, once that is confirmed."""
        chosen = self._chosen()
        if chosen is not None:
            self.ask_to_drop(chosen, self)

    def ask_to_drop(self, kept: Kept, asked_on: BaseScreen) -> None:
        """Ask whether to forget a draft; the screen that is asked on is left then, where it is not this one."""

        def drop() -> None:
            if asked_on is not self:
                self.app.pop_screen()
            self.drop(kept)

        ask(
            asked_on,
            f"Discard {name_of(self.session, kept.draft)}?",
            "Discard it",
            f"It is forgotten for good: {_text(kept)}",
            drop,
        )

    def do_drop_all_drafts(self) -> None:
        """Forget all of them, once that is confirmed."""
        put_away(self, self.session.left_behind, self._come_back)

    def do_drop_old_drafts(self) -> None:
        """Forget those that nobody has touched for long, once that is confirmed."""
        put_away_old(self, self._come_back)

    def _come_back(self) -> None:
        if not self.session.left_behind:
            self.app.pop_screen()
            self.heelclear.say("They are forgotten; nothing else was left unsaved.")

    def drop(self, kept: Kept) -> None:
        """Forget a draft for good."""
        self.heelclear.autosave.forget(kept)
        self.session.left_behind.remove(kept)
        if self.session.left_behind:
            self.say("It is forgotten.")
        else:
            self.app.pop_screen()
            self.heelclear.say("It is forgotten; nothing else was left unsaved.")

    def _chosen(self) -> Kept | None:
        found = self.found()
        self.view.resize(len(found), self.view.height)
        return self.session.left_behind[int(found[self.view.chosen].id)] if found else None


def _text(kept: Kept) -> str:
    draft = kept.draft
    said = [
        f"{label_of(draft, key)}: {text or 'emptied'}"
        + (f" (was {draft.started[key]})" if draft.started.get(key) else "")
        for key, text in draft.fields.items()
        if text != draft.started.get(key, "")
    ]
    return f"{draft.kept:%Y-%m-%d %H:%M}  " + "; ".join(said)
