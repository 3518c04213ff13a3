"""Values of the book in the unit that somebody works in: converted, rounded sensibly, and never past a limit.

A measure that the book has in that unit already stays as it is written, an angle and a share of the diameter too.
"""

from __future__ import annotations

import re
from dataclasses import replace

from geometry.quantities import QUANTITIES
from geometry.sentences import Kind, Rounding
from library.book.model import Band, Measure, Value
from library.calc.ranges import read_range, said
from library.calc.wording import span
from library.units.read import UnitError, read
from library.units.show import show_finely
from library.units.system import Display

_UNIT = re.compile(r"[A-Za-z\N{MICRO SIGN}/]*[A-Za-z]|\"")
_METRIC = frozenset({"mm", "um", "\N{MICRO SIGN}m", "cm", "m", "m/s", "mm/s", "m/min"})
_OF_INCHES = frozenset({"in", "inch", "inches", "thou", "tenths", '"', "ft/min"})

IN_TWO_UNITS = frozenset({Kind.LENGTH, Kind.SPEED})
"""What is written in millimetres or metres, or in inches or feet."""

BOOK = "book: "
"""Stands before what the book itself has, where that is shown in another unit."""

MORE_DECIMALS = range(4)
"""How many more than an indicator shows are tried, where a small value would else become another one."""

NEAR_ENOUGH = 0.05
"""The share of a value, or of a range, by which rounding may change it."""


def in_units(value: Value, display: Display) -> Value:
    """A value of the book as it is shown to somebody who works in a unit, its bands and other sources too.

    A low end is rounded up and a high one down, so that what keeps the range as shown keeps it as meant.

    Example:
        >>> land = Value("land_width", low=Measure("0.5 mm", 0.5), high=Measure("1 mm", 1.0))
        >>> span(in_units(land, Display("in"))), span(in_units(land, Display("mm")))
        ('0.0197 in to 0.0393 in', '0.5 mm to 1 mm')
    """
    row = QUANTITIES.get(value.key)
    low, usual, high = value.low, value.usual, value.high
    if row is not None and row.kind in IN_TWO_UNITS:
        low, usual, high = _together(value, row.kind, display)
    return replace(
        value,
        low=low,
        usual=usual,
        high=high,
        bands=tuple(_band(one, display) for one in value.bands),
        also=tuple(in_units(one, display) for one in value.also),
    )


def as_written(value: Value, display: Display | None) -> str:
    """What the book has in its own writing, where that is shown in another unit; else empty.

    Example:
        >>> as_written(Value("land_width", usual=Measure("1/16 in", 1.5875)), Display("mm"))
        'book: 1/16 in'
    """
    own = span(value)
    return f"{BOOK}{own}" if display is not None and span(in_units(value, display)) != own else ""


def shown_span(value: Value, display: Display | None) -> str:
    """A value with its range in the unit that is worked in, and as the book has it where that is another.

    Example:
        >>> shown_span(Value("land_width", usual=Measure("1/8 in", 3.175)), Display("mm"))
        '3.175 mm; book: 1/8 in'
    """
    if display is None:
        return span(value)
    own = as_written(value, display)
    return span(in_units(value, display)) + (f"; {own}" if own else "")


def in_units_of(key: str, text: str, display: Display) -> str:
    """A measure or a range of measures of the book, in words, in the unit that somebody works in; any other text as it is.

    Example:
        >>> in_units_of("back_taper", "at most 0.1 mm", Display("in")), in_units_of("back_taper", "40 thou", Display("in"))
        ('at most 0.0039 in', '40 thou')
    """
    row = QUANTITIES.get(key)
    if row is None or row.kind not in IN_TWO_UNITS or not _is_foreign(text, display):
        return text
    value = read_range(key, text)
    if value is not None:
        return said(in_units(value, display))
    try:
        found = read(text, row.kind, of_diameter=row.kind is Kind.LENGTH, unit_wanted=True)
    except UnitError:
        return text
    one = _written(Measure(text, found.number, per_diameter=found.per_diameter), row.kind, display)
    return one.text if one is not None else text


def _together(
    value: Value, kind: Kind, display: Display
) -> tuple[Measure | None, Measure | None, Measure | None]:
    """Low, usual and high with as many decimals as they want to be about what is meant."""
    meant = (value.low, value.usual, value.high)
    found = meant
    for more in MORE_DECIMALS:
        low, high = (
            _written(one, kind, display, rounding, more)
            for one, rounding in ((value.low, Rounding.UP), (value.high, Rounding.DOWN))
        )
        usual = _written(value.usual, kind, display, Rounding.NEAREST, more)
        if usual is not None and high is not None and usual.number > high.number:
            usual = _written(value.usual, kind, display, Rounding.DOWN, more)
        elif usual is not None and low is not None and usual.number < low.number:
            usual = _written(value.usual, kind, display, Rounding.UP, more)
        found = (low, usual, high)
        pairs = [
            (one, then)
            for one, then in zip(found, meant, strict=True)
            if one is not None and then is not None
        ]
        if _are_near([one.number for one, _ in pairs], [then.number for _, then in pairs]):
            break
    return found


def _are_near(shown: list[float], meant: list[float]) -> bool:
    """Whether numbers as they are shown are still about what is meant, each of them and from the least to the most."""
    spans = (shown[-1:], shown[:1]), (meant[-1:], meant[:1])
    reach, whole = ((last[0] - first[0]) if last else 0.0 for last, first in spans)
    each = all(abs(one - then) <= NEAR_ENOUGH * abs(then) for one, then in zip(shown, meant, strict=True))
    return each and abs(reach - whole) <= NEAR_ENOUGH * abs(whole)


def _written(
    one: Measure | None, kind: Kind, display: Display, rounding: Rounding = Rounding.NEAREST, more: int = 0
) -> Measure | None:
    """A measure as it is shown, and what that means; the same where it is of the unit that is worked in already."""
    if one is None or one.per_diameter or not _is_foreign(one.text, display):
        return one
    text = show_finely(one.number, kind, display, rounding, more)
    return Measure(text, read(text, kind, display).number)


def _is_foreign(text: str, display: Display) -> bool:
    """Whether a unit of the other sort stands in a text."""
    others = _OF_INCHES if display.lengths == "mm" else _METRIC
    return not others.isdisjoint(_UNIT.findall(text))


def _band(one: Band, display: Display) -> Band:
    start, to = (_written(end, Kind.LENGTH, display) for end in (one.start, one.to))
    return replace(one, start=start, to=to, value=in_units(one.value, display))
