"""What is wrong in the files of the book, each with its place; one key opens the file there."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from library.book import folders
from library.book.model import Place
from tui.screens.in_editor import open_file
from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap

if TYPE_CHECKING:
    from library.book.model import Finding
    from tui.session import Session


@dataclass(frozen=True)
class Problem:
    """One problem as it is shown.

    Attributes:
        state: ``error`` or ``warning``.
        where: the table and key, or what it is about.
        sentence: what is wrong and what to do.
        place: where it stands.
    """

    state: Literal["error", "warning"]
    where: str
    sentence: str
    place: Place


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

    def problems(self) -> list[Problem]:
        """The problems of the keys and of the book."""
        findings = self.session.book.findings if self.session.book is not None else ()
        keys = [_of_keys(sentence) for sentence in self.session.keymap.problems]
        return [*keys, *map(_of_book, findings)]

    def text(self, width: int) -> list[Line]:
        """The problems in full, or a word that there are none."""
        problems = self.problems()
        self._chosen = max(0, min(self._chosen, len(problems) - 1))
        self._starts = []
        lines: list[Line] = []
        for number, problem in enumerate(problems):
            self._starts.append(len(lines))
            lines += _shown(problem, width, chosen=number == self._chosen)
        return lines or [EMPTY, *wrap("Nothing is wrong in the files of the book.", width)]

    def do_scroll_up(self) -> None:
        """To the problem before."""
        self._go(-1)

    def do_scroll_down(self) -> None:
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

    def do_open_file(self) -> None:
        """Open the file of the chosen problem at its line."""
        problems = self.problems()
        if not problems:
            self.say("Nothing is wrong, so there is nothing to open.")
            return
        place = problems[self._chosen].place
        if place.file.is_relative_to(folders.shipped_folder()):
            self.say(
                f"{place.file.name} came with the program and is never changed here; please report this problem."
            )
        else:
            open_file(self.heelclear, place)


def _of_keys(sentence: str) -> Problem:
    return Problem("warning", "your own keys", sentence, Place(folders.config_folder() / "keys.toml"))


def _of_book(finding: Finding) -> Problem:
    sentence = f"{finding.wrong} {finding.fix}".strip()
    return Problem(finding.state, finding.where or "the whole file", sentence, finding.place)


def _shown(problem: Problem, width: int, *, chosen: bool) -> list[Line]:
    place = f"{problem.place.file}, line {problem.place.line}, column {problem.place.column}"
    return [
        line(
            Piece("> " if chosen else "  ", "strong"),
            Piece(problem.state.upper(), "stop" if problem.state == "error" else "watch"),
            f"  {problem.where}",
        ),
        *wrap(problem.sentence, width, first="    ", rest="    "),
        *wrap(place, width, "quiet", first="    ", rest="    "),
        EMPTY,
    ]
