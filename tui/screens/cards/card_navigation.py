"""How other screens reach the job cards: begin one, open one, do one again, go to their list.

Nothing about cards is loaded before one of these is done.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from library.errors import Refused
from library.search.along import Along
from tui import screens
from tui.screens.base_screen import BaseScreen
from tui.screens.left_behind import JOB_CARD, left_of, opened_again, take_over

if TYPE_CHECKING:
    from library.book.model import Book, Entry
    from tui.screens.cards.card import CardScreen
    from tui.services.card_service import CardInHand, CardService


def begin_card(screen: BaseScreen, entry: Entry | None) -> None:
    """Begin a card from an entry with what it was found by, or an empty one where there is none."""
    units = screen.session.display.lengths
    along = screen.session.page.along_with(entry.id) if entry is not None else Along()
    machine = screen.session.calculators.drawer.machine()
    in_hand = machine.id if machine is not None else ""
    show_card(screen, lambda cards, book: cards.begin(book, entry, units, along, in_hand))


def begin_again(screen: BaseScreen, card_id: str) -> None:
    """Begin a new card for the same job."""
    show_card(screen, lambda cards, book: cards.begin_again(card_id, book))


def open_card(screen: BaseScreen, card_id: str) -> None:
    """Open a card, with what was typed on it and not saved where there is such a thing.

    What an earlier run left is laid on it only where nothing was saved in those places since; else it is told of.
    """
    if (typed := screen.heelclear.autosave.newest(f"{JOB_CARD} {card_id}")) is not None:
        screen.session.left_behind = [one for one in screen.session.left_behind if one.draft is not typed]
        card = show_card(screen, lambda cards, book: cards.brought_back(typed, book))
        if card is not None:
            said = (
                "This was typed on a card that had this number before, and is not saved; it gets a number of its own."
                if screen.heelclear.card_service.is_of_another(typed)
                else "What was typed on it before and not saved stands on it again."
            )
            card.say(f"{said} {opened_again(card)}".strip())
        return
    kept = left_of(screen, f"{JOB_CARD} {card_id}")
    if kept is None:
        show_card(screen, lambda cards, _: cards.open(card_id))
        return
    when = f"{kept.draft.kept:%Y-%m-%d %H:%M}"
    taken_up: list[CardInHand] = []

    def take(cards: CardService, book: Book) -> CardInHand:
        in_hand = cards.brought_back(kept.draft, book)
        if cards.fits_what_is_saved(in_hand):
            taken_up.append(in_hand)
            return in_hand
        return cards.open(card_id)

    card = show_card(screen, take)
    if card is not None and taken_up:
        take_over(screen, kept)
        card.say(f"What was typed on it until {when} and not saved stands on it again.")
    elif card is not None:
        card.say(
            f"The card stands as it is saved. An unsaved draft of it, of {when}, says otherwise: "
            f"{card.key_of('cards')}, {card.key_of('menu')}, unsaved, shows both."
        )


def to_the_cards(screen: BaseScreen) -> None:
    """To the list of cards: back to the list, or from the card that lies below, and else opened anew.

    So no card is ever open twice; a card is saved before it is left, as by going back from it.
    """
    app = screen.heelclear
    below = [one for one in app.screen_stack if isinstance(one, BaseScreen)]
    found = next((one for one in reversed(below) if one.WHERE in {"cards", "card"}), None)
    while found is not None and app.screen is not found:
        app.pop_screen()
    if found is None or (found.WHERE == "card" and _left(found)):
        _list_cards(screen)


def to_the_unsaved(card: BaseScreen) -> None:
    """To the list of cards, and there to what an earlier run left unsaved; a card that cannot be left stays in front."""
    to_the_cards(card)
    in_front = card.app.screen
    if in_front is not card and isinstance(in_front, BaseScreen):
        in_front.do_drafts()


def _left(card: BaseScreen) -> bool:
    """Leave a card; returns whether it was left and its list does not lie below."""
    app = card.heelclear
    card.do_back()
    in_front = app.screen
    return in_front is not card and isinstance(in_front, BaseScreen) and in_front.WHERE != "cards"


def _list_cards(screen: BaseScreen) -> None:
    if _book(screen) is not None:
        screen.app.push_screen(screens.CardsScreen(screen.session, screen.heelclear.card_service))


def show_card(
    screen: BaseScreen, take: Callable[[CardService, Book], CardInHand], guide: str = ""
) -> CardScreen | None:
    """Show a card that the service gives, with what a new hand is told there; where it gives none, say why."""
    book = _book(screen)
    if book is None:
        return None
    cards = screen.heelclear.card_service
    try:
        in_hand = take(cards, book)
    except Refused as refused:
        screen.heelclear.say(refused.sentence)
        return None
    card = screens.CardScreen(screen.session, book, cards, in_hand)
    card.guide = guide
    screen.app.push_screen(card)
    if in_hand.opened is not None and in_hand.opened.read_only:
        card.say(in_hand.opened.read_only)
    return card


def _book(screen: BaseScreen) -> Book | None:
    """The book; while it is not read, that is said."""
    book = screen.session.book
    if book is None:
        screen.heelclear.say("The book is still being opened; try again in a moment.")
    return book
