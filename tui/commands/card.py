"""``heelclear card ID``: the setup sheet of a card, to be carried to the machine."""

from __future__ import annotations

import argparse

from library.book.opening import open_book
from library.cards.as_data import card_data
from library.cards.job import work_out
from library.setup_sheet.sheets import setup_sheet
from library.units.system import Display
from tui.commands import printing
from tui.commands.card_folder import opened_card, refused, shop_of


def run(options: argparse.Namespace) -> int:
    """Print the sheet; returns the exit code."""
    opened = opened_card(options, options.id)
    if isinstance(opened, str):
        return refused([opened])
    job = work_out(opened.card, open_book(shop_of(options)))
    display = Display(options.shown_in) if options.shown_in else job.display
    if options.json:
        printing.data(card_data(job, display))
        return 0
    for text in setup_sheet(job, options.form, display).splitlines():
        printing.line(text)
    for finding in opened.findings:
        printing.error(str(finding))
    return 0
