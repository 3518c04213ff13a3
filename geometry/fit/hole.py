"""The limits of a hole by its tolerance class, such as H7, as ISO 286 has them."""

from __future__ import annotations

import re
from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass

from geometry.fit.iso_286 import BELOW, BROUGHT_UP, FINER_STEPS, GRADES, LOWER, STEPS, UPPER_OF_J
from geometry.preconditions import refuse, require_positive
from geometry.sentences import length

CLASSES = (
    "H7", "H6", "H8", "H9", "H10", "H11", "D8", "D9", "D10", "E7", "E8", "E9", "F6", "F7", "F8", "F9", "G6", "G7",
    "J6", "J7", "J8", "JS6", "JS7", "JS8", "JS9", "K6", "K7", "K8", "M6", "M7", "M8", "N6", "N7", "N8", "N9", "P6", "P7",
    "R7", "S7",
)  # fmt: skip
"""The classes of holes that are reamed, the commonest first. Common practice, no source."""

MICRON = 1e-3

_CLASS = re.compile(r"(?P<letter>[A-Z]{1,2})(?P<grade>\d{1,2})")


@dataclass(frozen=True)
class Limits:
    """The smallest and the largest size of something, in mm."""

    low: float
    high: float

    @property
    def width(self) -> float:
        """How far they lie apart."""
        return self.high - self.low

    @property
    def middle(self) -> float:
        """Half way between them."""
        return (self.low + self.high) / 2


def hole_limits(size: float, tolerance_class: str) -> Limits:
    """The limits of a hole.

    Relation: ISO 286-1, standard tolerances and fundamental deviations of holes by steps of size. From K on the fine
    grades are brought up by what their tolerance is wider than that of the next finer grade.

    Args:
        size: nominal, in mm, above zero, up to 500.
        tolerance_class: one of ``CLASSES``.

    Returns:
        The limits in mm.

    Raises:
        GeometryError: for a size that ISO 286 has in other tables.

    Example:
        >>> found = hole_limits(10.0, "D8")
        >>> round(found.low, 3), round(found.high, 3)
        (10.04, 10.062)
    """
    if require_positive("nominal_diameter", size) > STEPS[-1]:
        raise refuse(
            "nominal_diameter",
            "Tolerance classes reach to {most} here. Set hole_tolerance to limits and give the limits of the hole.",
            {"most": length(STEPS[-1])},
        )
    low, high = _deviations(size, tolerance_class)
    return Limits(size + low * MICRON, size + high * MICRON)


def _deviations(size: float, tolerance_class: str) -> tuple[float, float]:
    """How far the limits lie above the nominal size, in micrometres."""
    found = _CLASS.fullmatch(tolerance_class)
    if found is None or tolerance_class not in CLASSES:
        raise refuse("hole_tolerance", "That is no tolerance class of a reamed hole.")
    letter, grade = found["letter"], int(found["grade"])
    wide = _of_step(GRADES[grade], size)
    if letter in LOWER:
        low: float = _of_step(LOWER[letter], size)
        return low, low + wide
    high = wide / 2 if letter == "JS" else _upper(letter, grade, size)
    return high - wide, high


def _upper(letter: str, grade: int, size: float) -> float:
    if letter == "J":
        return _of_step(UPPER_OF_J[grade], size)
    if letter == "N" and grade > BROUGHT_UP[letter]:
        return 0 if size > STEPS[0] else -_of_step(BELOW[letter], size)
    if (letter, grade) == ("M", 6) and 250 < size <= 315:
        return -9  # The one number that ISO 286-1 prints against its own rule.
    brought_up = 0.0
    if size > STEPS[0] and grade <= BROUGHT_UP[letter]:
        brought_up = _of_step(GRADES[grade], size) - _of_step(GRADES[grade - 1], size)
    return brought_up - _of_step(BELOW[letter], size)


def _of_step(row: Sequence[int], size: float) -> int:
    return row[bisect_left(STEPS if len(row) == len(STEPS) else FINER_STEPS, size)]
