"""Help for the screen that it was asked on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.screens.calculator import CalculatorScreen
from tui.screens.reading import Reading
from tui.view.help_page import help_lines
from tui.view.lines import Line

if TYPE_CHECKING:
    from tui.screens.board import Board
    from tui.session import Session


class HelpScreen(Reading):
    """What is in front of the reader, its words and its keys."""

    WHERE = "help"

    def __init__(self, session: Session, about: Board) -> None:
        super().__init__(session)
        self.about = about

    def title_text(self) -> str:
        """What the help is about."""
        return f"Help: {self.about.title_text()}"

    def text(self, width: int) -> list[Line]:
        """The help for the screen below."""
        about, keymap = self.about, self.session.keymap
        if isinstance(about, CalculatorScreen):
            form = about.page.form
            outputs = form.answer.result.outputs if form.answer and form.answer.result else ()
            keys = dict.fromkeys([*(field.key for field in form.fields), *outputs])
            return help_lines(about.WHERE, keymap, width, form.sheet, keys, in_hand=form.focus)
        return help_lines(about.WHERE, keymap, width, keys=about.words())

    def do_help(self) -> None:
        """Already here: the same key leaves again."""
        self.do_back()
