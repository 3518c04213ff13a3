"""Cards as they are begun from an entry, with texts typed on them: what many tests of cards start from."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from library.book.model import Book
from library.cards.editing import edited
from library.cards.model import Card
from library.cards.starting import from_entry
from library.equipment.model import machines, wheels


def begun_bare(book: Book, entry: str, **texts: str) -> Card:
    """A card of an entry without a machine, with some texts typed on it by their ways."""
    return typed_on(from_entry(book, book.entries[entry]), texts)


def begun(book: Book, entry: str, **texts: str) -> Card:
    """The same on the first machine and wheel of the book."""
    card = from_entry(book, book.entries[entry])
    card = replace(card, machine=next(iter(machines(book))), wheel=next(iter(wheels(book))))
    return typed_on(card, texts)


def typed_on(card: Card, texts: Mapping[str, str]) -> Card:
    """A card with some texts typed on it, by their ways."""
    for way, text in texts.items():
        card = edited(card, way, text)
    return card
