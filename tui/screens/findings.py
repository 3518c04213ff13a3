"""What is wrong in the files of the book, each with its place; one key opens the file there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.book import folders
from library.issue import Issue, Place
from library.pages.page import Page, Said, Section
from tui.screens.in_editor import open_file
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, filled, fit, line, rule, wrap

if TYPE_CHECKING:
    from tui.screens.base_screen import Needs
    from tui.services.export import Printed
    from tui.session import Session


class FindingsScreen(Reading):
    """Each problem with its file and line, and what to do; Up and Down go from one to the next.

    Only what is in sight is laid out, for a book may have problems by the thousand.
    """

    WHERE = "findings"

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._chosen = 0
        self._top = 0
        self._hidden = 0
        self._width, self._height = 1, 1

    def title_text(self) -> str:
        """How many problems there are."""
        return f"Problems: {self.session.problem_count()}"

    def issues(self) -> list[Issue]:
        """What is wrong with the person's own keys and settings, and with the book."""
        findings = self.session.book.findings if self.session.book is not None else ()
        keys = [_of_keys(sentence) for sentence in self.session.keymap.problems]
        return [*keys, *self.session.own_problems, *findings]

    def text(self, width: int) -> list[Line]:
        """What stands there where nothing is wrong."""
        return [EMPTY, *wrap("Nothing is wrong in the files of the book.", width)]

    def body(self, width: int, height: int) -> list[Line]:
        """The problems in sight, over a line that says how many are below."""
        issues = self.issues()
        if not issues:
            return super().body(width, height)
        self._width, self._height = max(width - 1, 1), max(height - 1, 1)
        self._chosen = min(self._chosen, len(issues) - 1)
        self._scroll(issues, 0)
        lines, after = self._down_from(issues, self._top, self._hidden + self._height)
        below = len(issues) - after + (len(lines) > self._hidden + self._height + 1)
        said = f"── {below} more problem{'s' if below > 1 else ''}: PgDn ──"
        edge = line(Piece(fit(said, width), "rule")) if below else rule(width)
        return [*filled(lines[self._hidden :], height - 1), edge]

    def _block(self, issues: list[Issue], number: int) -> list[Line]:
        return _shown(issues[number], self._width, chosen=number == self._chosen)

    def _down_from(self, issues: list[Issue], first: int, wanted: int) -> tuple[list[Line], int]:
        """The lines from a problem on, as many as are wanted at least, and the problem after them."""
        lines: list[Line] = []
        while first < len(issues) and len(lines) < wanted:
            lines += self._block(issues, first)
            first += 1
        return lines, first

    def _up_from(self, issues: list[Issue], last: int) -> tuple[int, int]:
        """Where a screenful begins that ends with a problem: its first problem, and how many lines of it are hidden."""
        first, count = last, len(self._block(issues, last))
        while first > 0 and count < self._height:
            first -= 1
            count += len(self._block(issues, first))
        return first, max(count - self._height, 0)

    def _scroll(self, issues: list[Issue], by: int) -> None:
        """Move the window over the problems, stopping at both ends."""
        top, hidden = min(self._top, len(issues) - 1), self._hidden + by
        while hidden < 0 and top > 0:
            top -= 1
            hidden += len(self._block(issues, top))
        while top < len(issues) - 1 and hidden >= (size := len(self._block(issues, top))):
            top, hidden = top + 1, hidden - size
        self._top, self._hidden = min((top, max(hidden, 0)), self._up_from(issues, len(issues) - 1))

    def printed(self) -> Printed:
        """The problems, each with its file and its line."""
        sections = tuple(
            Section(
                f"{one.severity.upper()}  {one.way or 'the whole file'}",
                (Said((one.text, place_of(one))),),
            )
            for one in self.issues()
        )
        return printed_page(Page(self.title_text(), sections), "problems")

    def do_up(self) -> None:
        """To the problem before."""
        self._go(-1)

    def do_down(self) -> None:
        """To the next problem."""
        self._go(1)

    def do_first(self) -> None:
        """To the first problem."""
        self._go(-self._chosen)

    def do_last(self) -> None:
        """To the last problem."""
        self._go(len(self.issues()))

    def do_page_up(self) -> None:
        """One screenful up, with a line in common."""
        self._page(-1)

    def do_page_down(self) -> None:
        """One screenful down, with a line in common."""
        self._page(1)

    def _page(self, pages: int) -> None:
        if issues := self.issues():
            self._scroll(issues, pages * max(self._height - 1, 1))

    def _go(self, by: int) -> None:
        """Choose another problem and bring the whole of it into sight."""
        issues = self.issues()
        self._chosen = max(0, min(self._chosen + by, len(issues) - 1))
        if not issues:
            return
        # The window may begin no earlier than a screenful that ends with the chosen one, and no later than that one.
        earliest = self._up_from(issues, self._chosen)
        self._top, self._hidden = min(max((self._top, self._hidden), earliest), (self._chosen, 0))

    def needs(self) -> Needs:
        """Something that is wrong in a file of the shop."""
        return {**super().needs(), "go-on": self._can_open, "change": self._can_open}

    def _can_open(self) -> bool:
        issues = self.issues()
        return bool(issues) and not _is_shipped(issues[min(self._chosen, len(issues) - 1)])

    def do_go_on(self) -> None:
        """Open the file of the chosen problem at its line."""
        self.do_change()

    def do_change(self) -> None:
        """Open the file of the chosen problem at its line."""
        issues = self.issues()
        if not issues:
            self.say("Nothing is wrong, so there is nothing to open.")
            return
        place = issues[self._chosen].place
        if _is_shipped(issues[self._chosen]):
            self.say(
                f"{place.file.name} came with the program and is never changed here; please report this problem."
            )
        else:
            open_file(self.heelclear, place)


def _is_shipped(issue: Issue) -> bool:
    """Whether a problem is in a file that came with the program, which is never changed here."""
    return issue.place.file.is_relative_to(folders.shipped_folder())


def _of_keys(sentence: str) -> Issue:
    place = Place(folders.config_folder() / "keys.toml")
    return Issue("your own keys", "", "warning", sentence, place=place)


def place_of(issue: Issue) -> str:
    """File, line and column of a problem."""
    return f"{issue.place.file}, line {issue.place.line}, column {issue.place.column}"


def _shown(issue: Issue, width: int, *, chosen: bool) -> list[Line]:
    place = place_of(issue)
    return [
        line(
            Piece("> " if chosen else "  ", "strong"),
            Piece(issue.severity.upper(), issue.state),
            f"  {issue.way or 'the whole file'}",
        ),
        *wrap(issue.text, width, first="    ", rest="    "),
        *wrap(place, width, "quiet", first="    ", rest="    "),
        EMPTY,
    ]
