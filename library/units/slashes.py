"""A slash between two numbers: the fraction of an inch that it is by custom, or two diameters of a tool with steps."""

from __future__ import annotations

import re

_OF_A_MILLIMETRE = re.compile(r"\s*(?P<top>\d+)\s*[/\u2044]\s*(?P<below>\d+)\s*mm\s*", re.IGNORECASE)


def fraction_of_mm(text: str) -> str:
    """What is said of a fraction of a millimetre where a tool may have several diameters; empty of any other text.

    Nobody writes one in the trade, and whoever does may mean two steps.

    Args:
        text: one number, as typed.

    Example:
        >>> fraction_of_mm("8/12 mm")
        "'8/12 mm' is a fraction, 0.667 mm; for steps write 8, 12 mm, and for the fraction 0.667 mm."
        >>> fraction_of_mm("5/8 in"), fraction_of_mm("1 1/2 mm")
        ('', '')
    """
    found = _OF_A_MILLIMETRE.fullmatch(text)
    if found is None or not int(found["below"]):
        return ""
    top, below = found["top"], found["below"]
    number = f"{int(top) / int(below):.3f} mm"
    return f"{text.strip()!r} is a fraction, {number}; for steps write {top}, {below} mm, and for the fraction {number}."
