"""``heelclear show``: one entry of the book, every value with its unit, range and source."""

from __future__ import annotations

import argparse
from typing import Any

from library.book.folders import shop_folder
from library.book.model import Book, Citation, Entry, Measure, Value
from library.book.opening import open_book
from library.calc import report
from library.calc.cautions import cautions_for
from library.calc.report import caution_data
from library.pages.entry import entry_page
from library.units.system import METRIC, Display
from tui.commands import printing
from tui.commands.no_entry import no_entry


def run(options: argparse.Namespace) -> int:
    """Print the entry; returns the exit code."""
    book = open_book(shop_folder(options.library)[0])
    entry = book.entries.get(options.id)
    if entry is None:
        for sentence in no_entry(book, options.id):
            printing.error(sentence)
        return 2
    if options.json:
        printing.data(described(book, entry))
    else:
        page = entry_page(
            book, entry, Display(options.units), sources=options.sources, cautions=options.cautions
        )
        printing.page(page)
    return 0


def described(book: Book, entry: Entry) -> dict[str, Any]:
    """The entry as plain data, values as typed and as numbers in millimetres and degrees."""
    return {
        "id": entry.id,
        "family": entry.family,
        "title": entry.title,
        "work_material": entry.work_material,
        "synonyms": list(entry.synonyms),
        "layer": entry.layer,
        "unread": entry.unread,
        "file": str(entry.place.file),
        "line": entry.place.line,
        "values": {key: _value(value) for key, value in entry.values.items()},
        "cautions": [caution_data(book, caution) for caution in cautions_for(None, entry, book)],
        "notes": entry.notes,
        "extra": dict(entry.extra),
    }


def _value(value: Value) -> dict[str, Any]:
    found: dict[str, Any] = {"unread": True} if value.unread else {}
    found |= {
        name: _measure(value.key, measure)
        for name, measure in (("low", value.low), ("usual", value.usual), ("high", value.high))
        if measure is not None
    }
    found |= {"source": _citation(value.citation), "layer": value.layer}
    if value.note:
        found["note"] = value.note
    if value.also:
        found["also"] = [_value(other) for other in value.also]
    if value.bands:
        found["bands"] = [
            {"for": band.in_words}
            | {
                name: _measure("diameter", end)
                for name, end in (("over" if band.is_over else "from", band.start), ("to", band.to))
                if end is not None
            }
            | ({"hole": band.hole} if band.hole else {})
            | _value(band.value)
            for band in value.bands
        ]
    if value.disagreement:
        found["disagreement"] = value.disagreement
    if value.by_rule is not None:
        found["rule"] = {
            **value.by_rule._asdict(),
            "said": value.by_rule.in_words,
            "file": str(value.place.file),
            "line": value.place.line,
        }
    if value.replaces is not None:
        found["replaces"] = _value(value.replaces)
    return found


def _measure(key: str, measure: Measure) -> dict[str, Any]:
    if measure.word:
        return {"text": measure.text, "value": measure.word, "unit": ""}
    if measure.per_diameter:
        return {"text": measure.text, "value": measure.number, "unit": "D"}
    return {
        "text": measure.text,
        "value": report.number(key, measure.number, METRIC),
        "unit": report.unit(key, METRIC),
    }


def _citation(citation: Citation) -> dict[str, str]:
    return {"kind": citation.label, "document": citation.document, "place": citation.place}
