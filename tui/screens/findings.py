"""What is wrong in the files of the book."""

from __future__ import annotations

from tui.screens.reading import Reading
from tui.view.lines import EMPTY, Line, Piece, line, wrap


class FindingsScreen(Reading):
    """Each problem with its file and line, and what to do."""

    WHERE = "findings"

    def title_text(self) -> str:
        """How many problems there are."""
        count = len(self.session.book.findings) if self.session.book is not None else 0
        return f"Problems in the book: {count}"

    def text(self, width: int) -> list[Line]:
        """The problems, or a word that there are none."""
        findings = self.session.book.findings if self.session.book is not None else ()
        if not findings:
            return [EMPTY, *wrap("Nothing is wrong in the files of the book.", width)]
        lines: list[Line] = []
        for finding in findings:
            place = f"{finding.place.file}, line {finding.place.line}, column {finding.place.column}"
            word = "STOP" if finding.state == "stop" else "WATCH"
            lines.append(line(Piece(word, finding.state), f"  {finding.where or 'the whole file'}"))
            lines += wrap(f"{finding.wrong} {finding.mend}".strip(), width, first="  ", rest="  ")
            lines += wrap(place, width, "quiet", first="  ", rest="  ")
            lines.append(EMPTY)
        return lines
