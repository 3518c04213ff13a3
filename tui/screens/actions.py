"""The menu: every action of the screen below, found by typing and done by Enter."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.actions import actions_of, on_screen
from tui.keys import shown_key
from tui.meanings import MOVES
from tui.screens.chooser import Choice, Chooser

if TYPE_CHECKING:
    from tui.screens.base_screen import BaseScreen
    from tui.session import Session


class ActionsScreen(Chooser):
    """The actions of the screen below; Enter goes back there and does the chosen one."""

    WHERE = "menu"

    def __init__(self, session: Session, below: BaseScreen) -> None:
        super().__init__(session)
        self.below = below

    def title_text(self) -> str:
        """What this is."""
        return "What can be done here"

    def choices(self) -> list[Choice]:
        """The actions of the screen below, by their keys."""
        keys = self.session.keymap.keys
        return [
            Choice(one.id, ", ".join(map(shown_key, keys(one.id))) or one.title, one.help)
            for one in actions_of(self.below.WHERE)
            if one.id not in MOVES and one.id != "menu"
        ]

    def take(self, choice: Choice) -> None:
        """Go back and do it there."""
        self.app.pop_screen()
        self.below.call_after_refresh(self.below.do, on_screen(self.below.WHERE)[choice.id])
