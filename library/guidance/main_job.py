"""Which calculation comes first for one tool of a family: the one for what its own set-up grinds."""

from __future__ import annotations

from collections.abc import Sequence

from geometry.calculation import Calculation
from library.book.model import Book, Entry
from library.guidance.setups import for_entry

WHERE_NO_RELIEF_IS = {"hole": "cross-hole", "face": "face-offset"}
"""What is ground on the tool without making a relief there, each with the calculation that tells how it is set."""


def main_job_first(book: Book, entry: Entry, sheets: Sequence[Calculation]) -> tuple[Calculation, ...]:
    """The calculations of a family, that of the tool's own set-up before all others.

    The order of a family is that of most of its tools: a reamer is ground on its bevel. A set-up that names the tool says
    what is ground on it instead, as on a hand reamer the clearance behind the land; nothing changes where none does.

    Args:
        book: has the set-ups.
        entry: the tool.
        sheets: of its family, those of its main job first.
    """
    setup = for_entry(book, entry)
    if setup is None or not setup.when:
        return tuple(sheets)
    own = min(
        (one for one in sheets if _grinds(one, setup.surface)),
        key=lambda one: _after(one, setup.surface),
        default=None,
    )
    return tuple(sheets) if own is None else (own, *(one for one in sheets if one is not own))


def _grinds(sheet: Calculation, surface: str) -> bool:
    by_relief = not sheet.beside and surface in (sheet.belongs_on or sheet.surfaces)
    return by_relief or WHERE_NO_RELIEF_IS.get(surface) == sheet.name


def _after(sheet: Calculation, surface: str) -> int:
    """How many surfaces a calculation serves before the one that is ground: that which is meant for it first goes before."""
    served = sheet.belongs_on or sheet.surfaces
    return served.index(surface) if surface in served else 0
