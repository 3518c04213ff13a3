"""``heelclear new-book``: begin a shop's own book."""

from __future__ import annotations

import argparse
from pathlib import Path

HELP = "begin a book of your own in a new folder"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of this command."""
    parser.add_argument("folder", type=Path, metavar="DIR", help="the folder to make")


def run(options: argparse.Namespace) -> int:
    """Make the folder with a commented starter file; returns the exit code."""
    from library.book.starting import NotStarted, new_book
    from tui.commands import printing

    try:
        made = new_book(options.folder)
    except NotStarted as error:
        printing.error(str(error))
        return 2
    for path in made:
        printing.line(f"wrote {path}")
    printing.line(f"Use it with: heelclear --library {options.folder}")
    return 0
