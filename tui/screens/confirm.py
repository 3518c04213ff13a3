"""A question before something is thrown away or written over: it names the thing, and to leave it comes first."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tui.screens.chooser import Choice, Chooser

if TYPE_CHECKING:
    from tui.session import Session


class ConfirmScreen(Chooser):
    """Two choices, the harmless one first; Enter takes one and goes back.

    Args:
        session: what the program knows.
        question: with the name of the thing.
        deed: what doing it is called, such as ``Discard it``.
        what: what comes of it, in a sentence.
        then: does it, on the screen that asked.
    """

    WHERE = "confirm"
    NAME_WIDTH = 22

    def __init__(
        self, session: Session, question: str, deed: str, what: str, then: Callable[[], None]
    ) -> None:
        super().__init__(session)
        self._question = question
        self._choices = [
            Choice("leave", "Go back", "Nothing is changed."),
            Choice("do", deed, what),
        ]
        self._then = then

    def title_text(self) -> str:
        """What is asked."""
        return self._question

    def choices(self) -> list[Choice]:
        """To go back, and to do it."""
        return self._choices

    def found(self) -> list[Choice]:
        """The one whose name begins as typed, else both: what is typed on by mistake must not choose the deed."""
        begun = self.find.text.strip().casefold()
        return [one for one in self._choices if one.name.casefold().startswith(begun)] or self._choices

    def take(self, choice: Choice) -> None:
        """Go back, and do it if that was chosen."""
        self.app.pop_screen()
        if choice.id == "do":
            self._then()
