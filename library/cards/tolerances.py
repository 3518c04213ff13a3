"""Parse a tolerance as a shop writes it: ``0.02 mm``, ``+/- 0.02 mm``, ``+0 -0.03 mm``."""

from __future__ import annotations

import re
from dataclasses import dataclass

from geometry.sentences import Kind
from library.units.grammar import parse, tidy
from library.units.read import UnitError, read

_BOTH_WAYS = re.compile(r"^(?:\+/-|\+-|\u00b1)\s*")
_NOTHING = r"(?:0+\.?0*|\.0+)"
"""A side that is nothing needs no sign."""

_TWO = (
    re.compile(r"(?P<first>[+-][^+-]+?)[\s/,;]*(?P<second>[+-][^+-]+)"),
    re.compile(rf"(?P<first>{_NOTHING}(?:\s*[a-z]+)?)[\s/,;]*(?P<second>[+-][^+-]+)", re.IGNORECASE),
    # A nothing of minutes or seconds behind degrees is part of the angle.
    re.compile(
        rf"(?P<first>[+-][^+-]*[^+\-\s/,;])[\s/,;]+(?P<second>{_NOTHING}(?:\s*(?!min|sec)[a-z]+)?)",
        re.IGNORECASE,
    ),
)
_NUMBERS = re.compile(r"\d+\.?\d*|\.\d+")


@dataclass(frozen=True)
class Tolerance:
    """How far a reading may be off.

    Attributes:
        minus: below what is wanted, from zero, in mm or radians.
        plus: above it, from zero.
    """

    minus: float
    plus: float


def tolerance(text: str, kind: Kind) -> Tolerance:
    """Read a tolerance; it carries its unit.

    Args:
        text: as typed.
        kind: of the quantity it belongs to.

    Raises:
        UnitError: with a sentence for the person who typed it.

    Example:
        >>> tolerance("0.02 mm", Kind.LENGTH)
        Tolerance(minus=0.02, plus=0.02)
        >>> tolerance("+0 -0.03 mm", Kind.LENGTH)
        Tolerance(minus=0.03, plus=0.0)
        >>> tolerance("0/-0.02 mm", Kind.LENGTH)
        Tolerance(minus=0.02, plus=0.0)
    """
    plain = tidy(text)
    two = next((found for form in _TWO if (found := form.fullmatch(plain))), None)
    if two and not _BOTH_WAYS.match(plain):
        sides = sorted(_pair(two["first"], two["second"], kind))
        if sides[0] > 0 or sides[1] < 0:
            raise UnitError(f"{plain!r} goes one way twice; write it as {_such(kind, plain)}.")
        return Tolerance(-sides[0], sides[1])
    width = _width(plain, kind)
    if width < 0:
        raise UnitError(f"{plain!r} goes only below; write how far above it may be too: +0 {plain}.")
    return Tolerance(width, width)


def _width(plain: str, kind: Kind) -> float:
    """How far it may be off either way, in one number; several numbers that are no two sides are refused as such."""
    try:
        return read(_BOTH_WAYS.sub("", plain), kind, unit_wanted=True).number
    except UnitError:
        if len(_NUMBERS.findall(plain)) < 2 or kind not in _SUCH:
            raise
        raise UnitError(
            f"{plain!r} is no tolerance; write it as {_such(kind, plain)}, each side with its sign."
        ) from None


_SUCH = {Kind.LENGTH: "+0 -0.02 mm", Kind.ANGLE: "+0 -30 min"}
"""How a tolerance of two sides is written."""

_INCHES = re.compile(r"(?:in|inch|inches|thous?|tenths?)\b|\"", re.IGNORECASE)


def _such(kind: Kind, plain: str) -> str:
    """The same in the units that it was typed in, and without one for what has none.

    Example:
        >>> _such(Kind.LENGTH, "+1 +2 thou"), _such(Kind.LENGTH, "+0.1 +0.2 mm")
        ('+0 -1 thou', '+0 -0.02 mm')
    """
    return "+0 -1 thou" if kind is Kind.LENGTH and _INCHES.search(plain) else _SUCH.get(kind, "+0 -0.02")


def _pair(first: str, second: str, kind: Kind) -> list[float]:
    """Both sides as numbers with their signs; a side without a unit has the other's."""
    units = [parse(side, kind).unit for side in (first, second)]
    common = units[0] or units[1]
    return [read(side if unit else f"{side} {common}", kind, unit_wanted=True).number
            for side, unit in zip((first, second), units, strict=True)]  # fmt: skip
