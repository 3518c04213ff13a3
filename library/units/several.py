"""Several measures in one line: a unit typed after the last one serves all."""

from __future__ import annotations

import re
from collections.abc import Sequence

from geometry.sentences import Kind
from library.units.grammar import UnitError, parse
from library.units.read import read_many
from library.units.system import METRIC

_WITHOUT_UNIT = {Kind.CHOICE, Kind.COUNT, Kind.RATIO, Kind.PERCENT}

_BARE_COMMA = re.compile(r"[0-9],[0-9]")

_PARTED = re.compile(r";|,(?![0-9])|(?<![0-9]),")


def parted(text: str) -> tuple[str, ...]:
    """What is typed in one line, parted by commas or semicolons; a gap between two stays a gap.

    A comma between two digits is a decimal comma: it stays, so that the measure can be complained of.

    Example:
        >>> parted("0.28 mm, , 0.3 mm"), parted("0,28 mm"), parted(" ")
        (('0.28 mm', '', '0.3 mm'), ('0,28 mm',), ())
    """
    return tuple(part.strip() for part in _PARTED.split(text)) if text.strip() else ()


def with_the_last_unit(kind: Kind, measures: Sequence[str]) -> tuple[str, ...] | None:
    """Measures of which only the last may have its unit, each with that unit.

    Args:
        kind: what they are.
        measures: as typed; one that is empty stays so.

    Returns:
        The measures; nothing where the last one has no unit, or where one cannot be read.

    Example:
        >>> with_the_last_unit(Kind.LENGTH, ["0.20", "0.21", "11 thou"])
        ('0.20 thou', '0.21 thou', '11 thou')
        >>> with_the_last_unit(Kind.LENGTH, ["0.20", "0.21"]) is None
        True
    """
    unit = unit_of(kind, measures[-1]) if len(measures) > 1 else ""
    if not unit:
        return None
    try:
        return tuple(_completed(kind, one, unit) for one in measures)
    except UnitError:
        return None


def after_the_last(kind: Kind, text: str) -> str:
    """Where the unit of several measures is typed, with those as they stand, as a sentence.

    It is empty for less than two, and where the last is not a number without a unit.

    Args:
        kind: what they are.
        text: as typed in one line.

    Example:
        >>> after_the_last(Kind.ROTATION, "1400, 2800"), after_the_last(Kind.ROTATION, "2800")
        ('Write the unit after the last: 1400, 2800 rpm.', '')
    """
    measures = [one for one in parted(text) if one]
    listed = f"{', '.join(measures)} {METRIC.unit(kind)}"
    try:
        is_wanted = len(measures) > 1 and not parse(measures[-1], kind).unit
    except UnitError:
        return ""
    return f"Write the unit after the last: {listed}." if is_wanted else ""


def bare_commas(kind: Kind, text: str) -> str:
    """What is asked of several measures with a comma and no blank between two figures: a decimal, or two of them.

    Args:
        kind: what they are.
        text: as typed in one line.

    Example:
        >>> bare_commas(Kind.ROTATION, "1400,2800 rpm")[:35], bare_commas(Kind.ROTATION, "1400, 2800 rpm")
        ("'1400,2800 rpm' has a comma; write ", '')
    """
    if _BARE_COMMA.search(text):
        try:
            read_many(text, kind)
        except UnitError as error:
            return str(error)
    return ""


def in_short(kind: Kind, measures: Sequence[str], *, between: str = "; ") -> str:
    """Measures in one line, as they would be typed.

    Args:
        kind: what they are.
        measures: each with its unit.
        between: parts those that have not one unit.

    Example:
        >>> in_short(Kind.LENGTH, ["0.20 mm", "0.21 mm"]), in_short(Kind.LENGTH, ["0.20 mm", "0.3 in"])
        ('0.20, 0.21 mm', '0.20 mm; 0.3 in')
    """
    units = {unit_of(kind, one) for one in measures}
    if len(measures) > 1 and len(units) == 1 and (unit := units.pop()):
        short = ", ".join([*(one.removesuffix(f" {unit}") for one in measures[:-1]), measures[-1]])
        if with_the_last_unit(kind, parted(short)) == tuple(measures):
            return short
    return between.join(measures)


def unit_of(kind: Kind, measure: str) -> str:
    """The unit of a measure as it was typed; empty where it is not one number and one unit.

    Example:
        >>> unit_of(Kind.LENGTH, "40 thou"), unit_of(Kind.LENGTH, "3.2")
        ('thou', '')
    """
    if kind in _WITHOUT_UNIT:
        return ""
    number, _, unit = measure.strip().rpartition(" ")
    try:
        return unit if parse(measure, kind).unit and not parse(number, kind).unit else ""
    except UnitError:
        return ""


def _completed(kind: Kind, measure: str, unit: str) -> str:
    if not measure.strip():
        return ""
    return measure if parse(measure, kind).unit else f"{measure} {unit}"
