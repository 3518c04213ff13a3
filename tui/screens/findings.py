"""What is wrong in the files of the book, each with its place; one key opens the file there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from library.book import folders
from library.issue import Issue, Place
from library.pages.page import Page, Said, Section
from tui.screens.in_editor import open_file
from tui.screens.printing import printed_page
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from tui.services.export import Printed
    from tui.session import Session


class FindingsScreen(Reading):
    """Each problem with its file and line, and what to do; Up and Down go from one to the next."""

    WHERE = "findings"

    def __init__(self, session: Session) -> None:
        super().__init__(session)
        self._chosen = 0
        self._starts: list[int] = []

    def title_text(self) -> str:
        """How many problems there are."""
        return f"Problems: {self.session.problem_count()}"

    def issues(self) -> list[Issue]:
        """What is wrong with the person's own keys, and with the book."""
        findings = self.session.book.findings if self.session.book is not None else ()
        keys = [_of_keys(sentence) for sentence in self.session.keymap.problems]
        return [*keys, *findings]

    def text(self, width: int) -> list[Line]:
        """The problems in full, or a word that there are none."""
        issues = self.issues()
        self._chosen = max(0, min(self._chosen, len(issues) - 1))
        self._starts = []
        lines: list[Line] = []
        for number, issue in enumerate(issues):
            self._starts.append(len(lines))
            lines += _shown(issue, width, chosen=number == self._chosen)
        return lines or [EMPTY, *wrap("Nothing is wrong in the files of the book.", width)]

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
        self._go(len(self._starts))

    def _go(self, by: int) -> None:
        """Choose another problem and bring the whole of it into sight."""
        self._chosen = max(0, min(self._chosen + by, len(self._starts) - 1))
        if self._starts:
            ends = [*self._starts[1:], self.view.count]
            self.view.top = max(self.view.top, ends[self._chosen] - self.view.height)
            self.view.top = min(self.view.top, self._starts[self._chosen])

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
        if place.file.is_relative_to(folders.shipped_folder()):
            self.say(
                f"{place.file.name} came with the program and is never changed here; please report this problem."
            )
        else:
            open_file(self.heelclear, place)


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
