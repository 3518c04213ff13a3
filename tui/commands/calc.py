"""``heelclear calc``: list the calculations, explain one, or answer it."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from geometry.calculation import Calculation

HELP = (
    "work out settings: list the calculations, explain one (NAME --help), or answer it (NAME key=value ...)"
)


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of this command."""
    from tui.commands.parser import add_json, add_units

    parser.add_argument("name", nargs="?", metavar="NAME", help="the calculation")
    parser.add_argument(
        "values",
        nargs="*",
        metavar="key=value",
        help="what you measured, such as land_width=3.2mm; low, middle or high takes that of the book's range",
    )
    parser.add_argument("--entry", metavar="ID", help="fill what is not given from this entry of the book")
    parser.add_argument(
        "--thread",
        metavar="NAME",
        help="fill diameter, pitch and starts from a thread, such as M16 or 5/8-11UNC",
    )
    parser.add_argument(
        "-h", "--help", action="store_true", dest="explain", help="explain the calculation and its inputs"
    )
    add_units(parser)
    add_json(parser)
    parser.set_defaults(usage_text=parser.format_usage())


def run(options: argparse.Namespace) -> int:
    """Do what the command line asks for; returns the exit code."""
    from difflib import get_close_matches

    from geometry.calculations import calculation, calculation_names
    from tui.commands import calc_text
    from tui.commands.printing import error

    if options.name is None:
        return calc_text.calculations(options)
    if options.name not in calculation_names():
        near = get_close_matches(options.name, calculation_names(), n=1, cutoff=0.4)
        hint = f" Did you mean {near[0]}?" if near else ""
        error(f"There is no calculation called {options.name!r}.{hint} 'heelclear calc' lists them all.")
        return 2
    sheet = calculation(options.name)
    return calc_text.explain(sheet, options) if options.explain else _answer(sheet, options)


def _answer(sheet: Calculation, options: argparse.Namespace) -> int:
    from library.book.folders import shop_folder
    from library.book.opening import open_book
    from library.calc.answer import answer
    from library.calc.report import as_data
    from library.pages.answer import answer_page
    from library.units.system import Display
    from tui.commands import printing

    typed, wrong = _assignments(options.values)
    if options.thread is not None:
        _choose_thread(options.thread, sheet, typed, wrong)
    book = open_book(shop_folder(options.library)[0])
    entry = None
    if options.entry is not None:
        entry = book.entries.get(options.entry)
        if entry is None:
            wrong.append(no_entry(options.entry, tuple(book.entries)))
    display = Display(options.units)
    found = answer(sheet, typed, entry=entry, book=book, display=display)
    # What is still to be given is not told where the entry or the thread that was to give it is not known.
    sentences = [*wrong, *(trouble.text for trouble in found.troubles if not (wrong and trouble.missing))]
    if sentences:
        for sentence in sentences:
            printing.error(sentence)
        return 2
    if options.json:
        printing.data(as_data(found, book, display))
    else:
        printing.page(answer_page(found, book, display, entry))
    return 0


def _choose_thread(asked: str, sheet: Calculation, typed: dict[str, str], wrong: list[str]) -> None:
    """Type what the thread gives where nothing was typed, or add the sentence on why it gives nothing."""
    from library.threads import NotChosen, choose, texts_for

    try:
        filled = texts_for(sheet, choose(asked), typed)
    except NotChosen as error:
        wrong.append(str(error))
        return
    if not filled:
        wrong.append(f"{sheet.name} asks for nothing that a thread gives. Leave --thread out.")
    typed.update(filled)


def _assignments(words: list[str]) -> tuple[dict[str, str], list[str]]:
    """The ``key=value`` words as a mapping, and a sentence for each word that is none."""
    typed: dict[str, str] = {}
    wrong: list[str] = []
    for word in words:
        key, equals, text = word.partition("=")
        key = key.strip().replace("-", "_")
        if not equals or not text.strip():
            wrong.append(f"{word!r} is not of the form key=value, such as land_width=3.2mm.")
        elif key in typed:
            wrong.append(f"{key} is given twice: {typed[key]!r} and {text!r}; give it once.")
        else:
            typed[key] = text
    return typed, wrong


def no_entry(wanted: str, known: tuple[str, ...]) -> str:
    """The sentence for an entry that is not in the book, with the nearest one that is."""
    from difflib import get_close_matches

    near = get_close_matches(wanted, known, n=1, cutoff=0.4)
    hint = f" Did you mean {near[0]}?" if near else ""
    return f"The book has no entry called {wanted!r}.{hint} 'heelclear list' lists them all."
