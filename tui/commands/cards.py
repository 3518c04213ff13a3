"""``heelclear cards``: the job cards of the shop, found by words, and the life of one tool."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Collection, Sequence
from pathlib import Path

from library.book.folders import cache_folder
from library.cards.as_data import history_data
from library.cards.digests import Digests
from library.cards.folders_not_read import folders_not_read
from library.cards.index import card_rows
from library.cards.model import Card
from library.cards.rows import CardRow
from library.cards.searching import of_tool, search
from library.cards.store import NoCard, load
from library.cards.tables import measurements
from library.pages.life import life_page
from library.units.system import Display
from tui.commands import printing
from tui.commands.card_folder import shop_of


def run(options: argparse.Namespace) -> int:
    """Print the cards; returns the exit code."""
    shop = shop_of(options)
    not_read = folders_not_read(shop)
    for issue in not_read:
        printing.error(str(issue))
    rows = card_rows(shop, cache_folder())
    found = search(of_tool(rows, options.tool) if options.tool else rows, " ".join(options.words))
    known = [row.id for row in rows]
    if options.csv or options.readings:
        return _tables(shop, found, known, readings=options.readings)
    if options.tool:
        return _history(options, shop, found, known)
    if options.json:
        printing.data([row.as_data() for row in found])
        return 0
    printing.table(
        [
            (row.id, row.status, row.tool, row.size, row.entry or row.family, row.work_material, row.result)
            for row in found
        ],
        indent="",
    )
    if not found:
        printing.line(_none(options, not_read=bool(not_read)))
    return 0


def _none(options: argparse.Namespace, *, not_read: bool) -> str:
    if options.words:
        return "No card has all of that. 'heelclear card-new --entry ID' begins one."
    if not_read:
        return "No card could be read."
    return "There is no card yet. 'heelclear card-new --entry ID' begins one."


def _read(shop: Path, rows: Sequence[CardRow]) -> list[Card]:
    """The cards of some rows; one that cannot be read is told of and left out."""
    cards = []
    for row in rows:
        try:
            cards.append(load(shop, row.id).card)
        except NoCard as error:
            printing.error(str(error))
    return cards


def _tell(found: Digests) -> None:
    for sentence in found.troubles:
        printing.error(sentence)


def _tables(shop: Path, rows: Sequence[CardRow], known: Collection[str], *, readings: bool) -> int:
    if readings:
        text = measurements(_read(shop, rows))
    else:
        found = Digests(shop, known, cache_folder())
        text = found.records([row.id for row in rows])
        _tell(found)
    # A spreadsheet wants UTF-8 and its own line ends, whatever the terminal speaks.
    out = getattr(sys.stdout, "buffer", None)
    if out is None:
        sys.stdout.write(text)
    else:
        sys.stdout.flush()
        out.write(text.encode("utf-8"))
        out.flush()
    return 0


def _history(options: argparse.Namespace, shop: Path, rows: Sequence[CardRow], known: Collection[str]) -> int:
    if not rows:
        printing.error(f"No card names a tool {options.tool!r}. 'heelclear cards' lists them all.")
        return 2
    display = Display(options.units)
    digests = Digests(shop, known, cache_folder())
    found = digests.life(options.tool, [row.id for row in rows])
    _tell(digests)
    if options.json:
        printing.data(history_data(found, display))
    else:
        printing.page(life_page(found, display))
    return 0
