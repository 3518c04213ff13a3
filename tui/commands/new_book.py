"""``heelclear new-book``: begin a shop's own book."""

from __future__ import annotations

import argparse

from library.book.starting import NotStarted, new_book
from tui.commands import printing


def run(options: argparse.Namespace) -> int:
    """Make the folder with a commented starter file; returns the exit code."""
    try:
        made = new_book(options.folder)
    except NotStarted as error:
        printing.error(str(error))
        return 2
    for path in made:
        printing.line(f"wrote {path}")
    printing.line(f"Use it with: heelclear --library {options.folder}")
    return 0
