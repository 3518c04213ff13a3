"""Format numbers for a reader: always with a unit, never finer than an indicator, limits rounded to the safe side."""

from __future__ import annotations

import math

from geometry.quantities.quantity import Quantity
from geometry.sentences import Amount, Kind, Rounding, Sentence
from library.units.convert import from_geometry
from library.units.system import METRIC, Display

_DECIMALS = {
    "mm": 3,
    "in": 4,
    "mm2": 3,
    "in2": 6,
    "deg": 2,
    "m/s": 2,
    "ft/min": 0,
    "rpm": 0,
    "tpi": 3,
}
"""Decimals in each unit: a micron, a tenth of a thou, and what the other indicators can show."""

_DIGITS = 4
"""Digits of a number in any other unit."""

LEAST_ANGLE = 0.0001
"""Degrees under which an angle is none: over a metre they make less than two thousandths of a millimetre. Derived."""

SLIGHT_ANGLE = 0.095
"""Degrees from which on hundredths make two digits."""

_SLOW, _SLOW_DECIMALS = 10.0, 2
"""So few turns in a minute are no whole ones: 0.65 is not told as 1."""

_LIMIT_DECIMALS = {"mm": 2, "in": 3}
"""Decimals of a limit that a person is told to keep to: what can be set, not what can be computed."""


def show(value: float, kind: Kind, display: Display = METRIC, rounding: Rounding = Rounding.NEAREST) -> str:
    """A number with its unit.

    Args:
        value: in mm, radians, mm/s, rad/s or as a count.
        kind: what it is.
        display: the units to show.
        rounding: to the nearest, or for a limit to the safe side.

    Example:
        >>> show(1.6755161, Kind.LENGTH, rounding=Rounding.DOWN)
        '1.67 mm'
        >>> show(4.191, Kind.LENGTH, Display("in"))
        '0.1650 in'
    """
    unit = display.unit(kind)
    digits = number(from_geometry(value, kind, unit), kind, unit, rounding)
    return f"{digits} {unit}" if unit else digits


def show_bare(value: float, kind: Kind, display: Display = METRIC) -> str:
    """The digits alone, for a column whose head has the unit.

    Example:
        >>> show_bare(1.6755161, Kind.LENGTH)
        '1.676'
    """
    unit = display.unit(kind)
    return number(from_geometry(value, kind, unit), kind, unit)


def show_answer(value: float, row: Quantity, display: Display = METRIC) -> str:
    """An answer with its unit, as finely as an indicator shows it; a limit is rounded to the safe side.

    Example:
        >>> from geometry.quantities import quantity
        >>> show_answer(1.6755161, quantity("clear_land_width"))
        '1.675 mm'
        >>> show_answer(0.00005, quantity("swivel_angle")), show_answer(1e-15, quantity("swivel_angle"))
        ('0.0029 deg', '0.00 deg')
        >>> show_answer(9.5369, quantity("reamer_upper_limit"), Display("in"))
        '0.37546 in'
    """
    unit = display.unit(row.kind)
    if unit not in _DECIMALS:
        return show(value, row.kind, display)
    return show_end(value, row.kind, unit, row.rounding, fine=row.fine)


def show_end(value: float, kind: Kind, unit: str, rounding: Rounding, *, fine: bool = False) -> str:
    """The end of a range with its unit, as finely as an indicator shows it, to the side on which it still holds.

    Args:
        value: in mm, radians, mm/s, rad/s or as a count.
        kind: what it is.
        unit: to show it in.
        rounding: to the nearest, up for the low end of a range, down for its high end.
        fine: whether in inches it has one decimal more.

    Example:
        >>> show_end(9.537, Kind.LENGTH, "in", Rounding.DOWN), show_end(9.537, Kind.LENGTH, "thou", Rounding.DOWN)
        ('0.3754 in', '375.4 thou')
    """
    found = from_geometry(value, kind, unit)
    if kind is Kind.COUNT:
        return number(found, kind, unit)
    whole = len(str(int(abs(found))))
    decimals = _DECIMALS[unit] if unit in _DECIMALS else max(_DIGITS - whole, 0)
    decimals += _more(unit, fine=fine)
    return f"{_rounded(found, unit, decimals, rounding)} {unit}".rstrip()


