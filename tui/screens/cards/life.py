"""The life of one physical tool: every card of it, its size each time, and how many sharpenings are left."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.cards.history import History
from library.pages.life import life_page
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.lines import Line
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from library.pages.page import Page
    from tui.services.export import Printed
    from tui.session import Session


class LifeScreen(Reading):
    """A tool from its first card to its last."""

    WHERE = "life"

    def __init__(self, session: Session, found: History) -> None:
        super().__init__(session)
        self._found = found

    def title_text(self) -> str:
        """Which tool."""
        return f"The life of {self._found.name}"

    def text(self, width: int) -> list[Line]:
        """A row for each sharpening, then what is left."""
        return page_lines(self._page(), width)

    def printed(self) -> Printed:
        """The life of the tool."""
        return printed_page(self._page(), f"life-of-{self._found.name}")

    def _page(self) -> Page:
        return life_page(self._found, self.session.display)
