"""``heelclear card ID``: the setup sheet of a card, to be carried to the machine."""

from __future__ import annotations

import argparse

HELP = "print the setup sheet of a job card: settings, readings, checks, cautions, boxes"

FORMS = ("text", "markdown", "html")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of this command."""
    from tui.commands.parser import add_json

    parser.add_argument("id", metavar="ID", help="the card's id, as 'heelclear cards' prints it")
    parser.add_argument("--format", choices=FORMS, default="text", dest="form", help="what to print it as")
    parser.add_argument("--units", choices=("mm", "in"), default=None, dest="shown_in",
                        help="the unit of the lengths shown; else that of the card")  # fmt: skip
    add_json(parser)


def run(options: argparse.Namespace) -> int:
    """Print the sheet; returns the exit code."""
    from library.book.opening import open_book
    from library.cards.as_data import card_data
    from library.cards.job import work_out
    from library.setup_sheet.sheets import setup_sheet
    from library.units.system import Display
    from tui.commands import printing
    from tui.commands.card_folder import opened_card, refused, shop_of

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
