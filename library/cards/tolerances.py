"""Tolerances as a shop writes them: ``0.02 mm``, ``+/- 0.02 mm``, ``+0 -0.03 mm``."""

from __future__ import annotations

import re
from dataclasses import dataclass

from geometry.sentences import Kind
from library.units.grammar import parse, tidy
from library.units.read import UnitError, read

_BOTH_WAYS = re.compile(r"^(?:\+/-|\+-|\u00b1)\s*")
_TWO = re.compile(
    r"^(?P<plus>\+\s*[0-9./ ]+?(?:\s*[a-zA-Z'\"]+)?)\s*[/,;]?\s*(?P<minus>-\s*[0-9./ ]+?\s*[a-zA-Z'\"]*)$"
)
_TWO_BACK = re.compile(
    r"^(?P<minus>-\s*[0-9./ ]+?(?:\s*[a-zA-Z'\"]+)?)\s*[/,;]?\s*(?P<plus>\+\s*[0-9./ ]+?\s*[a-zA-Z'\"]*)$"
)


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
    """
    plain = tidy(text)
    two = _TWO.match(plain) or _TWO_BACK.match(plain)
    if two:
        plus, minus = _pair(two["plus"], two["minus"], kind)
        return Tolerance(minus, plus)
    width = read(_BOTH_WAYS.sub("", plain), kind, unit_wanted=True).number
    if width < 0:
        raise UnitError(f"{plain!r} goes only below; write how far above it may be too: +0 {plain}.")
    return Tolerance(width, width)


def _pair(plus: str, minus: str, kind: Kind) -> tuple[float, float]:
    """Both sides as numbers from zero; a side without a unit has the other's."""
    units = [_unit(plus, kind), _unit(minus, kind)]
    common = next((unit for unit in units if unit), "")
    sides = [read(f"{side} {'' if unit else common}", kind, unit_wanted=True).number
             for side, unit in zip((plus, minus), units, strict=True)]  # fmt: skip
    return abs(sides[0]), abs(sides[1])


def _unit(side: str, kind: Kind) -> str:
    return parse(side, kind).unit
