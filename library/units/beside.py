"""The next number of several, up or down, counted from one that need not be among them."""

from __future__ import annotations

from collections.abc import Sequence

from geometry.sentences import Kind
from library.units.read import UnitError, read
from library.units.system import METRIC, Display

SAME = 1e-9
"""The share by which two numbers may differ and are still the same one, written in two units."""


def beside(texts: Sequence[str], text: str, kind: Kind, step: int, display: Display = METRIC) -> str:
    """The next of some numbers above or below what a text means, round the ends.

    Args:
        texts: the numbers, each as text with its unit; one at least, in any order.
        text: where it is counted from; whatever is no number, or nothing, stands before the first and behind the last.
        kind: what the numbers are.
        step: 1 for the next one up, -1 for the next one down.
        display: the unit of a number without one.

    Returns:
        One of the texts, as it is written there.

    Example:
        >>> drawer = ("0.5 mm", "1 mm", "1.6 mm", "2.5 mm")
        >>> beside(drawer, "1.6 mm", Kind.LENGTH, 1), beside(drawer, "1.43 mm", Kind.LENGTH, -1), beside(drawer, "", Kind.LENGTH, 1)
        ('2.5 mm', '1 mm', '0.5 mm')
    """
    ordered = sorted(texts, key=lambda one: step * read(one, kind, display).number)
    try:
        now = read(text, kind, display).number
    except UnitError:
        return ordered[0]
    further = (one for one in ordered if step * (read(one, kind, display).number - now) > SAME * abs(now))
    return next(further, ordered[0])
