"""``heelclear card-set``: write on a job card, close it, or open it again."""

from __future__ import annotations

import argparse
from datetime import datetime

from library.book.model import Book
from library.book.opening import open_book
from library.cards.bare_numbers import completed
from library.cards.close import NotFinished, finished, reopened
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.saving import SavedCard, save_merged, told_of_both
from library.cards.store import NoCard, Opened
from library.errors import SaveError
from tui.commands.card_folder import for_its_words, opened_card, refused, shop_of, tell_saved, with_words


def run(options: argparse.Namespace) -> int:
    """Save the changed card; returns the exit code, 1 when it could be saved but not closed."""
    opened = opened_card(options, options.id)
    if isinstance(opened, str):
        return refused([opened])
    if opened.card.done and options.values and not options.reopen:
        return refused(
            [f"Card {opened.card.id} is closed. Open it again with --reopen, or do it again on a new card."]
        )
    card, wrong = with_words(reopened(opened.card) if options.reopen else opened.card, options.values)
    if wrong:
        return refused(wrong)
    book = open_book(shop_of(options))
    card = for_its_words(card, opened.card, book)
    saved, kept_open = _saved(options, opened, card, book)
    if isinstance(saved, list):
        return refused(saved)
    tell_saved(saved, book)
    if kept_open:
        refused(["The card is saved as a draft. It can be closed when these are fixed:", *kept_open])
        return 1
    return 0


def _saved(
    options: argparse.Namespace, opened: Opened, card: Card, book: Book
) -> tuple[Opened | list[str], list[str]]:
    """The card as it was saved, or why it was not; and why it stays open, where it shall be closed."""
    kept_open: list[str] = []

    def ready(card: Card) -> Card:
        """The card to save, somebody else's words on it too where there are any."""
        kept_open.clear()
        if options.reopen:
            card = reopened(card)
        elif card.done and options.values:
            closed = f"Card {card.id} was closed meanwhile by somebody else. Nothing was saved; open it again with --reopen."
            raise SaveError(closed, opened.path)
        if options.done and not card.done:
            card, found = _closed(card, book)
            kept_open.extend(found)
        return completed(card)

    try:
        saved = save_merged(shop_of(options), opened, completed(card), ready=ready)
    except (SaveError, NoCard) as error:
        return [error.sentence], []
    return (saved.opened if isinstance(saved, SavedCard) else told_of_both(saved)), kept_open


def _closed(card: Card, book: Book) -> tuple[Card, list[str]]:
    """The card closed; or as it was, with every reason why it stays open."""
    try:
        return finished(work_out(card, book), datetime.now().date()), []
    except NotFinished as error:
        return card, [f"{one.way}: {one.text}" for one in error.issues]
