"""Choosing the value of one line of a job card from a list."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from tui.screens.chooser import Choice, Chooser

if TYPE_CHECKING:
    from tui.session import Session


class PickScreen(Chooser):
    """Choices for whoever asked; Enter takes one and goes back, unless the list is kept below what comes of it.

    Args:
        session: what the program knows.
        title: what is to be chosen.
        choices: all there are.
        then: does something with the id of the chosen one.
        chosen: the id to stand on at first.
        is_kept: whether the list stays, so that another one can be taken.
    """

    WHERE = "pick"
    NAME_WIDTH = 28

    def __init__(
        self,
        session: Session,
        title: str,
        choices: Sequence[Choice],
        then: Callable[[str], None],
        chosen: str = "",
        *,
        is_kept: bool = False,
    ) -> None:
        super().__init__(session)
        self._is_kept = is_kept
        self._title = title
        self._choices = list(choices)
        self._then = then
        ids = [choice.id for choice in self._choices]
        self.view.count = len(ids)
        self.view.chosen = ids.index(chosen) if chosen in ids else 0

    def title_text(self) -> str:
        """What is to be chosen."""
        return self._title

    def choices(self) -> list[Choice]:
        """All there are."""
        return self._choices

    def take(self, choice: Choice) -> None:
        """Go back with it, or do what it is for over the list."""
        if not self._is_kept:
            self.app.pop_screen()
        self._then(choice.id)
