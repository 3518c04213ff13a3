"""The three screens of the day's work as panes: the list of the book, the tool, the calculation.

Below 100 columns each is a screen of its own. From there on list and tool stand side by side, from 150 all three, and
going from one to the other only moves what is in hand. A pane without room is one line before it is gone. Who comes back
from the job cards to panes side by side has the list in hand; among panes one goes back to the one that one came from.
"""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, ClassVar

from textual.app import ComposeResult
from textual.containers import Horizontal

from tui import screens
from tui.screens.base_screen import BaseScreen
from tui.view.bars import banner
from tui.view.lines import Line, Piece, fit, line, rule, wrap
from tui.widgets.pane import Pane

if TYPE_CHECKING:
    from textual.timer import Timer

    from library.book.model import Entry
    from tui.session import Session

LIST, TOOL, CALCULATION = "list", "tool", "calculation"
"""The panes, from left to right."""

REST = 0.25
"""Seconds without a key after which the tool and the calculation follow the list, so that a held key stays quick."""

TWO_FROM, THREE_FROM = 100, 150
"""Columns from which so many panes stand side by side."""

TO_THE_LIST_FROM = frozenset({"cards", "card"})
"""Screens of another job than the one in the panes: who comes back from them looks for the next tool."""


class PanedScreen(BaseScreen):
    """A screen that is one of the panes; the others stand beside it where there is room."""

    PLACE: ClassVar[str]
    """Which of the panes this one is."""

    HORIZONTAL_BREAKPOINTS = [
        (0, "-one"),
        (TWO_FROM, "-two"),
        (THREE_FROM, "-three"),
    ]

    DEFAULT_CSS = """
    PanedScreen { layout: vertical; }
    PanedScreen #head, PanedScreen #panes, PanedScreen #foot { display: none; }
    PanedScreen.-two #whole, PanedScreen.-three #whole { display: none; }
    PanedScreen.-two #head, PanedScreen.-three #head { display: block; height: auto; }
    PanedScreen.-two #panes, PanedScreen.-three #panes { display: block; height: 1fr; }
    PanedScreen.-two #foot, PanedScreen.-three #foot { display: block; height: auto; }
    PanedScreen.-two #list { width: 55%; max-width: 80; }
    PanedScreen.-two #calculation { display: none; }
    PanedScreen.-two.-alone #calculation { display: block; }
    PanedScreen.-two.-alone #list, PanedScreen.-two.-alone #tool { display: none; }
    PanedScreen.-three #list { width: 29%; }
    PanedScreen.-three #tool { width: 33%; }
    PanedScreen.-three.-alone #list { width: 1fr; }
    PanedScreen.-three.-alone #tool { width: 1.4fr; }
    PanedScreen.-three.-alone #calculation { width: 81; }
    """

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self.set_class(self.PLACE == CALCULATION, "-alone")
        self._head = Pane(session.theme, self._head_lines, "head")
        self._foot = Pane(session.theme, self._foot_lines, "foot")
        self._panes = {
            place: Pane(
                session.theme, partial(self._pane_lines, place), place, edge=partial(self._has_edge, place)
            )
            for place in (LIST, TOOL, CALCULATION)
        }
        self._shown_beside: object = None
        self._soon: Timer | None = None
        self._left_for = ""
        self.guide = ""
        self.shown_tool: Entry | None = None

    def compose(self) -> ComposeResult:
        """The whole screen as one, and the panes that stand in its place where it is wide."""
        yield self._pane
        yield self._head
        with Horizontal(id="panes"):
            yield from self._panes.values()
        yield self._foot

    def guided(self, width: int) -> list[Line]:
        """What a new hand is told to look at here, where a first job was opened."""
        return wrap(self.guide, width, "strong") if self.guide else []

    def tool(self) -> Entry | None:
        """The tool that the panes are about."""
        raise NotImplementedError

    @property
    def abreast(self) -> int:
        """How many panes stand side by side on a screen so wide."""
        width = self.size.width
        return 3 if width >= THREE_FROM else 2 if width >= TWO_FROM else 1

    def draw(self) -> None:
        """Show the screen as it now is; what stands beside is drawn again only where it changed."""
        if self._soon is not None:
            self._soon.stop()
            self._soon = None
        if self.abreast == 1:
            super().draw()
            return
        self._panes[self.PLACE].show()
        self._head.show()
        if self._stamp() != self._shown_beside:
            if self.PLACE == LIST and self._shown_beside is not None:
                self._soon = self.set_timer(REST, self._show_beside)
            else:
                self._show_beside()
        self._foot.show()

    def on_resize(self) -> None:
        """Fill the panes that a wider screen has room for; while it was narrow nothing was drawn beside."""
        self.call_after_refresh(self._catch_up)

    def _catch_up(self) -> None:
        if self.is_current and self.abreast > 1 and self._stamp() != self._shown_beside:
            self._show_beside()

    @property
    def is_behind(self) -> bool:
        """Whether what stands beside still waits for the keys to rest."""
        return self._soon is not None

    def _show_beside(self) -> None:
        """Draw what stands beside the pane in hand."""
        self._soon = None
        self._shown_beside, self.shown_tool = self._stamp(), self.tool()
        for place, pane in self._panes.items():
            if pane.display and place != self.PLACE:
                pane.show()
        self._foot.show()

    def on_screen_suspend(self) -> None:
        """Know for which screen the panes are left."""
        above = self.app.screen
        self._left_for = above.WHERE if isinstance(above, BaseScreen) and above is not self else ""

    def came_back(self) -> None:
        """Draw again; back from the job cards the list is in hand, whichever pane they were opened from."""
        came_from, self._left_for = self._left_for, ""
        if self.is_current and self.abreast > 1 and self.PLACE != LIST and came_from in TO_THE_LIST_FROM:
            self.heelclear.back_from("calculator", "entry")
        else:
            self._shown_beside = None  # What was typed on the screen above stands beside this one too.
            super().came_back()

    def do_next_place(self) -> None:
        """To the pane at the right, and from the last one to the list; in a calculation that is alone to the next field."""
        if self.PLACE != CALCULATION:
            self._do("go-on" if self.PLACE == LIST else "calculate")
        elif self.abreast == 1:
            super().do_next_place()
        else:
            self.heelclear.back_from("calculator", "entry")

    def do_place_before(self) -> None:
        """To the pane at the left, and from the list to the last one; in a calculation that is alone to the field before."""
        below, tool = self.app.screen_stack[-2:][0], self.tool()
        if self.PLACE == CALCULATION and self.abreast == 1:
            super().do_place_before()
        elif self.PLACE == LIST:
            self._do("calculate")
        elif self.PLACE == CALCULATION and isinstance(below, PanedScreen) and below.PLACE == LIST and tool:
            self.app.switch_screen(screens.EntryScreen(self.session, tool))
        else:
            self._do("back")

    def _stamp(self) -> object:
        """What everything hangs on that stands beside the pane in hand."""
        session, page, tool = self.session, self.session.page, self.tool()
        at = (page.find.text, page.view.chosen, page.view.top, tuple(page.marked), len(page.hits))
        return (at, id(tool), id(session.book), session.display, session.units_ready)

    def _has_edge(self, place: str) -> bool:
        return place != LIST and not self._alone()

    def _alone(self) -> bool:
        """Whether the calculation takes the whole width, list and tool a line each."""
        return self.PLACE == CALCULATION and self.abreast == 2

    def _head_lines(self, width: int, height: int) -> list[Line]:
        if not self._alone():
            return [banner(self.session.book_title, self.session.display.lengths, width)]
        return [banner(self.title_text(), self.state_text(), width)]

    def _pane_lines(self, place: str, width: int, height: int) -> list[Line]:
        if place == self.PLACE:
            if place == LIST or self._alone():
                return self.body(width, height)
            return [banner(self.title_text(), self.state_text(), width), *self.body(width, height - 1)]
        if place == LIST:
            return self.session.page.draw(width, height, live=False, lengths=self.session.display.lengths)
        beside = screens.tool_beside if place == TOOL else screens.calculation_beside
        return beside(self.session, self.shown_tool, width, height)

    def _foot_lines(self, width: int, height: int) -> list[Line]:
        last = self.last_lines(width)
        above = [rule(width)]
        if self._alone():
            # Below, for the verdict stands on the second line.
            above = [
                screens.list_in_a_line(self.session, width),
                screens.tool_in_a_line(self.session, self.shown_tool, width),
            ]
        elif self.abreast == 2:
            above = [screens.calculation_in_a_line(self.session, self.shown_tool, width)]
        return [*above, *self.foot(width, self.size.height), *last]


def in_a_line(title: str, told: str, width: int) -> Line:
    """A pane that has no room but for one line."""
    said = f" {told} " if told else " "
    return line(
        Piece("── ", "rule"),
        Piece(title, "strong"),
        Piece(fit(said + "─" * width, max(width - 3 - len(title), 0)).replace("…", "─"), "rule"),
    )
