"""What was left unsaved of the thing that is opened now, by an earlier run or in this one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui import screens

if TYPE_CHECKING:
    from library.drafts.draft import Draft
    from library.drafts.draft_store import Kept
    from tui.screens.base_screen import BaseScreen


JOB_CARD = "job-card"
"""The kind of the drafts of job cards. It stands here, where nothing heavy is loaded for it."""


def left_of(screen: BaseScreen, name: str) -> Kept | None:
    """The newest draft of a name that an earlier run left of this book; nothing where there is none.

    Args:
        screen: of the program.
        name: of the draft, as ``Draft.name`` has it.
    """
    elsewhere = screen.heelclear.autosave.of_another_book
    named = (one for one in screen.session.left_behind if one.draft.name == name)
    return next((one for one in named if not elsewhere(one.draft)), None)


def take_over(screen: BaseScreen, kept: Kept) -> None:
    """Make a draft that an earlier run left one of this run, because what it is of is open with it."""
    screen.heelclear.autosave.take_over(kept)
    screen.session.left_behind.remove(kept)


def list_left(screen: BaseScreen, draft: Draft) -> None:
    """List what was typed on a screen that is left unsaved beside what earlier runs left."""
    left = screen.heelclear.autosave.leave(draft)
    if left is not None:
        screen.session.left_behind.insert(0, screens.of_this_run(left))


def opened_again(screen: BaseScreen) -> str:
    """What is said where a draft came back on a card that was closed since; empty where there is nothing to say."""
    if not isinstance(screen, screens.CardScreen) or screen.opened is None or not screen.opened.card.done:
        return ""
    return "This card was closed as a record since. With the draft on it, it is open again as soon as it is saved."
