"""The answers of ``heelclear calc`` as text for a person."""

from __future__ import annotations

import argparse
import sys

from geometry.calculation import Calculation, Field, Result
from geometry.calculations import calculation, calculation_names
from geometry.quantities import Quantity, quantity
from geometry.sentences import Kind
from library.book.model import Book
from library.calc.answer import Answer, off_by
from library.calc.fill import Filled, shown
from library.calc.report import cited
from library.calc.serving import sheets_for
from library.calc.surfaces import title_of
from library.calc.wording import STATIONS, in_one_paragraph
from library.units.show import say, show, show_answer
from library.units.system import Display
from tui.commands.printing import data, line, paragraph, table

ORIGINS = {"given": "given", "entry": "from the book", "default": "default"}


def calculations(options: argparse.Namespace) -> int:
    """Print the calculations there are, or with ``--help`` how to use the command."""
    sheets = [calculation(name) for name in calculation_names()]
    if options.json:
        data(
            [
                {"name": s.name, "title": s.title, "question": s.question, "families": _families(s, options)}
                for s in sheets
            ]
        )
        return 0
    if options.explain:
        for one in options.usage_text.strip().splitlines():
            line(one)
        line()
    table([(sheet.name, sheet.question) for sheet in sheets], indent="")
    line()
    line("'heelclear calc NAME --help' explains one; 'heelclear calc NAME key=value ...' answers it.")
    return 0


def explain(sheet: Calculation, options: argparse.Namespace) -> int:
    """Print what a calculation asks for, what it answers, and what it leaves out."""
    if options.json:
        data(_described(sheet, _families(sheet, options)))
        return 0
    line(f"{sheet.name}: {sheet.title}")
    paragraph(sheet.question)
    line()
    paragraph(sheet.wants)
    paragraph(sheet.neglects)
    line()
    line("Inputs")
    for field in sheet.inputs:
        row = quantity(field.key)
        line(f"  {field.key}  ({_accepts(field)})")
        paragraph(f"{row.definition} {row.measured}", "      ")
    line()
    line("Answers")
    for key in sheet.outputs:
        line(f"  {key}")
        paragraph(quantity(key).definition, "      ")
    return 0


def _families(sheet: Calculation, options: argparse.Namespace) -> list[str]:
    """The families of the book that a calculation serves, the shop's own among them."""
    from library.book.folders import shop_folder
    from library.book.opening import open_book

    families = open_book(shop_folder(options.library)[0]).families
    return [name for name, family in families.items() if sheet in sheets_for(family)]


def _described(sheet: Calculation, families: list[str]) -> dict[str, object]:
    return {
        "name": sheet.name,
        "title": sheet.title,
        "question": sheet.question,
        "wants": sheet.wants,
        "neglects": sheet.neglects,
        "families": families,
        "inputs": [{"key": field.key, "accepts": _accepts(field)} for field in sheet.inputs],
        "outputs": list(sheet.outputs),
    }


def _accepts(field: Field) -> str:
    row = quantity(field.key)
    said = [" or ".join(row.choices) if row.kind is Kind.CHOICE else _number_of(row)]
    if field.many:
        said.append("several allowed, parted by commas")
    if field.default is not None:
        said.append(f"{shown(field.key, field.default, Display())} if not given")
    if field.optional:
        said.append("may be left out")
    if field.one_of:
        said.append(f"one of the inputs for {field.one_of.replace('_', ' ')}")
    if field.when:
        said.append(f"asked for when {field.when[0]} is {' or '.join(field.when[1:])}")
    return "; ".join(said)


def _number_of(row: Quantity) -> str:
    return "a whole number" if row.whole else _KINDS[row.kind]


_KINDS = {
    Kind.LENGTH: "a length, such as 3.2mm, 1/8in or 40thou",
    Kind.AREA: "an area",
    Kind.ANGLE: "an angle, such as 8deg or '3 deg 30 min'",
    Kind.SPEED: "a surface speed, such as 30m/s or 6000ft/min",
    Kind.ROTATION: "a rotational speed, such as 3000rpm",
    Kind.COUNT: "a number, such as 4 or 2.5",
    Kind.RATIO: "a ratio, such as 0.25 or 1:16",
    Kind.PERCENT: "a percentage, such as 75",
    Kind.PER_LENGTH: "threads per inch, such as 10tpi",
}


def result(found: Answer, book: Book, display: Display) -> None:
    """Print inputs, answer, readings, checks and cautions."""
    if found.result is None:
        raise ValueError("an answer without a result has nothing to print")
    line(found.sheet.title)
    line()
    _inputs(found, book, display)
    _outputs(found, found.result, display)
    _stations(found.result, display)
    _rows(found.result, display)
    for check in found.result.checks:
        verdict = "" if check.state == "note" else f"{check.state.upper()}: "
        paragraph(verdict + say(check.sentence, display))
    line()
    line("Before you grind")
    for caution in found.cautions:
        paragraph(f"{caution.text} [{cited(book, caution.citation)}]", "  ")
    sys.stdout.flush()


def _inputs(found: Answer, book: Book, display: Display) -> None:
    used = [found.inputs[field.key] for field in found.fields if field.key in found.inputs]
    table(
        [
            (
                title_of(f.key, found.surface),
                shown(f.key, f.value, display),
                ORIGINS[f.origin],
                _off(f, display),
            )
            for f in used
        ],
        right=(1,),
    )
    line()
    recommended = [
        (title_of(one.key, found.surface), one.recommended) for one in used if one.recommended is not None
    ]
    for title, value in recommended:
        paragraph(f"{title} in the book: {in_one_paragraph(book, value)}", "  ")
    if recommended:
        line()


def _off(given: Filled, display: Display) -> str:
    """How far an input may be off, where that was typed."""
    width = given.half_width
    return f"+/- {show(width, quantity(given.key).kind, display)}" if width else ""


def _outputs(found: Answer, result: Result, display: Display) -> None:
    rows = []
    for key, value in result.outputs.items():
        row = quantity(key)
        spread = found.spreads.get(key)
        rows.append(
            (
                row.title,
                show_answer(value, row, display),
                off_by(row.kind, spread, display) if spread and spread.dominant else "",
            )
        )
    table(rows, right=(1,))
    for key, spread in found.spreads.items():
        if spread.dominant:
            line(
                f"  {quantity(key).title}: most of the +/- comes from {quantity(spread.dominant).title.lower()}."
            )
    line()


def _stations(result: Result, display: Display) -> None:
    if not result.stations:
        return
    keys = list(result.stations[0].readings)
    heading = ("", "turned", *(quantity(key).title.lower() for key in keys))
    rows = [
        (
            STATIONS.get(station.fraction, f"{station.fraction:.2f}"),
            show(station.angle, Kind.ANGLE, display),
            *(show(station.readings[key], quantity(key).kind, display) for key in keys),
        )
        for station in result.stations
    ]
    table([heading, *rows], right=range(1, len(heading)))
    line()


def _rows(result: Result, display: Display) -> None:
    if not result.rows:
        return
    keys = list(dict.fromkeys(key for row in result.rows for key in row.values))
    heading = ("", *(quantity(key).title.lower() for key in keys))
    rows = [
        (
            row.label,
            *(show(row.values[k], quantity(k).kind, display) if k in row.values else "" for k in keys),
        )
        for row in result.rows
    ]
    table([heading, *rows], right=range(1, len(heading)))
    line()
