"""How wide a table with boxes is on paper, and what of it fits across; as a browser lays it out, measured."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from library.pages.page import Table

PAPER = 188.0
"""Millimetres across the narrower of the two papers, A4, between its margins, and a little less."""

BOX, BESIDE = 14.0, 3.0
"""Millimetres that a box is wide, and that stand between two tables side by side."""

NUMBER, HEADING, NAME, PADDING = 2.6, 1.95, 1.5, 2.0
"""Millimetres that one character of a large number, of a heading and of the name of a row take, and the edges of a cell."""

POINT = 1.5
"""Millimetres by which the point of a number is narrower than a digit."""


def width(table: Table) -> float:
    """How wide a table is on paper with its boxes, in mm.

    Example:
        >>> width(Table(("", "turned deg", "drop mm"), (("heel of 3", "29.99", "0.400"),), boxes=3))
        84.7
    """
    columns = (_column(table, place) for place in range(len(table.heading)))
    return round(sum(columns) + table.boxes * BOX, 1)


def _column(table: Table, place: int) -> float:
    longest = max((len(row[place]) for row in table.rows), default=0)
    cells = longest * NUMBER - POINT if place else longest * NAME
    words = table.heading[place].split()
    if len(words) > 2:
        # The unit stays behind the word before it.
        words[-2:] = [" ".join(words[-2:])]
    return max(cells, max(map(len, words), default=0) * HEADING) + PADDING


def fitting(table: Table) -> Table:
    """A table without as many of its spare columns as do not fit across the paper beside its boxes.

    Example:
        >>> wide = Table(("", "drop mm", "div 0.01"), (("heel", "0.400", "40.0"),), spare=(2,), boxes=12)
        >>> fitting(wide).heading, fitting(wide).spare, fitting(replace(wide, boxes=6)) == replace(wide, boxes=6)
        (('', 'drop mm'), (), True)
    """
    while width(table) > PAPER and table.spare:
        gone, *spare = table.spare
        kept = [place for place in range(len(table.heading)) if place != gone]
        table = replace(
            table,
            heading=tuple(table.heading[place] for place in kept),
            rows=tuple(tuple(row[place] for place in kept) for row in table.rows),
            spare=tuple(kept.index(place) for place in spare),
        )
    return table


def stand_below(tables: Iterable[Table]) -> list[Table]:
    """Those of some tables that have no room beside the ones before them and stand below.

    Example:
        >>> one = Table(("", "drop mm"), (("heel", "0.400"),), boxes=3)
        >>> len(stand_below([one, one])), len(stand_below([one, replace(one, boxes=9)]))
        (0, 1)
    """
    below, taken = [], 0.0
    for table in tables:
        taken += width(table) + BESIDE * bool(taken)
        if taken > PAPER and taken > width(table):
            below.append(table)
            taken = width(table)
    return below
