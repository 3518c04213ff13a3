"""Parse what a person typed into the number that geometry computes with."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from geometry.sentences import Kind
from library.units.convert import to_geometry
from library.units.grammar import LISTED, REMEMBERED, Parsed, UnitError, example, parse, tidy
from library.units.slashes import bare_fraction, no_fraction_of, slashed_steps
from library.units.system import INCH, METRIC, Display

__all__ = ["Reading", "UnitError", "in_other_unit", "in_unit", "read", "read_many", "with_units"]

_PLUS_MINUS = re.compile(r"\+/-|\u00b1|\+-")
_SEPARATORS = re.compile(r"[;,]")
_FIGURE = re.compile(r"[0-9]")
_DECIMAL_COMMA = re.compile(r"(?<=[0-9]),(?=[0-9])")
_LAST_DECIMAL = re.compile(r"(?<![0-9.])[0-9]+,[0-9]+(?![0-9.,])")
FINE = frozenset({"thou", "tenths", "um", "min", "sec"})
"""Units so small that behind the ``+/-`` alone they may be meant for it alone, or for the number too."""


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
    whole: bool = False,
) -> Reading:
    """Read a number, with a unit or in the unit that is being worked in, and perhaps ``+/-`` another.

    Args:
        text: what was typed.
        kind: what is wanted.
        display: gives the unit of a number without one.
        other_kinds: kinds that are taken too, when a unit of that kind is written.
        of_diameter: whether a share of the diameter is allowed.
        unit_wanted: true in files and records, where a length without a unit is not taken.
        whole: true for what is counted, which has no ``+/-``.

    Returns:
        The reading.

    Raises:
        UnitError: with a sentence for the person who typed it.

    Example:
        >>> read("200 thou", Kind.LENGTH).number
        5.08
        >>> read("3.2 mm +/- 0.05", Kind.LENGTH).half_width
        0.05
        >>> read("0.5 +/- 0.005 in", Kind.LENGTH).number
        12.7
    """
    reads = _remembered if len(text) <= REMEMBERED else _read
    found = reads(text, kind, display, other_kinds, of_diameter, unit_wanted, whole)
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
    whole: bool,
) -> Reading | UnitError:
    try:
        return _reading(text, kind, display, other_kinds, of_diameter, unit_wanted, whole)
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
    whole: bool,
) -> Reading:
    main, *spread = _PLUS_MINUS.split(text)
    if len(spread) > 1:
        raise UnitError(f"{tidy(text)!r} has more than one +/-.")
    if spread and not main.strip():
        raise UnitError(f"{tidy(text)!r} has no number before its +/-; give one, such as {example(kind)}.")
    if whole and _DECIMAL_COMMA.search(main) and not LISTED.match(tidy(main)):
        raise UnitError(
            f"{tidy(text)!r} has a comma; what is counted is one whole number, such as {example(kind)}."
        )
    parsed = parse(main, kind, of_diameter=of_diameter)
    if spread and not spread[0].strip():
        raise UnitError(f"{tidy(text)!r} has no number behind its +/-; give one, or take the +/- away.")
    # What has a unit is no count at all, which is told first.
    if spread and whole and not parsed.unit:
        raise UnitError(f"{tidy(text)!r} has a +/-; what is counted has none, so write {tidy(main)}.")
    off = parse(spread[0], kind) if spread else None
    if off is not None:
        parsed = _in_the_unit_behind(text, parsed, off, display.unit(kind))
    found, unit = _settle(text, parsed, kind, display, other_kinds, unit_wanted)
    if parsed.fraction and (wrong := no_fraction_of(tidy(main), unit, float(parsed.number))):
        raise UnitError(wrong)
    share = parsed.unit == "D"
    number = float(parsed.number) if share else to_geometry(parsed.number, found, unit)
    half_width = _half_width(spread[0], off, found, unit) if off is not None else None
    return Reading(text, number, found, unit, half_width, share)


def _in_the_unit_behind(text: str, parsed: Parsed, off: Parsed, usual: str) -> Parsed:
    """A number without a unit in the unit behind its ``+/-``; asked about where that may be meant for the latter alone."""
    if parsed.unit or not off.unit:
        return parsed
    if off.unit == "%" != usual:
        raise UnitError(
            f"{tidy(text)!r} has a % only behind +/-; write it behind both numbers, or behind none."
        )
    if off.unit in FINE:
        main, _, spread = (part.strip() for part in _PLUS_MINUS.sub("\n", tidy(text)).partition("\n"))
        raise UnitError(
            f"{tidy(text)!r} has a unit only behind +/-; write {main} {off.unit} +/- {spread}, or {main} {usual} +/- "
            f"{spread}."
        )
    return replace(parsed, kind=off.kind, unit=off.unit)


def read_many(
    text: str, kind: Kind, display: Display = METRIC, *, whole: bool = False
) -> tuple[Reading, ...]:
    """Read several numbers, parted by commas or semicolons; a unit after the last serves all before it.

    A comma between two figures may be a decimal comma, and is asked about; only what is counted has no decimals. So is
    a fraction of a millimetre that stands alone, which may be two numbers.

    Example:
        >>> [one.number for one in read_many("6, 8, 10 mm", Kind.LENGTH)]
        [6.0, 8.0, 10.0]
    """
    if kind is not Kind.COUNT and _DECIMAL_COMMA.search(text):
        plain = tidy(text)
        for part in _SEPARATORS.split(_DECIMAL_COMMA.sub(", ", plain)):
            if part.strip() and not _FIGURE.search(part):
                # No way to write the others makes a number of this one.
                read(part, kind, display, whole=whole)
        if LISTED.search(plain):
            raise UnitError(
                f"{plain!r} has commas without a blank; write {_DECIMAL_COMMA.sub(', ', plain)} for several numbers, and a "
                f"decimal with a point{_last_as_decimal(plain)}."
            )
        raise UnitError(
            f"{plain!r} has a comma; write {_DECIMAL_COMMA.sub('.', plain)} with a point for a "
            f"decimal, or {_DECIMAL_COMMA.sub(', ', plain)} with a blank for several numbers."
        )
    parts = [part for part in (one.strip() for one in _SEPARATORS.split(text)) if part]
    if not parts:
        raise UnitError(f"Nothing is written there; give numbers such as {example(kind)}, parted by commas.")
    if kind is Kind.LENGTH and (wrong := slashed_steps(parts, in_mm=display.lengths == "mm")):
        raise UnitError(wrong)
    last = read(parts[-1], kind, display, whole=whole)
    before = (read(in_unit(part, last.unit, kind), kind, display, whole=whole) for part in parts[:-1])
    return (*before, last)


def _last_as_decimal(plain: str) -> str:
    """How several numbers are written of which the last has a decimal, for which its comma may stand.

    Example:
        >>> _last_as_decimal("26,26,25,5 thou"), _last_as_decimal("1.5,1.6 mm")
        (', such as 26, 26, 25.5 thou', '')
    """
    if (last := _LAST_DECIMAL.search(plain)) is None:
        return ""
    dotted = f"{plain[: last.start()]}{last[0].replace(',', '.')}{plain[last.end() :]}"
    return f", such as {_DECIMAL_COMMA.sub(', ', dotted)}"


def with_units(text: str, kind: Kind, display: Display) -> str:
    """What was typed with the unit that it goes by behind every number without one, so that it means the same for ever.

    Args:
        text: a number or several, as typed.
        kind: what it is.
        display: the units that it was typed in.

    Returns:
        The text; as it is where it cannot be read, such as the name of a thread.

    Example:
        >>> with_units("3.2, 25 +/- 0.1", Kind.LENGTH, METRIC), with_units("1/4, 8 mm", Kind.LENGTH, Display("in"))
        ('3.2, 25 mm +/- 0.1', '1/4 in, 8 mm')
    """
    meant = _meant(text, kind, display)
    named = _named(text, kind, display) if meant else ()
    return next((one for one in named if all(_meant(one, kind, any_) == meant for any_ in _BOTH)), text)


_BOTH = (METRIC, INCH)


def _named(text: str, kind: Kind, display: Display) -> Iterator[str]:
    """The text with a unit behind its last number, then with one behind each."""
    # The blanks stay with the commas: two figures with nothing but a comma between them are a decimal to some.
    parts = re.split(r"(\s*[;,]\s*)", text.strip())
    numbers = [place for place, part in enumerate(parts) if part.strip(" ;,\t")]
    units = [one.unit for one in read_many(text, kind, display)]
    for last in (numbers[-1:], numbers):
        yield "".join(in_unit(part, units[numbers.index(place)], kind) if place in last else part
                      for place, part in enumerate(parts))  # fmt: skip


def in_other_unit(text: str, kind: Kind, old: Display, new: Display) -> str:
    """A text with its unit where it would mean something else without one in the new units; else as it is.

    Args:
        text: as it was typed.
        kind: what it is.
        old: the units in which it was typed.
        new: the units from now on.

    Example:
        >>> in_other_unit("0.5 +/- 0.01", Kind.LENGTH, METRIC, Display("in")), in_other_unit("8", Kind.ANGLE, METRIC, METRIC)
        ('0.5 mm +/- 0.01', '8')
    """
    if old.unit(kind) == new.unit(kind) or _meant(text, kind, old) == _meant(text, kind, new):
        return text
    return with_units(text, kind, old)


def _meant(text: str, kind: Kind, display: Display) -> tuple[tuple[float, float | None], ...]:
    try:
        return tuple((one.number, one.half_width) for one in read_many(text, kind, display))
    except UnitError:
        return ()


def in_unit(text: str, unit: str, kind: Kind) -> str:
    """One number, perhaps with ``+/-``, with a unit behind it where it has none of its own.

    Args:
        text: as typed.
        unit: to give it; with none it stays as it is.
        kind: what it is.

    Raises:
        UnitError: where it cannot be read.

    Example:
        >>> in_unit("3.2 +/- 0.05", "mm", Kind.LENGTH), in_unit("1/4", "mm", Kind.LENGTH)
        ('3.2 mm +/- 0.05', '1/4')
    """
    main, *spread = _PLUS_MINUS.split(text.strip(), maxsplit=1)
    parsed = parse(main, kind)
    own = parsed.unit or (spread and parse(spread[0], kind).unit)
    # Whoever writes a fraction of a length means inches; 1:16 is a whole ratio as it stands.
    if own or not unit or ":" in main or (parsed.fraction and kind is Kind.LENGTH and unit != "in"):
        return text
    return f"{main.rstrip()} {unit}" + (f" +/- {spread[0].strip()}" if spread else "")


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
        plain = tidy(text)
        raise UnitError(
            bare_fraction(plain)
            or f"{plain!r} is a fraction without a unit; write {plain} in if it is inches."
        )


def _half_width(text: str, parsed: Parsed, kind: Kind, unit: str) -> float:
    if unit == "D":
        raise UnitError("A share of the diameter takes no +/-.")
    if parsed.kind is not None and parsed.kind is not kind:
        raise UnitError(
            f"{tidy(text)!r} after +/- is given as {_KINDS[parsed.kind]}; {_KINDS[kind]} is wanted there."
        )
    if parsed.number < 0:
        raise UnitError("What stands after +/- is how far off it may be, so it is not below zero.")
    return to_geometry(parsed.number, kind, parsed.unit or unit)


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
