"""``heelclear find``: what the book tells of the work, then entries by words, synonyms, quantities and ranges."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from geometry.quantities.terms import terms_with
from library.book.folders import shop_folder
from library.book.model import Book
from library.book.opening import open_book
from library.book.rows import Row, Rows
from library.guidance.finding import guidance
from library.pages.found_work import as_data, page_of
from library.search.finding import fitting
from library.search.leaving_out import LeftOut, without
from library.search.query import parse
from library.units.show import show
from library.units.system import Display
from tui.commands import printing
from tui.commands.list import material_title, summary

FEW = 5
"""Entries that are listed below an answer; more would push it off the screen."""


def run(options: argparse.Namespace) -> int:
    """Print what was found; returns 0, or 1 when there is nothing, or 2 when the text cannot be understood."""
    book = open_book(shop_folder(options.library)[0])
    display = Display(options.units)
    query = parse(" ".join(options.text), display)
    troubles = query.told
    for trouble in troubles:
        printing.error(trouble)
    if troubles:
        printing.error("'heelclear glossary' lists the quantities.")
        return 2
    rows = book.rows if isinstance(book.rows, Rows) else Rows.of(book.rows)
    fits = fitting(rows, query)
    found = [rows[number] for number in fits.numbers]
    work = guidance(book, () if query.conditions else query.words)
    if options.json:
        printing.data([*map(summary, found), *as_data(book, work)])
        return 0 if found or work else 1
    if work:
        printing.part(page_of(book, work, lambda number, kind: show(number, kind, display)))
        if found:
            printing.line()
    if fits.told and not work:
        printing.line(fits.told)
    _print_entries(book, found, FEW if work else len(found))
    if not found and not work:
        helps = without(rows, " ".join(query.words)) if not query.conditions else LeftOut()
        hint = helps.told or "Try fewer words."
        printing.line(f"Nothing in the book fits that. {hint} 'heelclear list' shows all of it.")
        if terms := terms_with(query.words) if query.words else ():
            printing.line(f"'heelclear glossary {terms[0].word.split()[0]}' explains the word.")
    return 0 if found or work else 1


def _print_entries(book: Book, found: Sequence[Row], most: int) -> None:
    """So many entries, and how many more there are."""
    printing.table([(row.id, row.title, material_title(book, row)) for row in found[:most]], indent="")
    if len(found) > most:
        printing.line(f"{len(found) - most} more entries; with more words they are fewer, --json has all.")
