"""A question before something is thrown away or written over: it names the thing, and to leave it comes first.

It has no find line: of two answers none has to be sought, and what a hand types on by mistake must not choose the deed.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from tui.screens.chooser import Choice, Chooser
from tui.view.lines import Line, Piece, line

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

    def head(self, width: int) -> Line:
        """How it is answered."""
        return line(Piece(self._how(), "quiet"))

    def room(self) -> None:
        """Nothing is typed here."""

    def typed(self, text: str) -> None:
        """Choose nothing by a letter, and say what does."""
        self.say(f"Letters answer nothing here. {self._how()}")

    def edited(self, key: str) -> None:
        """There is nothing to edit."""

    def _how(self) -> str:
        up, down, enter = map(self.key_of, ("up", "down", "go-on"))
        return f"{up} and {down} choose the answer, {enter} gives it."

    def take(self, choice: Choice) -> None:
        """Go back, and do it if that was chosen."""
        self.app.pop_screen()
        if choice.id == "do":
            self._then()
