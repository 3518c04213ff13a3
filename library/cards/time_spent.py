"""The time that a job took, as a person writes it."""

from __future__ import annotations

import math

from library.units.read import UnitError


def minutes(text: str) -> float:
    """The time spent, in minutes.

    Args:
        text: as typed: ``25``, ``25 min``, ``1.5 h`` or ``1 h 20 min``.

    Raises:
        UnitError: with a sentence for the person who typed it.

    Example:
        >>> minutes("1 h 20 min"), minutes("25")
        (80.0, 25.0)
    """
    words = text.lower().replace("h", " h ").replace("min", " min ").split()
    total, place = 0.0, 0
    try:
        while place < len(words):
            unit = words[place + 1] if place + 1 < len(words) else "min"
            total += float(words[place]) * {"h": 60, "min": 1}[unit]
            place += 2
    except (ValueError, KeyError):
        total = math.nan
    if not 0 <= total < 100_000:
        raise UnitError(f"{text.strip()!r} is no time spent; write it as 25 min or 1 h 20 min.")
    return total
