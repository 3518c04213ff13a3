"""The menu: everything that can be done on the screen below, in its parts, found by typing and done by Enter."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from tui.actions import Action, Group, Where, actions_of, on_screen
from tui.keys import shown_key
from tui.meanings import MOVES
from tui.screens.chooser import Choice, Chooser
from tui.view.lines import Line, edge_of
from tui.view.menu_page import ORDER, MenuLine, across, in_columns, menu_line, menu_lines

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tui.screens.base_screen import BaseScreen
    from tui.session import Session


SHEET = "calculate "
"""Before the name of a calculation that was found by typing; no action is called so."""


def in_menu(where: Where) -> list[Action]:
    """The actions of a screen that a menu may have, part by part; those that only move are left out."""
    found = [one for one in actions_of(where) if one.id not in MOVES and one.id != "menu"]
    return sorted(found, key=lambda one: ORDER.index(one.group))


def _far_from(choice: Choice, words: Sequence[str]) -> int:
    """How far what is sought lies from what can be done.

    Example:
        >>> mark = Choice("mark", "mark the entry", "Marks it to be set beside others.")
        >>> _far_from(mark, ["mark"]), _far_from(mark, ["ent"]), _far_from(mark, ["beside"]), _far_from(mark, ["side"])
        (0, 1, 3, 5)
    """
    places = [re.findall(r"\w+", text.casefold()) for text in (choice.name, choice.text)]
    for place, there in enumerate(places):
        if all(word in there for word in words):
            return 3 * place
        if all(any(one.startswith(word) for one in there) for word in words):
            return 3 * place + 1
        if all(word in " ".join(there) for word in words):
            return 3 * place + 2
    return 3 * len(places)


class ActionsScreen(Chooser):
    """The actions of the screen below; Enter goes back there and does the chosen one."""

    WHERE = "menu"

    def __init__(self, session: Session, below: BaseScreen) -> None:
        super().__init__(session)
        self.below = below
        self._top = 0
        self._more = self._over = 0

    def title_text(self) -> str:
        """What this is."""
        return "What can be done   type to find it; Enter does it"

    def choices(self) -> list[Choice]:
        """What the screen below can do as it now stands, part by part; what only moves is left out."""
        needs = self.below.needs()
        offered = [one for one in in_menu(self.below.WHERE) if one.id not in needs or needs[one.id]()]
        found = [Choice(one.id, self._title(one), one.help) for one in offered]
        # Nobody scrolls through them here; F2 lists them.
        sheets = self.below.sheets() if self.find.text else ()
        return [*found, *(Choice(f"{SHEET}{one.name}", one.title, one.question) for one in sheets)]

    def found(self) -> list[Choice]:
        """The likeliest first: those that have the words whole in their titles, then as parts of these, then in what is said of them."""
        words = self.find.text.casefold().split()

        def far(one: Choice) -> tuple[int, bool]:
            # What is there on every screen is seldom what somebody seeks.
            return _far_from(one, words), self._line(one).group == "program"

        return sorted(super().found(), key=far) if words else super().found()

    def take(self, choice: Choice) -> None:
        """Go back and do it there."""
        if choice.id.startswith(SHEET):
            self.below.open_sheet(choice.id.removeprefix(SHEET))
            self.app.pop_screen()
            return
        self.app.pop_screen()
        self.below.call_after_refresh(self.below.do, on_screen(self.below.WHERE)[choice.id])

    def edited(self, key: str) -> None:
        """Edit what is sought; where nothing is, Left and Right go to the other column."""
        if key in {"left", "right"} and not self.find.text and in_columns(self.size.width):
            self.view.choose(across([self._line(one) for one in self.found()], self.view.chosen))
        else:
            super().edited(key)

    def listed(self, found: list[Choice], width: int, height: int) -> list[Line]:
        """The parts with their headings; what is found by typing stands without, the likeliest first."""
        rows = [self._line(one) for one in found]
        self._more, self._over = self.view.below(), self.view.top
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
        self._more, self._over = max(0, len(lines) - self._top - height), self._top
        return lines[self._top : self._top + height]

    def edge(self, width: int) -> Line:
        """How many lines of it are below what is in sight."""
        return edge_of(self._more, width)

    def above(self) -> int:
        """How many lines of it are above what is in sight."""
        return self._over

    def nothing(self) -> str:
        """That what is sought can do nothing as the screen below now stands, or that there is no such thing."""
        words = self.find.text.casefold().split()
        rests = [one for one in in_menu(self.below.WHERE) if all(word in one.title for word in words)]
        match rests:
            case []:
                return super().nothing()
            case [one]:
                return f"Here and now there is nothing to {one.title!r}. It does this: {one.help}"
            case _:
                return f"Here and now there is nothing for any of these: {', '.join(one.title for one in rests)}."

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
