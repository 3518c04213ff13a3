"""The setup sheet of a job card on the screen, and written to a file."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from library.pages.as_text import PAPER
from library.setup_sheet.composing import compose
from library.setup_sheet.sheets import setup_sheet
from tui.screens.reading import Reading
from tui.services.export import write_new_file
from tui.view.lines import Line, wrap
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from library.cards.job import Job
    from tui.session import Session

ENDINGS = {"text": ".txt", "markdown": ".md", "html": ".html"}


class SheetScreen(Reading):
    """The page to carry to the machine."""

    WHERE = "sheet"

    def __init__(self, session: Session, job: Job) -> None:
        super().__init__(session)
        self._job = job
        self._page = compose(job, job.display)

    def title_text(self) -> str:
        """Of which card."""
        return f"Setup sheet: {self._job.card.title}"

    def state_text(self) -> str:
        """The unit of lengths."""
        return self._job.display.lengths

    def text(self, width: int) -> list[Line]:
        """The page as it prints, narrower where the screen is."""
        width = min(width, PAPER.width)
        return [*wrap(self._page.title, width, "head"), *page_lines(self._page, width)]

    def do_cautions(self) -> None:
        """Show the cautions of the job in full."""
        self.heelclear.show_cautions(None, self._job.entry, lambda _: self._job.cautions)

    def do_sheet_text(self) -> None:
        """Write it as text."""
        self._write("text")

    def do_sheet_markdown(self) -> None:
        """Write it as Markdown."""
        self._write("markdown")

    def do_sheet_html(self) -> None:
        """Write it as HTML, with the drawing."""
        self._write("html")

    def _write(self, form: str) -> None:
        card = self._job.card
        name = f"setup-sheet-{card.id or card.tool.name or 'new'}"
        try:
            path = write_new_file(
                setup_sheet(self._job, form, self._job.display), Path.cwd(), name, ENDINGS[form]
            )
        except OSError as error:
            self.say(
                f"The file could not be written: {error.strerror}. Start in a folder in which you may write."
            )
        else:
            self.say(f"Written to {path}.")
