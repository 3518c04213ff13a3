"""What a search looks at in an entry, a family or a work material of the book."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from geometry.quantities.terms import words_found_by
from library.book.likeness import ancestors
from library.book.model import Entry, Family, Material
from library.book.rows import Row
from library.book.search_text import parts_of, search_text
from library.book.tool_materials import CARBIDE, COBALT, HSS

OF_TROUBLE = ("fails", "check_after")
"""Texts of a family by whose words its tools are found: a person knows what the tool does wrong."""

STEELS: Mapping[str, tuple[str, ...]] = {
    HSS: ("HSS", "high speed"),
    COBALT: ("cobalt", "HSS", "HSS-Co", "high speed"),
    CARBIDE: ("carbide", "solid carbide", "hard metal"),
}
"""Words by which a person asks for what a tool is made of."""


def search_of(name: str, made: object) -> str:
    """The line that a search looks at.

    Args:
        name: the id.
        made: what the table was made into.
    """
    head, names, notes = [str(getattr(made, "title", "")), name], [*getattr(made, "synonyms", ())], ""
    if isinstance(made, Entry):
        names += STEELS.get(made.tool_material, ())
        head += [made.family, made.work_material]
        names += _other_words(made)
        notes = made.notes
    if isinstance(made, Family):
        told = [made.texts[key] for key in OF_TROUBLE if key in made.texts]
        # Not among its names: no family is called by what its tools are made of.
        notes = " ".join([*told, *STEELS.get(made.tool_material, ())])
    if isinstance(made, Material):
        notes = made.note
    return search_text(head, names, notes)


def _other_words(entry: Entry) -> tuple[str, ...]:
    """What else the trade calls the quantities that an entry has values for."""
    return words_found_by(
        {
            key: tuple(one.usual.word for one in (value, *value.also) if one.usual is not None)
            for key, value in entry.values.items()
        }
    )


def with_the_troubles_of_others(families: Sequence[Row]) -> list[Row]:
    """The rows of families, each found also by what is told of trouble with those that it is like."""
    known = {row.id: row for row in families}

    def like(name: str) -> str:
        return known[name].family if name in known and known[name].family in known else ""

    def notes(name: str) -> str:
        return "".join(parts_of(known[one].search).notes for one in ancestors(name, like))

    return [row._replace(search=row.search + notes(row.id)) for row in families]
