"""``heelclear glossary``: every quantity with its definition, how it is measured, and a small drawing."""

from __future__ import annotations

import argparse

HELP = "explain the quantities: what each is and how it is measured"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of this command."""
    from tui.commands.parser import add_json

    parser.add_argument(
        "word", nargs="?", metavar="WORD", help="only quantities whose name or text has this word"
    )
    add_json(parser)


def run(options: argparse.Namespace) -> int:
    """Print the quantities; returns the exit code."""
    from geometry.quantities import QUANTITIES
    from library.units.grammar import example
    from tui.commands import printing
    from tui.figure.quantity_figures import FIGURES

    word = (options.word or "").casefold().replace("_", " ")
    found = [
        row
        for row in QUANTITIES.values()
        if word in f"{row.key} {row.title} {row.definition} {row.measured}".casefold().replace("_", " ")
    ]
    if not found:
        printing.error(
            f"No quantity is named or explained with {options.word!r}. Leave the word out to see them all."
        )
        return 1
    if options.json:
        printing.data(
            [
                {
                    "key": row.key,
                    "title": row.title,
                    "kind": row.kind,
                    "definition": row.definition,
                    "measured": row.measured,
                    "choices": list(row.choices),
                }
                for row in found
            ]
        )
        return 0
    for row in found:
        written = " or ".join(row.choices) if row.choices else f"written {example(row.kind)}"
        printing.line(f"{row.title}  ({row.key}; {written})")
        printing.paragraph(f"{row.definition} {row.measured}", "    ")
        for drawn in FIGURES.get(row.key, ()) if word else ():
            printing.line(f"        {drawn}")
    return 0
