"""Several readings in one line of a card: a unit typed after the last one serves all."""

from __future__ import annotations

from geometry.quantities import quantity
from library.cards.model import Readings
from library.units import several


def with_the_last_unit(key: str, text: str) -> str:
    """Readings typed with one unit after the last, each with that unit.

    Args:
        key: the quantity.
        text: as typed.

    Returns:
        The readings parted by semicolons; the text as it is where the last reading has no unit, or where one cannot
        be read.

    Example:
        >>> with_the_last_unit("drop", "0.20, 0.21, 11 thou")
        '0.20 thou; 0.21 thou; 11 thou'
        >>> with_the_last_unit("drop", "0.20, 0.21")
        '0.20, 0.21'
    """
    found = several.with_the_last_unit(quantity(key).kind, several.parted(text))
    return text if found is None else "; ".join(found)


def in_short(key: str, readings: Readings) -> str:
    """Readings in one line, as they would be typed.

    Example:
        >>> in_short("drop", ("0.20 mm", "0.21 mm")), in_short("drop", ("0.20 mm", "0.3 in"))
        ('0.20, 0.21 mm', '0.20 mm; 0.3 in')
    """
    return several.in_short(quantity(key).kind, readings)
