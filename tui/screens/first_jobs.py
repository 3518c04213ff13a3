"""The first jobs of a new hand: each opens the real screens with a tool and what was measured on it."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from geometry.calculations import calculation
from library.cards.editing import edited
from tui import screens
from tui.first_jobs import FIRST_JOBS, FirstJob
from tui.screens.cards.card_navigation import show_card
from tui.screens.chooser import Choice, Chooser
from tui.screens.confirming import ask

if TYPE_CHECKING:
    from library.book.model import Book, Entry
    from tui.screens.base_screen import Needs
    from tui.screens.paned import PanedScreen
    from tui.services.card_service import CardInHand, CardService


class FirstJobsScreen(Chooser):
    """Ten jobs, the easiest first."""

    WHERE = "first-jobs"
    NAME_WIDTH = 42

    def title_text(self) -> str:
        """What these are."""
        return "First jobs, from easy to hard"

    def choices(self) -> list[Choice]:
        """Each job with what to look at and how to know that it is right."""
        return [Choice(one.id, one.title, one.guide) for one in FIRST_JOBS]

    def needs(self) -> Needs:
        """A job is opened where the book has its entry."""
        return {**super().needs(), "go-on": self._entry_of_the_chosen}

    def _entry_of_the_chosen(self) -> Entry | None:
        found = self.found()
        chosen = found[min(self.view.chosen, len(found) - 1)].id if found else ""
        return next((self.session.entry(one.entry) for one in FIRST_JOBS if one.id == chosen), None)

    def take(self, choice: Choice) -> None:
        """Open the screen of the job; what was typed for its tool before gives way only where that is confirmed."""
        job = next(one for one in FIRST_JOBS if one.id == choice.id)
        entry = self.session.entry(job.entry)
        if entry is None:
            self.say(f"The book has no entry {job.entry}, which this job is about.")
        elif job.sheet and self.session.calculators.has_typed(entry):
            ask(
                self,
                f"Put the numbers of the job in place of what was typed for {entry.title}?",
                "Put them there",
                "What was typed into calculations for this tool is forgotten.",
                lambda: self._open(job, entry),
            )
        else:
            self._open(job, entry)

    def _open(self, job: FirstJob, entry: Entry) -> None:
        """The calculation filled in, the entry or the card; what to look at above the keys as long as it is open."""
        screen: PanedScreen
        self.session.page.reveal(entry.id)
        if job.card:
            show_card(self, lambda cards, book: _begun(cards, book, job, entry), job.guide)
            return
        if job.sheet:
            self.session.calculators.fill(entry, job.typed)
            screen = screens.CalculatorScreen(self.session, entry, calculation(job.sheet))
        else:
            screen = screens.EntryScreen(self.session, entry)
        screen.guide = job.guide
        self.app.push_screen(screen)
        self.heelclear.load_units()


def _begun(cards: CardService, book: Book, job: FirstJob, entry: Entry) -> CardInHand:
    """A new card from an entry with what a job fills in."""
    new = cards.begin(book, entry, "mm")
    card = new.card
    for key, text in job.card.items():
        card = edited(card, key, text)
    return replace(new, card=card)
