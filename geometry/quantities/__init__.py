"""The vocabulary: every quantity named once, for the book, the calculator, the help and the cards.

A new quantity is one new row in the file of its subject; nothing else here or in the library has to be told about it.
"""

from __future__ import annotations

from collections.abc import Mapping
from importlib import import_module

from geometry.quantities.quantity import Quantity

SUBJECTS = (
    "tooth",
    "relief",
    "surfaces",
    "end_teeth",
    "thread",
    "flank",
    "setting",
    "tooth_rest",
    "wheel",
    "recommended",
    "cone",
    "drill",
    "reamer",
    "bevel",
    "work_head",
    "vee",
    "spiral_point",
    "compound",
    "circular_land",
    "face",
    "upkeep",
    "wear",
    "web",
    "indexing",
    "spacing",
    "limits",
    "form",
)
"""The files of rows beside this one, in the order in which the glossary shows them."""


def _collect() -> dict[str, Quantity]:
    rows: dict[str, Quantity] = {}
    for subject in SUBJECTS:
        for row in import_module(f"geometry.quantities.{subject}").ROWS:
            if row.key in rows:
                raise ValueError(f"the quantity {row.key} has two rows")
            rows[row.key] = row
    return rows


QUANTITIES: Mapping[str, Quantity] = _collect()
"""Every quantity by its key."""

__all__ = ["QUANTITIES", "SUBJECTS", "Quantity", "quantity"]


def quantity(key: str) -> Quantity:
    """Return the row named ``key``; raises ``KeyError`` for a name that is not in the vocabulary.

    Example:
        >>> quantity("land_width").title
        'Land width'
    """
    return QUANTITIES[key]
