"""The menu: everything that can be done on the screen below, in its parts, found by typing and done by Enter."""

from __future__ import annotations

from typing import TYPE_CHECKING

from tui.actions import Action, Group, actions_of, on_screen
from tui.keys import shown_key
from tui.meanings import MOVES
from tui.screens.chooser import Choice, Chooser
from tui.view.lines import Line, edge_of
from tui.view.menu_page import ORDER, MenuLine, menu_line, menu_lines

if TYPE_CHECKING:
    from tui.screens.base_screen import BaseScreen
    from tui.session import Session


SHEET = "calculate "
"""Before the name of a calculation that was found by typing; no action is called so."""


class ActionsScreen(Chooser):
    """The actions of the screen below; Enter goes back there and does the chosen one."""

    WHERE = "menu"

    def __init__(self, session: Session, below: BaseScreen) -> None:
        super().__init__(session)
        self.below = below
        self._top = 0
        self._more = 0

    def title_text(self) -> str:
        """What this is."""
        return "What can be done   type to find it; Enter does it"

    def choices(self) -> list[Choice]:
        """The actions of the screen below, part by part; those that only move are left out."""
        offered = [one for one in actions_of(self.below.WHERE) if one.id not in MOVES and one.id != "menu"]
        offered.sort(key=lambda one: ORDER.index(one.group))
        found = [Choice(one.id, self._title(one), one.help) for one in offered]
        # Nobody scrolls through them here; F2 lists them.
        sheets = self.below.sheets() if self.find.text else ()
        return [*found, *(Choice(f"{SHEET}{one.name}", one.title, one.question) for one in sheets)]

    def take(self, choice: Choice) -> None:
        """Go back and do it there."""
        if choice.id.startswith(SHEET):
            self.below.open_sheet(choice.id.removeprefix(SHEET))
            self.app.pop_screen()
            return
        self.app.pop_screen()
        self.below.call_after_refresh(self.below.do, on_screen(self.below.WHERE)[choice.id])

    def listed(self, found: list[Choice], width: int, height: int) -> list[Line]:
        """The parts with their headings; what is found by typing stands without, the likeliest first."""
        rows = [self._line(one) for one in found]
        self._more = self.view.below()
        if self.find.text or height < len(ORDER):
            return [
                menu_line(rows[place], width, chosen=place == self.view.chosen)
                for place in range(self.view.top, min(self.view.top + height, len(rows)))
            ]
        headings: dict[Group, str] = {group: group.upper() for group in ORDER}
        headings["here"] = f"HERE: {self.below.title_text().partition('   ')[0]}"
        lines, place = menu_lines(rows, self.view.chosen, headings, width)
        above = place if self.view.chosen else 0
        self._top = max(0, min(self._top, above - 1, len(lines) - height), place - height + 1)
        self._more = max(0, len(lines) - self._top - height)
        return lines[self._top : self._top + height]

    def edge(self, width: int) -> Line:
        """How many lines of it are below what is in sight."""
        return edge_of(self._more, width)

    def _line(self, choice: Choice) -> MenuLine:
        if choice.id.startswith(SHEET):
            return MenuLine("", choice.name, "go")
        return MenuLine(self._keys(self._action(choice)), choice.name, self._action(choice).group)

    def _action(self, choice: Choice) -> Action:
        return on_screen(self.below.WHERE)[choice.id]

    def _keys(self, one: Action) -> str:
        return ", ".join(map(shown_key, self.session.keymap.keys(one.id)[:1]))

    def _title(self, one: Action) -> str:
        """What it is called, and how many there are of what is counted."""
        match one.id:
            case "findings":
                count = self.session.problem_count()
            case "drafts":
                count = len(self.session.left_behind)
            case "compare" if self.below.WHERE == "book":
                count = len(self.session.page.marked)
            case _:
                return one.title
        return f"{one.title}: {count}"
