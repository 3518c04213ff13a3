"""Several readings in one line: a unit typed after the last one serves all."""

from __future__ import annotations

from geometry.quantities import quantity
from geometry.sentences import Kind
from library.cards.editing import readings_of
from library.cards.model import Readings
from library.units.grammar import UnitError, parse

_WITHOUT_UNIT = {Kind.CHOICE, Kind.COUNT, Kind.RATIO, Kind.PERCENT}


def with_the_last_unit(key: str, text: str) -> str:
    """Readings typed with one unit after the last, each with that unit.

    Args:
        key: the quantity.
        text: as typed.

    Returns:
        The readings parted by semicolons; the text as it is where the last reading has no unit, or where one cannot
        be read.

    Example:
        >>> with_the_last_unit("drop", "0.20, 0.21, 11 thou")
        '0.20 thou; 0.21 thou; 11 thou'
        >>> with_the_last_unit("drop", "0.20, 0.21")
        '0.20, 0.21'
    """
    readings = readings_of(text)
    unit = _unit(key, readings[-1]) if len(readings) > 1 else ""
    if not unit:
        return text
    try:
        return "; ".join(_completed(key, one, unit) for one in readings)
    except UnitError:
        return text


def _completed(key: str, reading: str, unit: str) -> str:
    if not reading.strip():
        return ""
    return reading if parse(reading, quantity(key).kind).unit else f"{reading} {unit}"


def in_short(key: str, readings: Readings) -> str:
    """Readings in one line, as they would be typed.

    Example:
        >>> in_short("drop", ("0.20 mm", "0.21 mm")), in_short("drop", ("0.20 mm", "0.3 in"))
        ('0.20, 0.21 mm', '0.20 mm; 0.3 in')
    """
    units = {_unit(key, one) for one in readings}
    if len(readings) > 1 and len(units) == 1 and (unit := units.pop()):
        short = ", ".join([*(one.removesuffix(f" {unit}") for one in readings[:-1]), readings[-1]])
        if readings_of(with_the_last_unit(key, short)) == readings:
            return short
    return "; ".join(readings)


def _unit(key: str, reading: str) -> str:
    """The unit of a reading as it was typed; empty where it is not one number and one unit."""
    kind = quantity(key).kind
    if kind in _WITHOUT_UNIT:
        return ""
    number, _, unit = reading.strip().rpartition(" ")
    try:
        return unit if parse(reading, kind).unit and not parse(number, kind).unit else ""
    except UnitError:
        return ""
