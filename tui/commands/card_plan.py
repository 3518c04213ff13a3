"""``heelclear card-plan``: a batch of cards in an order that saves set-ups."""

from __future__ import annotations

import argparse

from library.book.opening import open_book
from library.cards.as_data import plan_data
from library.cards.planning import plan
from library.units.system import Display
from tui.commands import printing
from tui.commands.card_folder import opened_card, refused, shop_of
from tui.commands.card_text import batch


def run(options: argparse.Namespace) -> int:
    """Print the plan; returns the exit code."""
    cards, wrong = [], []
    for card_id in dict.fromkeys(options.ids):
        opened = opened_card(options, card_id)
        if isinstance(opened, str):
            wrong.append(opened)
        else:
            cards.append(opened.card)
    if wrong:
        return refused(wrong)
    found = plan(cards, open_book(shop_of(options)), Display(options.units))
    if options.json:
        printing.data(plan_data(found))
    else:
        batch(found)
    return 0
