"""``heelclear glossary``: terms of the trade, and every quantity with how it is measured and a small drawing."""

from __future__ import annotations

import argparse

from geometry.quantities import QUANTITIES
from geometry.quantities.terms import names_of, terms_with
from library.units.grammar import example
from tui.commands import printing
from tui.figure.quantity_figures import FIGURES


def run(options: argparse.Namespace) -> int:
    """Print terms and quantities; returns the exit code."""
    word = (options.word or "").casefold().replace("_", " ")
    found = [
        row
        for row in QUANTITIES.values()
        if word
        in f"{row.key} {row.title} {' '.join(names_of(row.key))} {row.definition} {row.measured}".casefold().replace(
            "_", " "
        )
    ]
    terms = terms_with([word])
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
    for term in terms:
        printing.line(f"{term.title}  (also: {', '.join(term.also)})" if term.also else term.title)
        printing.paragraph(term.definition, "    ")
    for row in found:
        written = " or ".join(row.choices) if row.choices else f"written {example(row.kind)}"
        printing.line(f"{row.title}  ({row.key}; {written})")
        printing.paragraph(f"{row.definition} {row.measured}", "    ")
        for drawn in FIGURES.get(row.key, ()) if word else ():
            printing.line(f"        {drawn}")
    return 0
