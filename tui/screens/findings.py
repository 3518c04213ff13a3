"""What is wrong in the files of the book."""

from __future__ import annotations

from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap


class FindingsScreen(Reading):
    """Each problem with its file and line, and what to do."""

    WHERE = "findings"

    def title_text(self) -> str:
        """How many problems there are."""
        return f"Problems: {self.session.problem_count()}"

    def text(self, width: int) -> list[Line]:
        """The problems of the keys and of the book, or a word that there are none."""
        findings = self.session.book.findings if self.session.book is not None else ()
        lines: list[Line] = []
        for problem in self.session.keymap.problems:
            lines += [
                line(Piece("WATCH", "watch"), "  your own keys"),
                *wrap(problem, width, first="  ", rest="  "),
            ]
            lines.append(EMPTY)
        for finding in findings:
            place = f"{finding.place.file}, line {finding.place.line}, column {finding.place.column}"
            word = "STOP" if finding.state == "stop" else "WATCH"
            lines.append(line(Piece(word, finding.state), f"  {finding.where or 'the whole file'}"))
            lines += wrap(f"{finding.wrong} {finding.mend}".strip(), width, first="  ", rest="  ")
            lines += wrap(place, width, "quiet", first="  ", rest="  ")
            lines.append(EMPTY)
        return lines or [EMPTY, *wrap("Nothing is wrong in the files of the book.", width)]
