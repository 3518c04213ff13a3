"""``heelclear card-import``: put readings from a table on their cards."""

from __future__ import annotations

import argparse

from library.book.fetching import Unreadable, fetch
from library.book.folders import cache_folder
from library.cards.bare_numbers import completed
from library.cards.index import card_rows
from library.cards.store import NoCard, load, save_all
from library.cards.tables import import_measurements
from library.files.write_together import NotTogether
from tui.commands import printing
from tui.commands.card_folder import refused, shop_of


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
    found = import_measurements(text, {name: one.card for name, one in opened.items()})
    wrong = [*found.problems, *(f"Card {name} is closed; open it again first: heelclear card-set {name} --reopen"
                                for name in found.cards if opened[name].card.done)]  # fmt: skip
    wrong += [opened[name].read_only for name in found.cards if opened[name].read_only]
    if wrong:
        return refused([*wrong, "Nothing was saved."])
    try:
        save_all(shop, [(opened[name], completed(card)) for name, card in found.cards.items()])
    except NotTogether as error:
        last = [] if error.half_done else ["Nothing was saved, on no card."]
        return refused([*(one.sentence for one in error.errors), *last])
    printing.line(f"{found.readings} readings on {len(found.cards)} cards.")
    return 0
