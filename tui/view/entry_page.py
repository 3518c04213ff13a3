"""One entry of the book as lines: every value with its range and source, cautions, notes, and its family."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Book, Entry, Family, Measure, Value
from library.calc.answer import cautions_for
from library.calc.report import cited
from library.calc.wording import remarks, span
from tui.view.lines import EMPTY, Line, Piece, line, wrap

NAME_WIDTH = 24
"""Cells for the name of a quantity, before its value."""

Convert = Callable[[float, Kind], str]
"""Writes a length in the unit that is worked in; loaded behind the first frame."""


def entry_lines(book: Book, entry: Entry, width: int, convert: Convert | None = None) -> list[Line]:
    """Everything that the book knows of one kind of tool.

    Args:
        book: gives family, cautions and sources.
        entry: what to show.
        width: in cells.
        convert: writes lengths in the unit that is worked in, once units are loaded.
    """
    family = book.families.get(entry.family)
    lines = [*_about(book, entry, width), EMPTY]
    for value in entry.values.values():
        lines += value_lines(book, value, width, convert)
    if entry.notes.strip():
        lines += [EMPTY, _heading("Notes"), *wrap(entry.notes.strip(), width, first="  ", rest="  ")]
    lines += [EMPTY, _heading("Before you grind"), *caution_lines(book, entry, width)]
    if family is not None:
        lines += _family_lines(family, book.families.get(family.like), width)
    return lines


def _about(book: Book, entry: Entry, width: int) -> list[Line]:
    family, material = book.families.get(entry.family), book.materials.get(entry.work_material)
    tools = family.title if family else entry.family
    work = material.title if material else entry.work_material
    layer = (
        "from the shop's own book, in whole or in part"
        if entry.layer == "shop"
        else "from the book that comes with the program"
    )
    return wrap(f"{tools}. Work: {work or 'not said'}; {layer}.", width, "quiet")


def value_lines(book: Book, value: Value, width: int, convert: Convert | None = None) -> list[Line]:
    """One value with its range, and under it its source and whatever else belongs to it."""
    name = quantity(value.key).title
    in_other_unit = _converted(value, convert) if convert else ""
    said = span(value) + (f"  = {in_other_unit}" if in_other_unit else "")
    lines: list[Line] = [line(Piece(f"{name:<{NAME_WIDTH}} ", "plain"), Piece(said, "strong"))]
    for remark in remarks(book, value):
        lines += wrap(remark, width, "quiet", first="    ", rest="    ")
    return lines


def _converted(value: Value, convert: Convert) -> str:
    """The values again in the unit that is worked in, where the book has them in another."""
    if quantity(value.key).kind is not Kind.LENGTH:
        return ""
    measures = [
        one for one in (value.low, value.usual, value.high) if one is not None and not one.per_diameter
    ]
    written = [convert(one.number, Kind.LENGTH) for one in measures]
    return " / ".join(written) if any(map(_differs, measures, written)) else ""


def _differs(measure: Measure, written: str) -> bool:
    return measure.text.split()[-1:] != written.split()[-1:]


def caution_lines(book: Book, entry: Entry | None, width: int) -> Iterator[Line]:
    """The cautions of an entry in full, each with its source."""
    for caution in cautions_for(None, entry, book):
        said = f"{caution.title}: {caution.text} [{cited(book, caution.citation)}]"
        yield from wrap(said, width, first="  ", rest="    ")


def _family_lines(family: Family, like: Family | None, width: int) -> Iterator[Line]:
    yield EMPTY
    yield _heading(f"About {family.title.lower()}")
    yield from wrap(family.what, width, first="  ", rest="  ")
    if like is not None:
        said = f"Ground like {like.title.lower()}: what the book does not say of these themselves, it says here of those."
        yield from wrap(said, width, "quiet", first="  ", rest="  ")
    for heading, text in family.texts.items():
        yield EMPTY
        yield line(Piece(f"  {heading.replace('_', ' ').capitalize()}", "strong"))
        yield from wrap(text.strip(), width, first="  ", rest="  ")


def _heading(text: str) -> Line:
    return line(Piece(text, "head"))
