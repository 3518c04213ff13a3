"""Which cautions belong to what is ground, the most dangerous first."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from geometry.calculation import Calculation
from library.book.model import Book, Caution, Entry, Material

LAST_WORD = "defer"
"""The caution that closes every list: the wheel's maker, the machine's manual and local rules come first."""


def cautions_for(sheet: Calculation | None, entry: Entry | None, book: Book) -> tuple[Caution, ...]:
    """The cautions of a calculation, an entry, its family and its material, each once.

    Those of the work in hand come first: of the calculation, of the material, and those that the entry has beyond its
    family. Then come those that all tools of the family have. The deferring one is last of all.

    Args:
        sheet: the calculation; without one all cautions are of the same standing.
        entry: the entry; gives its family and its material too.
        book: has the cautions, the most dangerous first.
    """
    of_work: list[str] = list(sheet.cautions) if sheet else []
    of_tools: tuple[str, ...] = ()
    if entry is not None:
        family = book.families.get(entry.family)
        of_tools = family.cautions if family else ()
        of_work += [key for key in entry.cautions if key not in of_tools]
        material = material_of(entry, book)
        of_work += material.cautions if material else ()
    if sheet is None:
        return tuple(by_danger({*of_work, *of_tools, LAST_WORD}, book))
    first = set(of_work) - {LAST_WORD}
    return (*by_danger(first, book), *by_danger({*of_tools, LAST_WORD} - first, book))


def material_of(entry: Entry, book: Book) -> Material | None:
    """The material of the book that an entry is for; nothing where the book does not know its word."""
    word = entry.work_material
    return next((one for one in book.materials.values() if word in {one.id, one.title, *one.synonyms}), None)


def cautions_of_all(entries: Iterable[Entry], book: Book) -> tuple[Caution, ...]:
    """The cautions of several entries, each once."""
    return tuple(by_danger({one.id for entry in entries for one in cautions_for(None, entry, book)}, book))


def by_danger(keys: Collection[str], book: Book) -> Iterable[Caution]:
    """Cautions in the order in which the book has them, which is that of their danger; the deferring one last."""
    found = [one for key, one in book.cautions.items() if key in keys]
    return sorted(found, key=lambda one: one.id == LAST_WORD)
