"""How other screens reach the job cards: begin one, open one, do one again, list them all.

Nothing about cards is loaded before one of these is done.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from library.errors import Refused
from tui import screens

if TYPE_CHECKING:
    from library.book.model import Book, Entry
    from tui.screens.base_screen import BaseScreen
    from tui.services.card_service import CardInHand, CardService


def begin_card(screen: BaseScreen, entry: Entry | None) -> None:
    """Begin a card from an entry and the size that it was found with, or an empty one where there is none."""
    units = screen.session.display.lengths
    size = screen.session.page.size_for(entry.id) if entry is not None else None
    show_card(screen, lambda cards, book: cards.begin(book, entry, units, size))


def begin_again(screen: BaseScreen, card_id: str) -> None:
    """Begin a new card for the same job."""
    show_card(screen, lambda cards, _: cards.begin_again(card_id))


def open_card(screen: BaseScreen, card_id: str) -> None:
    """Open a card."""
    show_card(screen, lambda cards, _: cards.open(card_id))


def list_cards(screen: BaseScreen) -> None:
    """List the cards."""
    if _book(screen) is not None:
        screen.app.push_screen(screens.CardsScreen(screen.session, screen.heelclear.card_service))


def show_card(screen: BaseScreen, take: Callable[[CardService, Book], CardInHand]) -> None:
    """Show a card that the service gives; where it gives none, say why."""
    book = _book(screen)
    if book is None:
        return
    cards = screen.heelclear.card_service
    try:
        in_hand = take(cards, book)
    except Refused as refused:
        screen.heelclear.say(refused.sentence)
    else:
        screen.app.push_screen(screens.CardScreen(screen.session, book, cards, in_hand))


def _book(screen: BaseScreen) -> Book | None:
    """The book; while it is not read, that is said."""
    book = screen.session.book
    if book is None:
        screen.heelclear.say("The book is still being opened; try again in a moment.")
    return book
