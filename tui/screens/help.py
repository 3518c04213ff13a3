"""Help for the screen that it was asked on."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.screens.printing import MAIL, printed_text
from tui.screens.reading import Reading
from tui.view.help_page import help_lines
from tui.view.lines import Line, text_of

if TYPE_CHECKING:
    from tui.screens.base_screen import BaseScreen
    from tui.services.export import Printed
    from tui.session import Session


class HelpScreen(Reading):
    """What is in front of the reader, its words and its keys."""

    WHERE = "help"

    def __init__(self, session: Session, about: BaseScreen) -> None:
        super().__init__(session)
        self.about = about

    def title_text(self) -> str:
        """What the help is about."""
        return f"Help: {self.about.title_text()}"

    def text(self, width: int) -> list[Line]:
        """The help for the screen below."""
        about = self.about
        return help_lines(
            about.WHERE,
            self.session.keymap,
            width,
            about.calculation(),
            about.words(),
            in_hand=about.word_in_hand(),
            told=about.told_in_hand(),
        )

    def printed(self) -> Printed:
        """The help as it is shown."""
        lines = [text_of(one).rstrip() for one in self.text(MAIL.width)]
        return printed_text(self.title_text(), lines, f"help-{self.about.WHERE}")

    def do_help(self) -> None:
        """Already here: the same key leaves again."""
        self.do_back()
