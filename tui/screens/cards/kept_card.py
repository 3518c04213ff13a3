"""How an open card is kept: as a draft at every key, in its file when it is saved, and by both when it is left."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import TYPE_CHECKING

from library.cards.forms import as_fields
from library.cards.met_meanwhile import ClosedMeanwhile
from library.drafts.draft import Draft
from library.errors import SaveError
from tui import screens
from tui.screens.base_screen import BaseScreen
from tui.screens.confirming import ask
from tui.screens.left_behind import JOB_CARD, list_left
from tui.services.card_service import CardConflicts

if TYPE_CHECKING:
    from library.cards.saving import SavedCard
    from library.editing.merging import Choice
    from tui.services.card_service import CardInHand, CardService
    from tui.session import Session
    from tui.view.card_form import CardForm


class KeptCard(BaseScreen):
    """A screen on which a card is typed, as far as it is saved there.

    Args:
        session: what the program knows.
        form: of the card.
        cards: where cards are saved.
        in_hand: the card, with what it was read from and what its draft was begun with.
    """

    def __init__(self, session: Session, form: CardForm, cards: CardService, in_hand: CardInHand) -> None:
        super().__init__(session)
        card, opened, started = in_hand.card, in_hand.opened, in_hand.started
        self.form = form
        self.cards = cards
        self.opened = opened
        self._about = in_hand.about
        self._started = dict(started) if started is not None else as_fields(card)
        self._saved_card = opened.card if opened is not None else None if started is not None else card
        self._refused = False
        self._where_saved = ""

    @property
    def is_changed(self) -> bool:
        """Whether anything on it is not saved."""
        return self.form.card != self._saved_card

    def draft(self) -> Draft:
        """What was typed."""
        return Draft(
            JOB_CARD, self._about, as_fields(self.form.card), self._started, units=self.form.card.units
        )

    def do_save(self) -> None:
        """Save it as it is, whatever is still wrong with it."""
        if self.save() and not self.said:
            self.say(f"Saved as {self.form.card.id}. {self._said_of_problems()}".strip())

    def _said_of_problems(self) -> str:
        count = len(self.form.issues)
        return f"{count} thing{'s do' if count > 1 else ' does'} not add up yet." if count else ""

    def save(self, choices: Sequence[Choice] = (), *, opens_again: bool = False) -> bool:
        """Save the card; returns whether it is saved now. What stands in the way is said, or asked about.

        Args:
            choices: answers to what was met before.
            opens_again: whether what somebody else closed meanwhile may be opened again for it.
        """
        self._where_saved = ""
        if not self.is_changed and self.opened is not None:
            return True
        # A program that is killed while it saves has what was typed either on the card or in a draft.
        self.heelclear.autosave.keep_now(quietly=True)
        try:
            stored = self.cards.save(
                self.opened, self.form.card, choices, self._started, opens_again=opens_again
            )
        except SaveError as refused:
            self.say(f"{refused.sentence} {self._said_of_draft()}")
            self._refused = True
            if isinstance(refused, ClosedMeanwhile):
                self._ask_to_open_again()
            return False
        if isinstance(stored, CardConflicts):
            answered = partial(self._answered, opens_again=opens_again)
            self.app.push_screen(screens.ConflictScreen(self.session, stored.conflicts, answered))
            return False
        self._take_saved(stored)
        return True

    def _said_of_draft(self) -> str:
        if self.heelclear.autosave.is_kept(self.draft()):
            return "What you typed is kept as a draft."
        return "What you typed cannot be kept as a draft either: it is in this window alone, and gone when the program ends."

    def _take_saved(self, stored: SavedCard) -> None:
        self.heelclear.autosave.drop(self.draft())
        self.opened, self._saved_card = stored.opened, stored.opened.card
        self._about, self._started = stored.opened.card.id, as_fields(stored.opened.card)
        self._refused = False
        self.form.take(self.form.book, stored.opened.card)
        if stored.merged:
            self._where_saved = "Saved. What somebody else wrote on this card meanwhile is kept too."
        if stored.under:
            self._where_saved = stored.under
        if self._where_saved:
            self.say(self._where_saved)

    def _ask_to_open_again(self) -> None:
        """Ask whether the card that somebody else closed is to be opened again for what was typed here."""
        card = self.form.card

        def open_again() -> None:
            if self.save(opens_again=True):
                self.say(f"Card {card.id} is open again, with what you typed; close it when it is done.")

        what = "Somebody else closed it as a record meanwhile. It is a draft again then, with what you typed on it."
        ask(self, f"Open card {card.id}, {card.title}, again?", "Open it again", what, open_again)

    def _answered(self, choices: Sequence[Choice], *, opens_again: bool = False) -> None:
        if self.save(choices, opens_again=opens_again):
            self.say("Saved as you chose; everything else that somebody else wrote is kept too.")

    def do_back(self) -> None:
        """Go back; what was typed is saved, as a draft card where something is missing or wrong."""
        leaving = self._refused or not self.is_changed
        if not leaving and not self.save():
            if self._refused:
                self.say(f"{self.said} Go back again to leave it so.")
            return
        if self.is_changed:
            list_left(self, self.draft())
        where = self._where_saved or f"Card {self.form.card.id} is saved."
        said = "" if leaving else f"{where} {self._said_of_problems()}".strip()
        self.session.left_at[self.form.card.id] = self.form.focus
        self.session.read_on[self.form.card.id] = self.form.read_on
        self.app.pop_screen()
        if said:
            self.heelclear.say(said)
