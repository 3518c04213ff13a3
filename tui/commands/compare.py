"""``heelclear compare``: two or more entries side by side."""

from __future__ import annotations

import argparse

from library.book.folders import shop_folder
from library.book.opening import open_book
from library.calc.wording import span
from library.pages.comparison import comparison_page
from library.search.comparing import compare
from library.units.system import Display
from tui.commands import printing
from tui.commands.no_entry import no_entry


def run(options: argparse.Namespace) -> int:
    """Print the comparison; returns the exit code."""
    book = open_book(shop_folder(options.library)[0])
    unknown = [wanted for wanted in options.ids if wanted not in book.entries]
    wrong = [sentence for wanted in unknown for sentence in no_entry(book, wanted)]
    if len(options.ids) < 2:
        wrong.append("Name two entries or more to set side by side.")
    for sentence in wrong:
        printing.error(sentence)
    if wrong:
        return 2
    entries = [book.entries[wanted] for wanted in options.ids]
    if options.json:
        printing.data(
            {
                "ids": options.ids,
                "lines": [
                    {"key": one.key, "same": one.same, "values": [span(v) if v else None for v in one.values]}
                    for one in compare(entries)
                ],
            }
        )
        return 0
    printing.page(comparison_page(book, entries, Display(options.units)))
    return 0
