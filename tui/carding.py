"""What the screens ask for when a job card is begun, opened, looked for or brought back."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from tui.card_desk import CardDesk

if TYPE_CHECKING:
    from library.book.model import Book, Entry
    from library.cards.model import Card
    from library.cards.store import Opened
    from library.drafts.draft import Draft
    from tui.app import Heelclear
    from tui.screens.cards.card import CardScreen
    from tui.view.form import Form


class Carding:
    """The way to the job cards.

    Args:
        app: the program.
        shop: the shop's folder.

    Attributes:
        desk: where its cards lie.
    """

    def __init__(self, app: Heelclear, shop: Path) -> None:
        self._app = app
        self.desk = CardDesk(shop)

    def begin(self, entry: Entry | None) -> None:
        """Begin a card from an entry, or an empty one where there is none."""
        from library.cards import starting

        book = self._book()
        if book is not None:
            units = self._app.session.display.lengths
            self._begun(starting.from_entry(book, entry, units) if entry else starting.empty(book, "", units))

    def begin_from(self, form: Form) -> None:
        """Begin a card from a calculator, with what was typed there."""
        from library.cards import starting
        from tui.view.card_from_calculator import with_typed

        book = self._book()
        if book is not None and form.entry is not None:
            display = self._app.session.display
            card = starting.from_entry(book, form.entry, display.lengths)
            self._begun(with_typed(card, book.kind_of(card.family), form.sheet, form.told(), display))

    def begin_again(self, card_id: str) -> None:
        """Begin a new card for the same job."""
        from library.cards import starting

        opened = self._loaded(card_id)
        if opened is not None and self._book() is not None:
            self._begun(starting.again(opened.card))

    def open(self, card_id: str) -> None:
        """Open a card."""
        opened = self._loaded(card_id)
        if opened is not None and self._book() is not None:
            self._push(opened.card, opened, card_id)

    def list(self) -> None:
        """List the cards."""
        from tui.screens.cards.cards import CardsScreen

        if self._book() is not None:
            self._app.push_screen(CardsScreen(self._app.session, self.desk))

    def brought_back(self, draft: Draft) -> CardScreen | None:
        """The screen of a card with what a draft holds; nothing while the book is not read."""
        from tui.screens.cards.card import CardScreen

        book = self._app.session.book
        if book is None:
            return None
        card, opened = self.desk.brought_back(draft, book)
        return CardScreen(self._app.session, book, self.desk, card, opened, draft.about, draft.started)

    def fields_now(self, draft: Draft) -> Mapping[str, str] | None:
        """The texts of the card that a draft is of, as it is saved now; nothing where there is no such card."""
        from library.cards.forms import as_fields
        from library.cards.store import NoCard

        try:
            return as_fields(self.desk.load(draft.about).card)
        except NoCard:
            return None

    def _begun(self, card: Card) -> None:
        self._push(card, None, f"new card, begun {datetime.now():%Y-%m-%d %H:%M:%S}")

    def _push(self, card: Card, opened: Opened | None, about: str) -> None:
        from tui.screens.cards.card import CardScreen

        book = self._book()
        assert book is not None
        self._app.push_screen(CardScreen(self._app.session, book, self.desk, card, opened, about))

    def _loaded(self, card_id: str) -> Opened | None:
        from library.cards.store import NoCard

        try:
            return self.desk.load(card_id)
        except NoCard as error:
            self._app.say(str(error))
            return None

    def _book(self) -> Book | None:
        """The book; while it is not read, that is said."""
        book = self._app.session.book
        if book is None:
            self._app.say("The book is still being opened; try again in a moment.")
        return book
