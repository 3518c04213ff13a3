"""``heelclear card-plan``: a batch of cards in an order that saves set-ups."""

from __future__ import annotations

import argparse

from library.book.opening import open_book
from library.cards.as_data import plan_data
from library.cards.planning import plan
from library.pages.life import batch_page
from library.units.system import Display
from tui.commands import printing
from tui.commands.card_folder import opened_card, refused, shop_of


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
        printing.page(batch_page(found))
    return 0
