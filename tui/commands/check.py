"""``heelclear check``: every problem of every file of the book at once."""

from __future__ import annotations

import argparse

from library.book.folders import shop_folder
from library.book.opening import open_book
from library.cards.check_files import card_findings
from library.files.reach import is_missing
from tui.commands import printing


def run(options: argparse.Namespace) -> int:
    """Print the findings; returns 0 when there are none and 1 when there are some."""
    folder = options.folder if options.folder is not None else shop_folder(options.library)[0]
    if options.folder is not None and is_missing(options.folder):
        printing.error(
            f"There is no folder {str(options.folder)!r}. Name the folder that holds the shop's book."
        )
        return 2
    book = open_book(folder, afresh=True)
    findings = (*book.findings, *card_findings(folder))
    if options.json:
        printing.data(
            [
                {
                    "file": str(one.place.file),
                    "line": one.place.line,
                    "column": one.place.column,
                    "where": one.way,
                    "state": one.severity,
                    "text": one.wrong,
                    "fix": one.fix,
                }
                for one in findings
            ]
        )
        return 1 if findings else 0
    for finding in findings:
        printing.line(str(finding))
    count = sum(one.counts for one in findings)
    if count:
        printing.line(f"{count} problem{'s' if count > 1 else ''} found.")
        return 1
    printing.line(f"No problem found: {len(book.entries)} entries, shipped and the shop's own.")
    return 0
