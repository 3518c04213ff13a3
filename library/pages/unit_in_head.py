"""Short heads of columns: the unit once in the head with bare numbers below it, and few words for a reading."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from library.pages.page import Table

LONG, SHORT = "lead over the land", "lead along axis"
"""What stands over a column of readings, where the heading of them all says the rest."""


def shorter(table: Table) -> Table:
    """The table with few words over its readings."""
    return replace(table, heading=tuple(head.replace(LONG, SHORT) for head in table.heading))


def unit_in_head(table: Table) -> Table:
    """The table with the unit of each column in its head, where all its numbers have the same one.

    Example:
        >>> unit_in_head(Table(("", "drop"), (("1/4", "0.103 mm"), ("heel", "0.413 mm"))))
        Table(heading=('', 'drop mm'), rows=(('1/4', '0.103'), ('heel', '0.413')), spare=(), boxes=0)
    """
    units = [_unit([row[place] for row in table.rows]) for place in range(len(table.heading))]
    heading = tuple(f"{name} {unit}".strip() for name, unit in zip(table.heading, units, strict=True))
    rows = tuple(
        tuple(cell.removesuffix(f" {unit}") if unit else cell for cell, unit in zip(row, units, strict=True))
        for row in table.rows
    )
    return replace(table, heading=heading, rows=rows)


def _unit(cells: Sequence[str]) -> str:
    """The unit of some cells; empty where they have none, or not all the same."""
    parted = [cell.partition(" ") for cell in cells if cell]
    units = {unit for _, _, unit in parted}
    return units.pop() if len(units) == 1 and all(map(_is_number, (one for one, _, _ in parted))) else ""


def _is_number(text: str) -> bool:
    return text.lstrip("-").replace(".", "", 1).isdigit()
