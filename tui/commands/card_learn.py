"""``heelclear card-learn``: what was learned on a card goes back to the book."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path

from library.book.folders import shipped_folder
from library.book.model import Book
from library.book.opening import open_book
from library.cards.learn import Lesson, change_for, not_in_book
from library.editing.document import EditRefused
from library.editing.planning import plan
from library.editing.saving import Conflicts, save
from library.errors import SaveError
from tui.commands import printing
from tui.commands.card_folder import opened_card, refused, shop_of


def run(options: argparse.Namespace) -> int:
    """List what the card has otherwise than the book, or save it there; returns the exit code."""
    opened = opened_card(options, options.id)
    if isinstance(opened, str):
        return refused([opened])
    shop = shop_of(options)
    book = open_book(shop)
    found = {one.key: one for one in not_in_book(opened.card, book)}
    missing = [key for key in options.keys if key not in found]
    if missing:
        known = ", ".join(found) or "nothing"
        return refused(
            [f"Card {options.id} has nothing to teach about {key}; it has {known}." for key in missing]
        )
    if options.keys:
        return _learn(shop, book, [found[key] for key in dict.fromkeys(options.keys)])
    printing.table([(one.key, one.value, one.note) for one in found.values()], indent="")
    if not found:
        printing.line(
            "The card wants what the book has now, or was begun without an entry: there is nothing to take over."
        )
    return 0


def _learn(shop: Path, book: Book, found: Sequence[Lesson]) -> int:
    for lesson in found:
        try:
            done = save(plan(change_for(lesson, book), shop, shipped_folder()))
        except (EditRefused, SaveError) as error:
            return refused([str(error)])
        if isinstance(done, Conflicts):
            return refused([f"Somebody else is changing {lesson.key} of {lesson.entry} just now; try again."])
        printing.line(f"{lesson.entry}.{lesson.key} is {lesson.value} now, source: shop ({lesson.note}).")
    return 0
