"""The calculations that there are, and what each asks for, as ``heelclear calc`` prints them."""

from __future__ import annotations

import argparse

from geometry.calculation import Calculation, Field
from geometry.calculations import calculation, calculation_names
from geometry.quantities import Quantity, quantity
from geometry.sentences import Kind
from library.book.folders import shop_folder
from library.book.opening import open_book
from library.calc.by_family import sheets_for
from library.calc.inputs import shown
from library.pages.page import Page, Said, Section, Word, Words
from library.units.system import Display
from tui.commands.printing import data, explained, line, page, paragraph


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
    explained([(sheet.name, sheet.question) for sheet in sheets])
    line()
    paragraph("'heelclear calc NAME --help' explains one; 'heelclear calc NAME key=value ...' answers it.")
    return 0


def explain(sheet: Calculation, options: argparse.Namespace) -> int:
    """Print what a calculation asks for, what it answers, and what it leaves out."""
    if options.json:
        data(_described(sheet, _families(sheet, options)))
        return 0
    page(_explained(sheet))
    return 0


def _explained(sheet: Calculation) -> Page:
    inputs = tuple(_word(field.key, _accepts(field)) for field in sheet.inputs)
    outputs = tuple(_word(key, "") for key in sheet.outputs)
    sections = (
        Section("", (Said((sheet.question,)),)),
        Section("", (Said((sheet.wants, sheet.neglects)),)),
        Section("Inputs", (Words(inputs),)),
        Section("Answers", (Words(outputs),)),
    )
    return Page(f"{sheet.name}: {sheet.title}", sections)


def _word(key: str, accepts: str) -> Word:
    row = quantity(key)
    return Word(key, f"({accepts})" if accepts else "", (f"{row.definition} {row.measured}",))


def _families(sheet: Calculation, options: argparse.Namespace) -> list[str]:
    """The families of the book that a calculation serves, the shop's own among them."""
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
    Kind.RATIO: "a ratio, such as 1:48 or 1/4 in per foot",
    Kind.PERCENT: "a percentage, such as 75",
    Kind.PER_LENGTH: "threads per inch, such as 10tpi",
}
