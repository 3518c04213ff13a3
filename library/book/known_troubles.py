"""The troubles that the tools of each family are known for, as a search looks at them: its own first, then those of every tool."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from library.book.likeness import ancestors
from library.book.rows import Row
from library.book.search_text import BETWEEN, parts_of, search_text

OF_KIN = "kin"
"""Stands behind the troubles of a family that are told of its kin."""


def with_known_troubles(families: Sequence[Row], symptoms: Sequence[Row]) -> list[Row]:
    """The rows of families, each with how its troubles are called; one without its own has those of its kin.

    Args:
        families: their rows, each with the family that it is like and its kind.
        symptoms: their rows, each with the families that it is seen on; with none it is seen on every tool. One that is
            seen on some entries alone says nothing of the others of their family, and is passed over.

    Returns:
        The same rows; in the ranges a line of which the head has the names of its troubles, the names those of every tool,
        and the notes a word where the former are those of its kin.

    Example:
        >>> burns = Row("symptom", "b", "Burns", search=search_text(["Burns"], ["blue"]))
        >>> drills = Row("symptom", "d", "Drifts", family="drill", search=search_text(["Drifts"]))
        >>> with_known_troubles([Row("family", "drill", "Drills")], [burns, drills])[0].ranges
        ' ; drifts ; | ; burns ; blue ; |  '
    """
    of_all = [row for row in symptoms if not row.ranges]
    of_every = tuple(_names(row for row in of_all if not row.family))
    own = {
        family: tuple(_names(row for row in of_all if family in row.family.split()))
        for family in dict.fromkeys(name for row in of_all for name in row.family.split())
    }
    known = {row.id: row for row in families}

    def line(name: str) -> str:
        of = next((one for one in _kin(name, known) if one in own), name)
        return search_text(own.get(of, ()), of_every, "" if of == name else OF_KIN)

    return [row._replace(ranges=line(row.id)) for row in families]


def _kin(name: str, known: Mapping[str, Row]) -> Iterator[str]:
    """A family, those that it is like, and its kind."""
    chain = (name, *ancestors(name, lambda one: known[one].family if one in known else ""))
    yield from chain
    yield from (known[one].work_material for one in chain if one in known and known[one].work_material)


def _names(rows: Iterable[Row]) -> Iterator[str]:
    """What troubles are called, each name once."""
    found: dict[str, None] = {}
    for row in rows:
        others = parts_of(row.search).names.split(BETWEEN)
        found |= dict.fromkeys(one.strip() for one in (row.title, *others) if one.strip())
    yield from found
