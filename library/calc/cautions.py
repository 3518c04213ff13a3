"""Which cautions belong to what is ground, the most dangerous first."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import Literal

from geometry.calculation import AT_THE_WHEEL, Calculation
from library.book.model import Book, Caution, Entry, Material
from library.book.tool_materials import tool_material

LAST_WORD = "defer"
"""The caution that closes every list: the wheel's maker, the machine's manual and local rules come first."""

Doing = Literal["mounting", "handling", "grinding"]
"""What is done with a tool: its wheel chosen and mounted, an edge handled and measured, or the tool at the wheel."""

_MOUNTING = (
    "wheel-rating",
    "ring-test",
    "mounting",
    "wheel-change",
    "wheel-storage",
    "wheel-balance",
    "coolant-off",
)
_OF_THE_DUST = ("magnesium-fire", "aluminium-dust", "one-metal-collector", "titanium-fire", "beryllium-copper",
                "carbide-dust", "cobalt-dust", "cadmium-braze")  # fmt: skip
_AT_THE_MACHINE = ("guard-and-rest", "stand-aside", "diamond-on-steel", "dust", "burning")

BELONGS_TO: dict[str, Doing] = {
    **dict.fromkeys(_MOUNTING, "mounting"),
    **dict.fromkeys((*_OF_THE_DUST, *_AT_THE_MACHINE), "grinding"),
    "sharp-edges": "handling",
}
"""What most of the cautions belong to; one that is named nowhere here comes after those that are."""

PERSONAL = frozenset({"eyes", "hands"})
"""Those of whoever handles an edge or grinds it."""


def cautions_for(
    sheet: Calculation | None,
    entry: Entry | None,
    book: Book,
    *,
    abrasive: str = "",
    in_job: bool = False,
) -> tuple[Caution, ...]:
    """The cautions of a calculation, an entry, its family, its materials and the wheel, each once.

    Those of the work in hand come first: of the calculation, of what is cut and what the tool is made of, and those that
    the entry has beyond its family. Then come those that all tools of the family have. The deferring one is last of all.

    Args:
        sheet: the calculation; without one all cautions are of the same standing.
        entry: the entry; gives its family and its materials too.
        book: has the cautions, the most dangerous first.
        abrasive: of the wheel at hand, a word of ``library.equipment.abrasives``; empty where none is known.
        in_job: leaves out what is done before a job begins.
    """
    of_work: list[str] = list(sheet.cautions) if sheet else []
    if sheet is not None and not in_job:
        of_work += sheet.cautions_before
    of_tools: tuple[str, ...] = ()
    if entry is not None:
        family = book.families.get(entry.family)
        of_tools = family.cautions if family else ()
        of_work += [key for key in entry.cautions if key not in of_tools]
        material = material_of(entry, book)
        of_work += material.cautions if material else ()
        of_work += _unnamed(tool_material(book, entry.family, entry), abrasive, book)
    if sheet is None:
        return tuple(by_danger({*of_work, *of_tools, LAST_WORD}, book))
    first = set(of_work) - {LAST_WORD}
    return (*by_danger(first, book), *by_danger({*of_tools, LAST_WORD} - first, book))


def _unnamed(of_tool: str, abrasive: str, book: Book) -> Iterable[str]:
    """The cautions that belong to a tool by what it is made of, and to a wheel on it, without being named anywhere."""
    for key, one in book.cautions.items():
        is_meant = bool(one.tool_materials or one.abrasives)
        on_tool = not one.tool_materials or of_tool in one.tool_materials
        if is_meant and on_tool and (not one.abrasives or abrasive in one.abrasives):
            yield key


def material_of(entry: Entry, book: Book) -> Material | None:
    """The material of the book that an entry is for; nothing where the book does not know its word."""
    word = entry.work_material
    return next((one for one in book.materials.values() if word in {one.id, one.title, *one.synonyms}), None)


def cautions_of_all(entries: Iterable[Entry], book: Book) -> tuple[Caution, ...]:
    """The cautions of several entries, each once."""
    return tuple(by_danger({one.id for entry in entries for one in cautions_for(None, entry, book)}, book))


def cautions_of_families(families: Iterable[str], book: Book) -> tuple[Caution, ...]:
    """What can hurt somebody who grinds tools of some families, where nothing more is known of them.

    Args:
        families: their ids; without any that has cautions, those of every tool at the wheel.
        book: has the families and the cautions.
    """
    keys: set[str] = set()
    for name in dict.fromkeys(families):
        family = book.families.get(name)
        keys |= {*family.cautions, *_unnamed(family.tool_material, "", book)} if family is not None else set()
    return of_what_is_done(by_danger({*(keys or AT_THE_WHEEL), LAST_WORD}, book), "grinding")


def of_what_is_done(found: Iterable[Caution], doing: Doing) -> tuple[Caution, ...]:
    """The same cautions, those of what is done in front, then those of grinding; each part in the order it had.

    Args:
        found: the cautions, the most dangerous first and the deferring one last.
        doing: what is done where they stand.

    Example:
        >>> found = [Caution(key, key, "") for key in ("wheel-rating", "eyes", "dust", "sharp-edges", "defer")]
        >>> [one.id for one in of_what_is_done(found, "grinding")]
        ['eyes', 'dust', 'wheel-rating', 'sharp-edges', 'defer']
        >>> [one.id for one in of_what_is_done(found, "handling")]
        ['eyes', 'sharp-edges', 'dust', 'wheel-rating', 'defer']
    """

    def away(one: Caution) -> int:
        if one.id == LAST_WORD:
            return 3
        belongs = BELONGS_TO.get(one.id)
        if belongs == doing or (one.id in PERSONAL and doing != "mounting"):
            return 0
        return 1 if belongs == "grinding" or one.id in PERSONAL else 2

    return tuple(sorted(found, key=away))


def by_danger(keys: Collection[str], book: Book) -> Iterable[Caution]:
    """Cautions in the order in which the book has them, which is that of their danger; the deferring one last."""
    found = [one for key, one in book.cautions.items() if key in keys]
    return sorted(found, key=lambda one: one.id == LAST_WORD)
