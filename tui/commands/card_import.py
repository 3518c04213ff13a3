"""``heelclear card-import``: put readings from a table on their cards."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path

from library.book.fetching import Unreadable, fetch
from library.book.folders import cache_folder
from library.cards.bare_numbers import completed
from library.cards.folders_not_read import folders_not_read
from library.cards.index import card_rows
from library.cards.model import Card
from library.cards.saving import save_all_merged, told_of_both
from library.cards.store import NoCard, Opened, load
from library.cards.tables import import_measurements
from library.errors import Refused
from library.files.write_together import NotTogether
from tui.commands import printing
from tui.commands.card_folder import refused, shop_of

NO_CARD = "Nothing was saved, on no card."


def run(options: argparse.Namespace) -> int:
    """Save the readings on their cards, all or none; returns the exit code."""
    try:
        raw, _ = fetch(options.file)
        text = raw.decode("utf-8-sig")
    except Unreadable as error:
        return refused([f"{options.file}: {error}"])
    except UnicodeDecodeError:
        return refused([f"{options.file} is not UTF-8 text. Save the table as CSV UTF-8."])
    shop = shop_of(options)
    opened = {}
    for row in card_rows(shop, cache_folder()):
        # Only the cards that the table may mean are read whole.
        if row.id in text:
            try:
                opened[row.id] = load(shop, row.id)
            except NoCard as error:
                printing.error(str(error))
    for issue in folders_not_read(shop):
        printing.error(str(issue))
    found = import_measurements(text, {name: one.card for name, one in opened.items()})
    wrong = [*found.problems, *(f"Card {name} is closed; open it again first: heelclear card-set {name} --reopen"
                                for name in found.cards if opened[name].card.done)]  # fmt: skip
    wrong += [opened[name].read_only for name in found.cards if opened[name].read_only]
    if wrong:
        return refused([*wrong, "Nothing was saved."])
    why = _refusals(shop, [(opened[name], completed(card)) for name, card in found.cards.items()])
    if why:
        return refused(why)
    printing.line(f"{found.readings} readings on {len(found.cards)} cards.")
    return 0


def _refusals(shop: Path, changed: Sequence[tuple[Opened, Card]]) -> list[str]:
    """Save the cards; returns why that cannot be done, a sentence each."""
    try:
        both = save_all_merged(shop, changed, _open)
    except NotTogether as error:
        return [*(one.sentence for one in error.errors), *([] if error.half_done else [NO_CARD])]
    except Refused as error:
        return [error.sentence, NO_CARD]
    return [*told_of_both(both), NO_CARD] if both else []


def _open(card: Card) -> Card:
    """The card ready to be saved, unless somebody closed it meanwhile."""
    if card.done:
        raise Refused(f"Card {card.id} was closed meanwhile by somebody else.")
    return completed(card)
