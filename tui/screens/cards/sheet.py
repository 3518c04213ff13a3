"""The setup sheet of a job card on the screen, and as it is taken away."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING

from library.calc.cautions import of_what_is_done
from library.pages.as_text import PAPER
from library.pages.cautions import without_words
from library.setup_sheet.composing import compose
from library.setup_sheet.sheets import setup_sheet
from tui.screens.reading import Reading
from tui.services.export import Printed
from tui.view.lines import Line, wrap
from tui.view.page_lines import page_lines

if TYPE_CHECKING:
    from library.book.model import Caution
    from library.cards.job import Job
    from tui.screens.base_screen import Needs
    from tui.session import Session


class SheetScreen(Reading):
    """The page to carry to the machine."""

    WHERE = "sheet"

    def __init__(self, session: Session, job: Job) -> None:
        super().__init__(session)
        self._job = job
        self._page = compose(job, job.display, one_page=False)

    def title_text(self) -> str:
        """Of which card."""
        return f"Setup sheet: {self._job.card.title}"

    def state_text(self) -> str:
        """The unit of lengths."""
        return self._job.display.lengths

    def needs(self) -> Needs:
        """The sheet has the unit of its card, which is changed there."""
        return {**super().needs(), "units": lambda: False}

    def do_units(self) -> None:
        """Say where the unit is changed."""
        self.say(f"The sheet has the unit of its card; {self.key_of('units')} on the card changes it.")

    def text(self, width: int) -> list[Line]:
        """The page with its signs as they were typed, as wide as paper and narrower where the screen is."""
        width = min(width, PAPER.width)
        return [*wrap(self._page.title, width, "head"), *page_lines(without_words(self._page), width)]

    def warned(self) -> Iterable[Caution]:
        """The cautions of the job, those of grinding in front; on paper they stand at the head."""
        return of_what_is_done(self._job.cautions, "grinding")

    def do_cautions(self) -> None:
        """Show the cautions of the job in full."""
        self.heelclear.show_cautions(None, self._job.entry, lambda _: self._job.cautions)

    def printed(self) -> Printed:
        """The sheet."""
        return printed_sheet(self._job)


def printed_sheet(job: Job, look: Callable[[], object] | None = None) -> Printed:
    """The setup sheet of a job as it is taken away.

    Args:
        job: the card worked out.
        look: shows it on the screen; nothing where it is in front already.
    """
    card = job.card
    name = f"setup-sheet-{card.id or card.tool.name or 'new'}"
    return Printed(f"Setup sheet: {card.title}", name, lambda form: setup_sheet(job, form, job.display), look)
