"""A slash between two numbers: the fraction of an inch that it is by custom, or two diameters of a tool with steps."""

from __future__ import annotations

import re
from collections.abc import Sequence

_OF_A_MILLIMETRE = re.compile(r"\s*(?P<top>\d+)\s*[/\u2044]\s*(?P<below>\d+)\s*mm\s*", re.IGNORECASE)
_BARE = re.compile(r"\s*(?P<top>\d+)\s*[/\u2044]\s*(?P<below>\d+)\s*")
_PART = re.compile(r"(?P<top>\d+)/(?P<below>\d+)")

_INCHES = re.compile('in|["\u2033\u201d\u201c]', re.IGNORECASE)

METRIC_UNITS = frozenset({"mm", "cm", "um"})
"""Units of which nobody writes a fraction but a half, a quarter and so on, or hundredths."""

_OF_AN_INDICATOR = frozenset({100, 1000})
"""Parts of a millimetre that indicators and drawings name, two hundredths as 2/100."""


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


def slashed_steps(parts: Sequence[str], *, in_mm: bool) -> str:
    """What is said of several lengths of which one may be two steps parted by a slash; empty where none is.

    Args:
        parts: the lengths, as typed.
        in_mm: whether millimetres are worked in.

    Example:
        >>> slashed_steps(["8/12 mm", "14 mm"], in_mm=True)
        "'8/12 mm' is a fraction, 0.667 mm; for steps write 8, 12 mm, and for the fraction 0.667 mm."
        >>> slashed_steps(["1/2 mm", "6 mm"], in_mm=True)
        ''
    """
    # Inches behind the last hold for a fraction before it, whatever an inch is parted into.
    in_inches = _INCHES.search(parts[-1]) is not None
    for part in parts:
        found = _OF_A_MILLIMETRE.fullmatch(part)
        is_odd = found is not None and not _is_measured(int(found["top"]), int(found["below"]))
        wrong = fraction_of_mm(part) if is_odd or len(parts) == 1 else ""
        if wrong or (in_mm and not in_inches and (wrong := bare_fraction(part, many=True))):
            return wrong
    return ""


def no_fraction_of(text: str, unit: str, number: float) -> str:
    """What is said where one length is wanted and its fraction is none that anybody measures; empty of any other text.

    Halves, quarters, eighths and so on in lowest terms stand, and so do hundredths and thousandths; anything else is a
    list of steps or a slip.

    Args:
        text: one number, as typed, its signs made plain.
        unit: that it is in.
        number: what it comes to in that unit.

    Example:
        >>> no_fraction_of("8/12 mm", "mm", 8 / 12)
        "'8/12 mm' is a fraction, 0.667 mm; one length is wanted here, such as 8 mm, or 0.667 mm for the fraction."
        >>> no_fraction_of("1/2 mm", "mm", 0.5), no_fraction_of("2/100 mm", "mm", 0.02), no_fraction_of("8/12 in", "in", 8 / 12)
        ('', '', '')
    """
    found = _PART.search(text) if unit in METRIC_UNITS else None
    if found is None or _is_measured(int(found["top"]), int(found["below"])):
        return ""
    meant = f"{number:.3f} {unit}"
    return (
        f"{text.strip()!r} is a fraction, {meant}; one length is wanted here, such as {found['top']} {unit}, or {meant} "
        "for the fraction."
    )


def bare_fraction(text: str, *, many: bool = False) -> str:
    """What is said of a fraction without a unit that is none of an inch, where millimetres are worked in; else empty.

    Args:
        text: one number, as typed.
        many: whether several may stand there.

    Example:
        >>> bare_fraction("8/12")
        "'8/12' is a fraction without a unit, and none that an inch is parted into; one length is wanted here, such as 8 mm."
        >>> bare_fraction("8/12", many=True)
        "'8/12' is a fraction without a unit, and none that an inch is parted into; for steps write 8, 12 mm."
        >>> bare_fraction("3/8"), bare_fraction("1/20")
        ('', '')
    """
    found = _BARE.fullmatch(text)
    if found is None or int(found["top"]) == 1 or _is_halved(int(found["below"])):
        return ""
    top, below = found["top"], found["below"]
    wanted = f"for steps write {top}, {below} mm" if many else f"one length is wanted here, such as {top} mm"
    return f"{text.strip()!r} is a fraction without a unit, and none that an inch is parted into; {wanted}."


def _is_measured(top: int, below: int) -> bool:
    """Whether a fraction is in halves, quarters and so on in lowest terms, or in hundredths."""
    return top < below and ((_is_halved(below) and top % 2 == 1) or below in _OF_AN_INDICATOR)


def _is_halved(below: int) -> bool:
    """Whether a whole is parted into two, four, eight and so on."""
    return below > 1 and below & (below - 1) == 0
