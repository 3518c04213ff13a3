"""``heelclear card-new``: begin a job card from an entry, from an earlier card, or empty."""

from __future__ import annotations

import argparse
from datetime import datetime

from library.book.model import Book
from library.book.opening import open_book
from library.cards import starting
from library.cards.bare_numbers import completed
from library.cards.model import Card
from library.cards.store import create
from library.errors import SaveError
from tui.commands import printing
from tui.commands.card_folder import for_its_words, opened_card, refused, shop_of, tell_saved, with_words
from tui.commands.list import find_family
from tui.commands.no_entry import no_entry


def run(options: argparse.Namespace) -> int:
    """Save the new card and print its id; returns the exit code."""
    shop = shop_of(options)
    book = open_book(shop)
    begun = _begun(options, book)
    if not isinstance(begun, Card):
        return refused(begun)
    card, wrong = with_words(begun, options.values)
    if wrong:
        return refused(wrong)
    try:
        card = for_its_words(card, begun, book)
        opened = create(shop, completed(card), datetime.now().date())
    except SaveError as error:
        return refused([error.sentence])
    if options.json:
        printing.data({"id": opened.card.id, "file": str(opened.path)})
    else:
        tell_saved(opened, book)
    return 0


def _begun(options: argparse.Namespace, book: Book) -> Card | list[str]:
    """The card to begin with, or sentences on why there is none."""
    if options.again:
        earlier = opened_card(options, options.again)
        return [earlier] if isinstance(earlier, str) else starting.again(earlier.card, book)
    if options.entry:
        entry = book.entries.get(options.entry)
        if entry is None:
            return no_entry(book, options.entry)
        return starting.from_entry(book, entry, options.units)
    family = find_family(book, options.family) if options.family else None
    if options.family and family is None:
        return [f"There is no family called {options.family!r}; the book has {', '.join(book.families)}."]
    return starting.empty(book, family.id if family else "", options.units)
