"""``heelclear find``: entries by words, synonyms, troubles, quantities and ranges, the likeliest first."""

from __future__ import annotations

import argparse

from geometry.quantities.terms import terms_with
from library.book.folders import shop_folder
from library.book.opening import open_book
from library.book.rows import Rows
from library.search.finding import fitting
from library.search.query import parse
from library.units.system import Display
from tui.commands import printing
from tui.commands.list import material_title, summary


def run(options: argparse.Namespace) -> int:
    """Print the entries found; returns 0, or 1 when there are none, or 2 when the text cannot be understood."""
    book = open_book(shop_folder(options.library)[0])
    query = parse(" ".join(options.text), Display(options.units))
    troubles = list(query.troubles)
    if query.unfinished:
        troubles.append(f"{query.unfinished!r} has nothing to compare with; write it such as 'rake>8'.")
    for trouble in troubles:
        printing.error(trouble)
    if troubles:
        printing.error("'heelclear glossary' lists the quantities.")
        return 2
    rows = book.rows if isinstance(book.rows, Rows) else Rows.of(book.rows)
    found = [rows[number] for number in fitting(rows, query).numbers]
    if options.json:
        printing.data([summary(row) for row in found])
    elif found:
        printing.table([(row.id, row.title, material_title(book, row)) for row in found], indent="")
    else:
        printing.line("Nothing in the book fits that. Try fewer words, or 'heelclear list'.")
        if terms := terms_with(query.words) if query.words else ():
            printing.line(f"'heelclear glossary {terms[0].word.split()[0]}' explains the word.")
    return 0 if found else 1
