"""Discarding a card that was begun by mistake: asked about by name, and never a record."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from library.errors import SaveError
from tui.screens.confirming import ask
from tui.screens.left_behind import JOB_CARD, left_of

if TYPE_CHECKING:
    from library.cards.store import Opened
    from tui.screens.base_screen import BaseScreen
    from tui.screens.cards.card import CardScreen
    from tui.services.card_service import CardService


def is_discardable(opened: Opened) -> bool:
    """Whether a card may be discarded: it is no record, and may be written over."""
    return not opened.card.done and not opened.read_only


def discard_saved(screen: BaseScreen, cards: CardService, opened: Opened, then: Callable[[], object]) -> None:
    """Ask whether to remove a draft card with its file.

    Args:
        screen: asks.
        cards: of the shop.
        opened: the card as it was read; a change that somebody else saves meanwhile keeps it.
        then: done on the screen when it is gone.
    """
    card = opened.card
    if not is_discardable(opened):
        screen.say(opened.read_only or f"Card {card.id} is a record, and a record is not discarded.")
        return

    def drop() -> None:
        try:
            cards.discard(opened)
        except SaveError as refused:
            screen.say(refused.sentence)
            return
        _forget(screen, card.id)
        then()
        screen.heelclear.say(f"Card {card.id} is discarded.")

    what = f"It goes for good, with all that is typed on it and its file, {opened.path.name}."
    ask(screen, f"Discard card {card.id}, {card.title}?", "Discard it", what, drop)


def discard_card(screen: CardScreen) -> None:
    """Ask whether to discard the card that is open, saved or not, and leave it then."""
    leave = screen.app.pop_screen
    if screen.opened is not None:
        discard_saved(screen, screen.cards, screen.opened, leave)
        return

    def drop() -> None:
        screen.heelclear.autosave.drop(screen.draft())
        leave()
        screen.heelclear.say("The new card is discarded; nothing of it was saved.")

    what = "It goes for good, with all that is typed on it; nothing of it was saved."
    ask(screen, f"Discard this new card, {screen.form.card.title}?", "Discard it", what, drop)


def _forget(screen: BaseScreen, card_id: str) -> None:
    """Forget what else is kept of a card: another one may be begun today under the number that is free again."""
    session, autosave, name = screen.session, screen.heelclear.autosave, f"{JOB_CARD} {card_id}"
    while (kept := left_of(screen, name)) is not None:
        autosave.forget(kept)
        session.left_behind.remove(kept)
    if (typed := autosave.newest(name)) is not None:
        autosave.drop(typed)
    session.left_at.pop(card_id, None)
    session.read_on.pop(card_id, None)
    session.marked_cards.pop(card_id, None)
