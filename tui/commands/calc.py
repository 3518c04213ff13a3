"""``heelclear calc``: list the calculations, explain one, or answer it."""

from __future__ import annotations

import argparse
from difflib import get_close_matches

from geometry.calculation import Calculation
from geometry.calculations import calculation, calculation_names
from library.book.folders import shop_folder
from library.book.model import Book
from library.book.opening import open_book
from library.calc.answer import answer
from library.calc.report import as_data
from library.equipment.model import machines, the_only_one
from library.pages.answer import answer_page
from library.pages.brief_answer import brief_answer
from library.shop_threads.laying import own_threads
from library.threads import NotChosen, choose, texts_for
from library.units.system import Display
from tui.commands import calc_text, printing
from tui.commands.no_entry import no_entry
from tui.commands.printing import error


def run(options: argparse.Namespace) -> int:
    """Do what the command line asks for; returns the exit code."""
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
    typed, wrong = _assignments(options.values)
    book = open_book(shop_folder(options.library)[0])
    if options.thread is not None:
        _choose_thread(options.thread, sheet, typed, wrong, book)
    entry = None
    if options.entry is not None:
        entry = book.entries.get(options.entry)
        if entry is None:
            wrong += no_entry(book, options.entry)
    display = Display(options.units)
    known = machines(book)
    machine = known.get(the_only_one(known))
    found = answer(sheet, typed, entry=entry, book=book, display=display, machine=machine)
    # What is still to be given is not told where the entry or the thread that was to give it is not known.
    sentences = [*wrong, *(issue.text for issue in found.issues if not (wrong and issue.missing))]
    if sentences:
        for sentence in sentences:
            printing.error(sentence)
        return 2
    if options.json:
        printing.data(as_data(found, book, display))
    elif options.given:
        printing.page(answer_page(found, book, display, entry, cautions=options.cautions, more="--cautions"))
    else:
        printing.page(
            brief_answer(
                found, book, display, printing.reader(), entry, cautions=options.cautions, more="--cautions"
            )
        )
    return 0


def _choose_thread(
    asked: str, sheet: Calculation, typed: dict[str, str], wrong: list[str], book: Book
) -> None:
    """Type what the thread gives where nothing was typed, or add the sentence on why it gives nothing."""
    try:
        filled = texts_for(sheet, choose(asked, own_threads(book)), typed)
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
