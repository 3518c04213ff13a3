"""Whether a wanted value lies in the range that the book had for it, so that it is nobody's change."""

from __future__ import annotations

from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.cards.model import Card, Wanted
from library.cards.wanted_limits import limits_of
from library.units.read import UnitError, read

HAIR = 1e-9
"""The share by which a number may pass an end: two texts for one number differ in their last bit."""


def within_book(key: str, one: Wanted, diameter: float | None = None) -> bool:
    """Whether a number was taken out of a range of the book, which has no usual value then.

    Args:
        key: the quantity.
        one: what is wanted, and what the book had.
        diameter: of the tool in mm, for a share of it; nothing where it is not known.

    Example:
        >>> within_book("end_relief_angle", Wanted("7 deg", "6 to 8 deg"))
        True
        >>> within_book("end_relief_angle", Wanted("9 deg", "6 to 8 deg")), within_book("rake_angle", Wanted("5 deg", "5 deg"))
        (False, False)
    """
    if key not in QUANTITIES or not one.changed:
        return False
    kind, limits = quantity(key).kind, limits_of(key, one.book, diameter)
    if limits is None:
        return False
    try:
        found = read(one.value, kind, of_diameter=kind is Kind.LENGTH, unit_wanted=True)
    except UnitError:
        return False
    if found.per_diameter and diameter is None:
        return False
    number = found.number * (diameter or 0.0) if found.per_diameter else found.number
    hair = HAIR * abs(number)
    return (limits.low is None or number >= limits.low - hair) and (
        limits.high is None or number <= limits.high + hair
    )


def is_otherwise(key: str, one: Wanted, diameter: float | None = None) -> bool:
    """Whether a person wants another value than the book has, so that the next one is told why.

    Example:
        >>> is_otherwise("rake_angle", Wanted("7 deg", "5 deg")), is_otherwise("rake_angle", Wanted("7 deg", "5 to 8 deg"))
        (True, False)
    """
    return one.changed and not within_book(key, one, diameter)


def diameter_of(card: Card) -> float | None:
    """The diameter that stands on a card as the size of its tool, in mm; nothing where none does."""
    try:
        return read(card.tool.size, Kind.LENGTH).number
    except UnitError:
        return None
