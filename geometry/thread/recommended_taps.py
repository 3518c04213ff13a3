"""Which H number a tap maker recommends for a unified thread of class 2B or 3B."""

from __future__ import annotations

import math

INCH = 25.4


def _number(number: int) -> float:
    """The diameter of a number size, in inches: 0.060 and 0.013 more for each number. ASME B1.1."""
    return 0.060 + 0.013 * number


RECOMMENDED = {
    (_number(0), 80): (2, 2),
    (_number(1), 64): (2, 2),
    (_number(2), 56): (2, 2),
    (_number(3), 48): (3, 2),
    (_number(4), 40): (3, 2),
    (_number(5), 40): (3, 2),
    (_number(6), 32): (3, 2),
    (_number(8), 32): (3, 3),
    (_number(10), 24): (3, 3),
    (_number(10), 32): (3, 3),
    (_number(12), 24): (3, 3),
    (1 / 4, 20): (5, 3),
    (1 / 4, 28): (4, 3),
    (5 / 16, 18): (5, 3),
    (5 / 16, 24): (4, 3),
    (3 / 8, 16): (5, 3),
    (3 / 8, 24): (4, 3),
    (7 / 16, 14): (5, 3),
    (7 / 16, 20): (5, 3),
    (1 / 2, 13): (5, 4),
    (1 / 2, 20): (5, 3),
    (9 / 16, 12): (5, 4),
    (9 / 16, 18): (5, 3),
    (5 / 8, 11): (5, 4),
    (5 / 8, 18): (5, 3),
    (3 / 4, 10): (5, 4),
}
"""By diameter in inches and threads per inch: the H numbers for 2B and for 3B. A tap maker's technical page of 2020, taps for
the classes of unified threads."""


def recommended(diameter: float, pitch: float, thread_class: str) -> str:
    """The mark that the table has for a thread; empty where it has none.

    Args:
        diameter: basic, in mm.
        pitch: in mm.
        thread_class: such as ``2B``.

    Example:
        >>> recommended(12.7, 25.4 / 13, "3B"), recommended(12.0, 1.75, "6H")
        ('H4', '')
    """
    if thread_class not in {"2B", "3B"}:
        return ""
    for (size, count), numbers in RECOMMENDED.items():
        if math.isclose(size * INCH, diameter, rel_tol=1e-6) and math.isclose(
            INCH / count, pitch, rel_tol=1e-6
        ):
            return f"H{numbers[thread_class == '3B']}"
    return ""