def _more(unit: str, *, fine: bool) -> int:
    """How many decimals more a fine number has: 0.37524 to 0.37547 in is no ten-thousandth apart on either side."""
    return 1 if fine and unit in {"in", "thou"} else 0


def show_finely(
    value: float, kind: Kind, display: Display = METRIC, rounding: Rounding = Rounding.NEAREST, more: int = 0
) -> str:
    """A number with its unit, as finely as an indicator shows it, without noughts that say nothing.

    Args:
        value: as for ``show``.
        kind: what it is.
        display: the units to show.
        rounding: to the nearest, up or down.
        more: how many decimals finer still.

    Example:
        >>> show_finely(1.0, Kind.LENGTH, Display("in"), Rounding.DOWN), show_finely(25.4, Kind.LENGTH, Display("in"))
        ('0.0393 in', '1 in')
    """
    unit = display.unit(kind)
    if unit not in _DECIMALS:
        return show(value, kind, display)
    digits = _rounded(from_geometry(value, kind, unit), unit, _DECIMALS[unit] + more, rounding)
    return f"{digits.rstrip('0').rstrip('.') if '.' in digits else digits} {unit}"


def number(value: float, kind: Kind, unit: str, rounding: Rounding = Rounding.NEAREST) -> str:
    """The digits of a number that is already in ``unit``, without the unit.

    Example:
        >>> number(-0.0000001, Kind.LENGTH, "mm")
        '0.000'
    """
    if kind is Kind.COUNT and value == int(value):
        return str(int(value))
    if unit not in _DECIMALS:
        return f"{value:.{_DIGITS}g}"
    return _rounded(value, unit, _decimals(value, unit, rounding), rounding)


def _rounded(value: float, unit: str, decimals: int, rounding: Rounding) -> str:
    is_slow = unit == "rpm" and abs(value) < _SLOW
    # A slight angle, which is set by an indicator along a length, has two digits of its own.
    is_slight = unit == "deg" and LEAST_ANGLE <= abs(value) < SLIGHT_ANGLE
    if is_slow:
        decimals = _SLOW_DECIMALS
    elif is_slight:
        decimals = max(decimals, 1 - math.floor(math.log10(abs(value))))
    step = 10.0**-decimals
    if rounding is Rounding.DOWN:
        value = math.floor(value / step + 1e-9) * step
    elif rounding is Rounding.UP:
        value = math.ceil(value / step - 1e-9) * step
    text = f"{value:.{decimals}f}"
    if unit == "tpi" or is_slow:
        text = text.rstrip("0").rstrip(".")
    return text.lstrip("-") if float(text) == 0 else text


def _decimals(value: float, unit: str, rounding: Rounding) -> int:
    fine = _DECIMALS[unit]
    if rounding is Rounding.NEAREST or unit not in _LIMIT_DECIMALS:
        return fine
    coarse = _LIMIT_DECIMALS[unit]
    return coarse if abs(value) >= 20 * 10.0**-coarse else fine


def say(sentence: Sentence, display: Display = METRIC) -> str:
    """A sentence with its amounts written in the reader's units.

    Example:
        >>> from geometry.sentences import length
        >>> say(Sentence("It clears by {gap}.", {"gap": length(0.254)}), Display("in"))
        'It clears by 0.0100 in.'
    """
    return sentence.template.format_map(
        {
            name: part if isinstance(part, str) else amount(part, display)
            for name, part in sentence.parts.items()
        }
    )


def amount(part: Amount, display: Display = METRIC) -> str:
    """One amount of a sentence, with its unit; behind what the thing is marked with where that is in another unit.

    Example:
        >>> from geometry.sentences import length
        >>> amount(length(2.5, mark="2.5 mm")), amount(length(2.5, mark="2.5 mm"), Display("in"))
        ('2.500 mm', '2.5 mm (0.0984 in)')
        >>> amount(length(100.0, in_inches="a foot"), Display("in"))
        'a foot'
    """
    if part.in_inches and display.lengths == "in":
        return part.in_inches if isinstance(part.in_inches, str) else amount(part.in_inches, display)
    unit = display.unit(part.kind)
    if part.fine:
        shown = show_end(part.value, part.kind, unit, part.rounding, fine=True)
    else:
        shown = show(part.value, part.kind, display, part.rounding)
    return f"{part.mark} ({shown})" if part.mark and not part.mark.endswith(f" {unit}") else shown
