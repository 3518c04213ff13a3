"""Parse what a person typed into the number that geometry computes with."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from geometry.sentences import Kind
from library.units.convert import to_geometry
from library.units.grammar import REMEMBERED, Parsed, UnitError, example, parse, tidy
from library.units.system import METRIC, Display

__all__ = ["Reading", "UnitError", "read", "read_many"]

_PLUS_MINUS = re.compile(r"\+/-|\u00b1|\+-")
_SEPARATORS = re.compile(r"[;,]")


@dataclass(frozen=True)
class Reading:
    """One number that was typed.

    Attributes:
        text: as typed.
        number: in mm, radians, mm/s, rad/s or as a count; a share where ``per_diameter``.
        kind: of the unit typed, or the one wanted when none was.
        unit: the unit as Heelclear writes it.
        half_width: how far the number may be off either way, where ``+/-`` was typed.
        per_diameter: true for ``0.25 D``.
    """

    text: str
    number: float
    kind: Kind
    unit: str
    half_width: float | None = None
    per_diameter: bool = False


def read(
    text: str,
    kind: Kind,
    display: Display = METRIC,
    *,
    other_kinds: tuple[Kind, ...] = (),
    of_diameter: bool = False,
    unit_wanted: bool = False,
) -> Reading:
    """Read a number, with a unit or in the unit that is being worked in, and perhaps ``+/-`` another.

    Args:
        text: what was typed.
        kind: what is wanted.
        display: gives the unit of a number without one.
        other_kinds: kinds that are taken too, when a unit of that kind is written.
        of_diameter: whether a share of the diameter is allowed.
        unit_wanted: true in files and records, where a length without a unit is not taken.

    Returns:
        The reading.

    Raises:
        UnitError: with a sentence for the person who typed it.

    Example:
        >>> read("200 thou", Kind.LENGTH).number
        5.08
        >>> read("3.2 mm +/- 0.05", Kind.LENGTH).half_width
        0.05
    """
    reads = _remembered if len(text) <= REMEMBERED else _read
    found = reads(text, kind, display, other_kinds, of_diameter, unit_wanted)
    if isinstance(found, UnitError):
        raise found.with_traceback(None)
    return found


def _read(
    text: str,
    kind: Kind,
    display: Display,
    other_kinds: tuple[Kind, ...],
    of_diameter: bool,
    unit_wanted: bool,
) -> Reading | UnitError:
    try:
        return _reading(text, kind, display, other_kinds, of_diameter, unit_wanted)
    except UnitError as error:
        return error


_remembered = lru_cache(maxsize=4096)(_read)
"""A text means the same for ever; at each key every calculation of a card reads the same ones again."""


def _reading(
    text: str,
    kind: Kind,
    display: Display,
    other_kinds: tuple[Kind, ...],
    of_diameter: bool,
    unit_wanted: bool,
) -> Reading:
    main, *spread = _PLUS_MINUS.split(text)
    if len(spread) > 1:
        raise UnitError(f"{tidy(text)!r} has more than one +/-.")
    parsed = parse(main, kind, of_diameter=of_diameter)
    found, unit = _settle(text, parsed, kind, display, other_kinds, unit_wanted)
    share = parsed.unit == "D"
    number = float(parsed.number) if share else to_geometry(parsed.number, found, unit)
    half_width = _half_width(spread[0], found, unit, display) if spread else None
    return Reading(text, number, found, unit, half_width, share)


def read_many(text: str, kind: Kind, display: Display = METRIC) -> tuple[Reading, ...]:
    """Read several numbers, parted by commas or semicolons; a unit after the last serves all before it.

    Example:
        >>> [one.number for one in read_many("6, 8, 10 mm", Kind.LENGTH)]
        [6.0, 8.0, 10.0]
    """
    parts = [part for part in (one.strip() for one in _SEPARATORS.split(text)) if part]
    if not parts:
        raise UnitError(f"Nothing is written there; give numbers such as {example(kind)}, parted by commas.")
    last = read(parts[-1], kind, display)
    readings = []
    for part in parts[:-1]:
        parsed = parse(part, kind)
        bare = parsed.kind is None and not (parsed.fraction and last.unit != "in")
        readings.append(read(f"{part} {last.unit}" if bare else part, kind, display))
    return (*readings, last)


def _settle(
    text: str, parsed: Parsed, kind: Kind, display: Display, other_kinds: tuple[Kind, ...], unit_wanted: bool
) -> tuple[Kind, str]:
    """The kind and unit of a number: those typed, or those that go without saying."""
    if parsed.kind is None:
        _refuse_if_unit_is_needed(text, parsed, kind, display, unit_wanted)
        return kind, display.unit(kind)
    if parsed.kind is kind or parsed.kind in other_kinds:
        return parsed.kind, parsed.unit
    raise UnitError(
        f"{tidy(text)!r} is given as {_KINDS[parsed.kind]}; {_KINDS[kind]} is wanted, such as {example(kind)}."
    )


def _refuse_if_unit_is_needed(
    text: str, parsed: Parsed, kind: Kind, display: Display, unit_wanted: bool
) -> None:
    unitless = kind in {Kind.COUNT, Kind.RATIO, Kind.PERCENT, Kind.PER_LENGTH}
    if unit_wanted and not unitless and parsed.number != 0:
        raise UnitError(f"{tidy(text)!r} has no unit; write it as {example(kind)}.")
    if parsed.fraction and kind is Kind.LENGTH and display.lengths == "mm":
        raise UnitError(
            f"{tidy(text)!r} is a fraction without a unit; write {tidy(text)} in if it is inches."
        )


def _half_width(text: str, kind: Kind, unit: str, display: Display) -> float:
    parsed = parse(text, kind)
    if unit == "D":
        raise UnitError("A share of the diameter takes no +/-.")
    if parsed.kind is not None and parsed.kind is not kind:
        raise UnitError(
            f"{tidy(text)!r} after +/- is given as {_KINDS[parsed.kind]}; {_KINDS[kind]} is wanted there."
        )
    if parsed.number < 0:
        raise UnitError("What stands after +/- is how far off it may be, so it is not below zero.")
    return to_geometry(parsed.number, kind, parsed.unit or unit or display.unit(kind))


_KINDS = {
    Kind.LENGTH: "a length",
    Kind.AREA: "an area",
    Kind.ANGLE: "an angle",
    Kind.SPEED: "a surface speed",
    Kind.ROTATION: "a rotational speed",
    Kind.COUNT: "a count",
    Kind.RATIO: "a ratio",
    Kind.PERCENT: "a percentage",
    Kind.PER_LENGTH: "threads per inch",
    Kind.CHOICE: "a word",
}
