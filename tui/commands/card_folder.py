"""What the commands for cards share: the shop's book, its cards, and sentences for what cannot be done."""

from __future__ import annotations

import argparse
from pathlib import Path

from library.book.folders import shop_folder
from library.book.model import Book
from library.cards.editing import CardEditRefused, edited
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card
from library.cards.reading_units import with_the_last_unit
from library.cards.starting import OF_A_HOLE, class_taken_out, for_its_size
from library.cards.store import NoCard, Opened, load
from tui.commands import printing


def shop_of(options: argparse.Namespace) -> Path:
    """The shop's folder that the command line means."""
    return shop_folder(options.library)[0]


def with_words(card: Card, words: list[str]) -> tuple[Card, list[str]]:
    """The card with every ``place=text`` word written on it, and a sentence for each that is none."""
    wrong = []
    for word in words:
        way, equals, text = word.partition("=")
        if not equals:
            wrong.append(f"{word!r} is not of the form place=text, such as tool.flutes=4.")
            continue
        section, _, key = way.strip().partition(".")
        if section in {"received", "after"} and "." not in key:
            # As on the screen: the unit behind the last of several readings is that of them all.
            text = with_the_last_unit(key, text)
        try:
            card = edited(card, way.strip(), text)
        except CardEditRefused as error:
            wrong.append(str(error))
    return card, wrong


def for_its_words(card: Card, before: Card, book: Book) -> Card:
    """A card whose size was written, as on the screen: a class of the hole where it belongs, then what the book has for it.

    Args:
        card: with what was written.
        before: the same card before.
        book: as it is today.
    """
    if card.tool.size != before.tool.size and work_out(card, book).step(OF_A_HOLE) is not None:
        card = class_taken_out(card)
    return for_its_size(card, before, book)


def refused(sentences: list[str]) -> int:
    """Print why nothing was done; returns the exit code."""
    for sentence in sentences:
        printing.error(sentence)
    return 2


def opened_card(options: argparse.Namespace, card_id: str) -> Opened | str:
    """A card by its id, or a sentence on why there is none."""
    try:
        return load(shop_of(options), card_id)
    except NoCard as error:
        return str(error)


def tell_saved(opened: Opened, book: Book) -> None:
    """Print where a card was saved, and everything on it that does not add up."""
    printing.line(f"{opened.card.id}  {opened.path}")
    for problem in issues_of(work_out(opened.card, book)):
        printing.paragraph(f"{problem.state.upper()}: {problem.text}", "  ")
    for finding in opened.findings:
        printing.paragraph(str(finding), "  ")
