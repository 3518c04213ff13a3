"""``heelclear list``: the entries of the book."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from library.book.folders import shop_folder
from library.book.model import Book, Entry, Family
from library.book.opening import open_for_list
from library.book.rows import Row
from library.search.counting import counts
from tui.commands import printing


def run(options: argparse.Namespace) -> int:
    """Print the entries; returns the exit code."""
    book = open_for_list(shop_folder(options.library)[0])
    rows: Sequence[Row] = book.rows
    if options.family is not None:
        family = find_family(book, options.family)
        if family is None:
            known = ", ".join(book.families)
            printing.error(f"There is no family called {options.family!r}; the book has {known}.")
            return 2
        rows = [row for row in rows if row.family == family.id]
    if options.counts:
        as_they_lie = sorted(rows, key=lambda row: row.parts)  # So each file is opened once.
        found = [entry for row in as_they_lie if (entry := book.entries.get(row.id)) is not None]
        _print_counts(book, found, as_json=options.json)
        return 0
    if options.json:
        printing.data([summary(row) for row in rows])
        return 0
    printing.table([(row.id, row.title, material_title(book, row)) for row in rows], indent="")
    if not rows:
        printing.line("No entry there yet. 'heelclear new-book DIR' begins a book of your own.")
    return 0


def _print_counts(book: Book, entries: list[Entry], *, as_json: bool) -> None:
    found = counts(book, entries)
    if as_json:
        printing.data(found)
        return
    for title, numbers in found.items():
        printing.line(title)
        printing.table([(name, str(number)) for name, number in numbers.items()], right=(1,))


def find_family(book: Book, wanted: str) -> Family | None:
    """The family of that id, title or synonym, in the singular or the plural."""
    word = wanted.strip().casefold().replace(" ", "-")
    for family in book.families.values():
        names = {family.id, family.title, *family.synonyms}
        if word in {form for name in names for form in _forms(name.casefold().replace(" ", "-"))}:
            return family
    return None


def _forms(name: str) -> tuple[str, str]:
    return name, f"{name}s"


def material_title(book: Book, entry: Entry | Row) -> str:
    """What the entry is for, by the material's title where the book has that material."""
    material = book.materials.get(entry.work_material)
    return material.title if material else entry.work_material


def summary(entry: Entry | Row) -> dict[str, object]:
    """One entry as a line of ``--json``."""
    return {
        "id": entry.id,
        "family": entry.family,
        "title": entry.title,
        "work_material": entry.work_material,
        "layer": entry.layer,
    }
