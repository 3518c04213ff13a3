"""The page of one entry of the book: its values with range and source, its notes, its cautions, and its family."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.book.model import Book, Entry, Family, Measure, Value
from library.calc.cautions import cautions_for
from library.calc.wording import remarks, span
from library.pages.cautions import in_full
from library.pages.page import Block, Named, Page, Said, Section, Values

Convert = Callable[[float, Kind], str]
"""Writes a length in the unit that is worked in; loaded behind the first frame."""

UNREAD = "Some lines of this entry could not be read; 'heelclear check' says which and what to do."


def entry_page(book: Book, entry: Entry, convert: Convert | None = None) -> Page:
    """Everything that the book knows of one kind of tool.

    Args:
        book: gives family, cautions and sources.
        entry: what to show.
        convert: writes lengths in the unit that is worked in, once units are loaded.
    """
    family = book.families.get(entry.family)
    values = tuple(_named(book, value, convert) for value in entry.values.values())
    about: list[Block] = [Said((_about(book, entry),), "quiet"), *([Said((UNREAD,))] if entry.unread else [])]
    sections = [Section("", tuple(about)), Section("", (Values(values),))]
    if entry.notes.strip():
        sections.append(Section("Notes", (Said((entry.notes.strip(),)),)))
    sections.append(in_full(cautions_for(None, entry, book), book))
    sections += _of_family(family, book.families.get(family.like)) if family is not None else ()
    return Page(entry.title, tuple(sections))


def _about(book: Book, entry: Entry) -> str:
    family, material = book.families.get(entry.family), book.materials.get(entry.work_material)
    tools = family.title if family else entry.family
    work = material.title if material else entry.work_material
    layer = (
        "from the shop's own book, in whole or in part"
        if entry.layer == "shop"
        else "from the book that comes with the program"
    )
    return f"{tools}. Work: {work or 'not said'}; {layer} ({entry.id})."


def _named(book: Book, value: Value, convert: Convert | None) -> Named:
    """A value with its range, and below it its source and whatever else belongs to it."""
    also = _converted(value, convert) if convert is not None else ""
    return Named(quantity(value.key).title, span(value) + also, below=tuple(remarks(book, value)))


def _converted(value: Value, convert: Convert) -> str:
    """The values again in the unit that is worked in, where the book has them in another."""
    if quantity(value.key).kind is not Kind.LENGTH:
        return ""
    measures = [
        one for one in (value.low, value.usual, value.high) if one is not None and not one.per_diameter
    ]
    written = [convert(one.number, Kind.LENGTH) for one in measures]
    return f"  = {' / '.join(written)}" if any(map(_differs, measures, written)) else ""


def _differs(measure: Measure, written: str) -> bool:
    return measure.text.split()[-1:] != written.split()[-1:]


def _of_family(family: Family, like: Family | None) -> Iterator[Section]:
    what: list[Block] = [Said((family.what,))]
    if like is not None:
        said = f"Ground like {like.title.lower()}: what the book does not say of these themselves, it says here of those."
        what.append(Said((said,), "quiet"))
    yield Section(f"About {family.title.lower()}", tuple(what))
    for heading, text in family.texts.items():
        yield Section(heading.replace("_", " ").capitalize(), (Said((text.strip(),)),), part=True)
