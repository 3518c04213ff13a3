"""From the calculator to a new job card."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from tui.screens.cards.card_navigation import show_card
from tui.view.card_from_calculator import found_with, typed_in, with_typed

if TYPE_CHECKING:
    from library.book.model import Book
    from tui.screens.calculator import CalculatorScreen
    from tui.services.card_service import CardInHand, CardService


def begin_from(screen: CalculatorScreen) -> None:
    """Begin a card from the entry in the calculator, with what it was found with and what was typed there."""
    form, display = screen.page.form, screen.session.display
    machine = screen.session.calculators.drawer.machine()
    in_hand = machine.id if machine is not None else ""

    def begun(cards: CardService, book: Book) -> CardInHand:
        new = cards.begin(book, form.entry, display.lengths, found_with(form, book), in_hand)
        kind = book.kind_of(new.card.family)
        card = with_typed(new.card, kind, form.sheet, typed_in(form, kind), display, book, form.alone())
        return replace(new, card=card)

    if form.entry is not None:
        show_card(screen, begun)
