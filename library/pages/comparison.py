"""The page of entries side by side: a column for each, the letter of its source behind each value, sources when asked for."""

from __future__ import annotations

from collections.abc import Sequence

from geometry.quantities import quantity
from library.book.model import Book, Entry, Family, Material, Value
from library.calc.cautions import cautions_of_all
from library.calc.in_units import as_written, in_units, shown_span
from library.calc.wording import remarks, span
from library.pages.cautions import at_arms_length
from library.pages.entry_sources import letters, signs_in_short
from library.pages.page import Across, Page, Said, Section, SideBySide
from library.search.comparing import compare
from library.units.system import Display

SAME, DIFFERENT = "=", "*"
"""Stand before a line on which all entries say the same, or not."""

LEGEND = f"{SAME} all say the same   {DIFFERENT} they differ   - says nothing of it"


def comparison_page(
    book: Book, entries: Sequence[Entry], display: Display | None = None, *, sources: bool = False
) -> Page:
    """Everything in which entries can be set side by side.

    Args:
        book: gives families, materials and sources.
        entries: two or more.
        display: the units that are worked in; without one everything stands as the book has it.
        sources: whether the source of every value stands below it.
    """
    legend = Section("", (Said(tuple(legends(book, entries)), "quiet"),))
    told = side_by_side(book, entries, display, sources=sources)
    warned = Section("", (at_arms_length(cautions_of_all(entries, book), "show ID --cautions"),))
    return Page(f"Side by side: {len(entries)} entries", (Section("", (told,)), legend, warned))


def legends(book: Book, entries: Sequence[Entry]) -> list[str]:
    """What the signs before the lines mean, and the letters behind the values."""
    values = [value for entry in entries for value in entry.values.values()]
    letters_are = ", ".join(signs_in_short(book, values))
    return [LEGEND, *([letters_are] if letters_are else [])]


def side_by_side(
    book: Book, entries: Sequence[Entry], display: Display | None = None, *, sources: bool = False
) -> SideBySide:
    """The comparison alone; with the sources it says too what the book has in another unit."""

    def shown(value: Value) -> str:
        return span(value if display is None else in_units(value, display))

    def told_of(value: Value) -> tuple[str, ...]:
        found = remarks(book, value, spoken_span=lambda one: shown_span(one, display))
        return (*filter(None, (as_written(value, display),)), *found)

    families = [_title(book.families.get(one.family), one.family) for one in entries]
    materials = [_title(book.materials.get(one.work_material), one.work_material) for one in entries]
    rows = [_named("Family", families), _named("Work material", materials)]
    for one in compare(entries):
        cells = tuple(
            f"{shown(value)}  {letters(book, value)}".rstrip() if value is not None else "-"
            for value in one.values
        )
        told = [told_of(value) if sources and value is not None else () for value in one.values]
        rows.append(Across(_sign(one.same), quantity(one.key).title, cells, tuple(told)))
    heading = tuple(f"{number} {entry.title}" for number, entry in enumerate(entries, 1))
    return SideBySide(heading, tuple(rows))


def _named(title: str, cells: Sequence[str]) -> Across:
    return Across(_sign(len(set(cells)) == 1), title, tuple(cells))


def _sign(same: bool) -> str:
    return SAME if same else DIFFERENT


def _title(found: Family | Material | None, name: str) -> str:
    return found.title if found is not None else name or "-"
