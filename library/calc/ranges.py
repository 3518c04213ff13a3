"""A range of the book: it fills nothing by itself; a person takes its low, its middle or its high."""

from __future__ import annotations

import re

from geometry.quantities import QUANTITIES, quantity
from geometry.sentences import Kind
from library.book.model import Measure, Value
from library.units.read import UnitError, read
from library.units.show import show
from library.units.system import Display

ENDS = ("low", "middle", "high")
"""The words that take a number out of a range; never shortened, for a single letter is soon typed by mistake."""

_UNIT = re.compile(r"[A-Za-z°µ%/\"'][^0-9]*$")
_SAID = re.compile(r"(?P<low>.+?) to (?P<high>.+)|at least (?P<least>.+)|at most (?P<most>.+)")


def is_range(value: Value) -> bool:
    """Whether a value has an end or two but none that is taken first."""
    return value.usual is None and (value.low is not None or value.high is not None)


def ends_of(value: Value) -> tuple[str, ...]:
    """The words that take something out of a value: a limit has one end and no middle.

    Example:
        >>> ends_of(Value("rake_angle", high=Measure("18 deg", 0.314)))
        ('high',)
    """
    if value.low is not None and value.high is not None:
        return ENDS
    return (("low",) if value.low is not None else ()) + (("high",) if value.high is not None else ())


def said(value: Value) -> str:
    """What the book has, without what is taken first.

    Example:
        >>> said(Value("lip_relief_angle", low=Measure("5 deg", 0.1), high=Measure("15 deg", 0.3)))
        '5 to 15 deg'
        >>> said(Value("lip_relief_angle", high=Measure("18 deg", 0.3)))
        'at most 18 deg'
    """
    if value.low is not None and value.high is not None:
        low, high = value.low.text.strip(), value.high.text.strip()
        units = [found[0] if (found := _UNIT.search(text)) else "" for text in (low, high)]
        short = low.removesuffix(units[0]).rstrip()
        return (
            f"{short} to {high}"
            if units[0] == units[1] and short.isascii() and " " not in short
            else f"{low} to {high}"
        )
    if value.low is not None:
        return f"at least {value.low.text}"
    return f"at most {value.high.text}" if value.high is not None else ""


def taken(value: Value, end: str, display: Display, diameter: float | None = None) -> str:
    """What an end of a range is, as text with its unit.

    Args:
        value: with its ends.
        end: low, middle or high.
        display: the units in which a middle or a share of the diameter is written.
        diameter: of the tool in mm, for a share of it.

    Returns:
        The text; empty where the value has no such end.

    Example:
        >>> taken(Value("rake_angle", low=Measure("5 deg", 0.0872665), high=Measure("15 deg", 0.261799)), "middle", Display())
        '10 deg'
    """
    if end not in ends_of(value):
        return ""
    whole = {"low": value.low, "high": value.high}.get(end)
    if whole is not None and not whole.per_diameter:
        return whole.text
    measures = [one for one in ((whole,) if whole else (value.low, value.high)) if one is not None]
    numbers = [_number(one, diameter) for one in measures]
    known = [one for one in numbers if one is not None]
    if len(known) < len(numbers):
        return ""
    middle = sum(known) / len(known)
    row = quantity(value.key)
    return "" if row.whole and middle != int(middle) else _plain(middle, row.kind, display)


def _number(measure: Measure, diameter: float | None) -> float | None:
    if not measure.per_diameter:
        return measure.number
    return measure.number * diameter if diameter is not None else None


def _plain(number: float, kind: Kind, display: Display) -> str:
    """A number with its unit, without noughts that say nothing."""
    figures, space, unit = show(number, kind, display).partition(" ")
    return (figures.rstrip("0").rstrip(".") if "." in figures else figures) + space + unit


def read_range(key: str, text: str) -> Value | None:
    """What a range in words means, such as ``5 to 15 deg`` or ``at most 18 deg``; nothing where it is none.

    Example:
        >>> read_range("rake_angle", "5 to 15 deg").low.text
        '5 deg'
    """
    row = QUANTITIES.get(key)
    found = _SAID.fullmatch(text.strip())
    if row is None or row.kind is Kind.CHOICE or found is None:
        return None
    low, high = found["low"] or found["least"], found["high"] or found["most"]
    unit = _UNIT.search(high or "")
    if low and high and unit and not _UNIT.search(low):
        low = f"{low} {unit[0].strip()}"
    measures = [_measure(one, row.kind) if one else None for one in (low, high)]
    if None in [found for found, one in zip(measures, (low, high), strict=True) if one]:
        return None
    return Value(key, low=measures[0], high=measures[1])


def _measure(text: str, kind: Kind) -> Measure | None:
    try:
        found = read(text, kind, of_diameter=kind is Kind.LENGTH, unit_wanted=True)
    except UnitError:
        return None
    return Measure(text, found.number, per_diameter=found.per_diameter)
