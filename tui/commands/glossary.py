"""``heelclear glossary``: terms of the trade, and every quantity with how it is measured and a small drawing."""

from __future__ import annotations

import argparse

from geometry.quantities.terms import names_of, terms_with
from library.pages.glossary import glossary_page, quantities_with, sought
from tui.commands import printing
from tui.figure.quantity_figures import FIGURES


def run(options: argparse.Namespace) -> int:
    """Print terms and quantities; returns the exit code."""
    text = options.word or ""
    found, terms = quantities_with(sought(text)), terms_with(sought(text))
    if not found and not terms:
        printing.error(
            f"No term or quantity is named or explained with {options.word!r}. "
            "Leave the word out to see them all."
        )
        return 1
    if options.json:
        printing.data(
            [
                {
                    "key": term.word,
                    "title": term.title,
                    "kind": "term",
                    "definition": term.definition,
                    "measured": "",
                    "choices": [],
                    "also": list(term.also),
                }
                for term in terms
            ]
            + [
                {
                    "key": row.key,
                    "title": row.title,
                    "kind": row.kind,
                    "definition": row.definition,
                    "measured": row.measured,
                    "choices": list(row.choices),
                    "also": list(names_of(row.key)),
                }
                for row in found
            ]
        )
        return 0
    printing.page(glossary_page(text, FIGURES if text else {}))
    return 0
