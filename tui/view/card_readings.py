"""Several readings in one line of a card: a unit typed after the last one serves all."""

from __future__ import annotations

from geometry.quantities import quantity
from library.cards.model import Readings
from library.units import several


def in_short(key: str, readings: Readings) -> str:
    """Readings in one line, as they would be typed.

    Example:
        >>> in_short("drop", ("0.20 mm", "0.21 mm")), in_short("drop", ("0.20 mm", "0.3 in"))
        ('0.20, 0.21 mm', '0.20 mm; 0.3 in')
    """
    return several.in_short(quantity(key).kind, readings)
