"""The base of screens that only show text: it scrolls, and says how much is below and above."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.pages.cautions import at_arms_length
from tui.screens.base_screen import BaseScreen
from tui.view.lines import Line, edge_of, filled
from tui.view.page_lines import block_lines
from tui.view.viewport import Viewport

if TYPE_CHECKING:
    from collections.abc import Iterable

    from library.book.model import Caution
    from tui.session import Session


class Reading(BaseScreen):
    """Text that scrolls; a subclass gives its lines for a width."""

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self.view = Viewport()

    def text(self, width: int) -> list[Line]:
        """The whole text, wrapped to ``width`` cells."""
        raise NotImplementedError

    def body(self, width: int, height: int) -> list[Line]:
        """The part of the text in sight, over a line that says how much is below and above."""
        lines = self.text(max(width - 1, 1))
        self.view.count, self.view.height = len(lines), max(height - 1, 1)
        self.view.scroll(0)
        edge = edge_of(self.view.below(), width, above=self.view.top)
        return [*filled(lines[self.view.top :], height - 1), edge]

    def warned(self) -> Iterable[Caution]:
        """The cautions that stand at the foot, the first ones first; none on most screens."""
        return ()

    def foot(self, width: int, height: int) -> list[Line]:
        """Those cautions in two lines, which stay while the text scrolls."""
        found = tuple(self.warned())
        return block_lines([at_arms_length(found, self.in_full)], width) if found else []

    def do_up(self) -> None:
        """One line up."""
        self.view.scroll(-1)

    def do_down(self) -> None:
        """One line down."""
        self.view.scroll(1)

    def do_page_up(self) -> None:
        """One screenful up, with a line in common."""
        self.view.scroll(-max(self.view.height - 1, 1))

    def do_page_down(self) -> None:
        """One screenful down, with a line in common."""
        self.view.scroll(max(self.view.height - 1, 1))

    def do_first(self) -> None:
        """To the beginning."""
        self.view.scroll(-self.view.count)

    def do_last(self) -> None:
        """To the end."""
        self.view.scroll(self.view.count)
