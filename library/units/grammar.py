"""The one grammar of numbers with units: what may be typed, and nothing else.

``number [unit]``, where a number is ``12``, ``.5``, ``1/2``, ``1-1/2`` or ``1 1/2``; an angle may also be
``3 deg 30 min``, and a taper ``1/4 in per foot``. Arithmetic, words and other units are refused with a sentence.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from difflib import get_close_matches
from fractions import Fraction
from functools import lru_cache

from geometry.sentences import Kind
from library.units import tapers

LONGEST = 40
"""Characters that a number may have; nobody measures a longer one."""

LONGEST_UNIT = 24
"""Characters that its unit may have besides, so that a number of any length can be given its unit."""

SPELLINGS: dict[str, tuple[Kind, str]] = {
    "mm": (Kind.LENGTH, "mm"),
    "millimetre": (Kind.LENGTH, "mm"),
    "millimetres": (Kind.LENGTH, "mm"),
    "millimeter": (Kind.LENGTH, "mm"),
    "millimeters": (Kind.LENGTH, "mm"),
    "cm": (Kind.LENGTH, "cm"),
    "um": (Kind.LENGTH, "um"),
    "\u00b5m": (Kind.LENGTH, "um"),
    "\u03bcm": (Kind.LENGTH, "um"),
    "micron": (Kind.LENGTH, "um"),
    "microns": (Kind.LENGTH, "um"),
    "in": (Kind.LENGTH, "in"),
    "in.": (Kind.LENGTH, "in"),
    "inch": (Kind.LENGTH, "in"),
    "inches": (Kind.LENGTH, "in"),
    "thou": (Kind.LENGTH, "thou"),
    "thous": (Kind.LENGTH, "thou"),
    "tenth": (Kind.LENGTH, "tenths"),
    "tenths": (Kind.LENGTH, "tenths"),
    "mm2": (Kind.AREA, "mm2"),
    "in2": (Kind.AREA, "in2"),
    "deg": (Kind.ANGLE, "deg"),
    "degree": (Kind.ANGLE, "deg"),
    "degrees": (Kind.ANGLE, "deg"),
    "\u00b0": (Kind.ANGLE, "deg"),
    "min": (Kind.ANGLE, "min"),
    "arcmin": (Kind.ANGLE, "min"),
    "sec": (Kind.ANGLE, "sec"),
    "arcsec": (Kind.ANGLE, "sec"),
    "rad": (Kind.ANGLE, "rad"),
    "m/s": (Kind.SPEED, "m/s"),
    "mm/s": (Kind.SPEED, "mm/s"),
    "m/min": (Kind.SPEED, "m/min"),
    "ft/min": (Kind.SPEED, "ft/min"),
    "fpm": (Kind.SPEED, "ft/min"),
    "sfm": (Kind.SPEED, "ft/min"),
    "sfpm": (Kind.SPEED, "ft/min"),
    "rpm": (Kind.ROTATION, "rpm"),
    "rev/min": (Kind.ROTATION, "rpm"),
    "r/min": (Kind.ROTATION, "rpm"),
    "1/min": (Kind.ROTATION, "rpm"),
    "tpi": (Kind.PER_LENGTH, "tpi"),
    "/in": (Kind.PER_LENGTH, "tpi"),
    "1/in": (Kind.PER_LENGTH, "tpi"),
    "per inch": (Kind.PER_LENGTH, "tpi"),
    "threads per inch": (Kind.PER_LENGTH, "tpi"),
    "per mm": (Kind.PER_LENGTH, "per mm"),
    "%": (Kind.PERCENT, "%"),
    "percent": (Kind.PERCENT, "%"),
}
"""Every way to write a unit, small letters; a mark such as ' or a double prime depends on the kind."""

MARKS = {
    (Kind.LENGTH, '"'): "in",
    (Kind.ANGLE, "'"): "min",
    (Kind.ANGLE, '"'): "sec",
}

_FRACTIONS = {
    "\u00bd": "1/2",
    "\u00bc": "1/4",
    "\u00be": "3/4",
    "\u215b": "1/8",
    "\u215c": "3/8",
    "\u215d": "5/8",
    "\u215e": "7/8",
}
"""Fractions that are one sign, as a text that is pasted may have them."""

_SAME_SIGN = str.maketrans(
    {
        "\u2212": "-",
        "\u2033": '"',
        "\u201d": '"',
        "\u201c": '"',
        "\u2032": "'",
        "\u2019": "'",
        "\u00a0": " ",
        "\u2044": "/",
        **{sign: f" {part}" for sign, part in _FRACTIONS.items()},
    }
)
_UNSIGNED = (
    r"(?:[0-9]+(?: +|-)[0-9]+/[0-9]+|[0-9]+/[0-9]+|(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][-+]?[0-9]{1,2})?)"
)
_POINTS = re.compile(r"[-+]?[0-9]*\.[0-9]*\.")
"""A number with a second decimal point in it."""

_NUMBER = re.compile(rf"(?P<sign>[-+]?) ?(?P<number>{_UNSIGNED})(?![0-9.])")
_MIXED = re.compile(r"(?P<whole>[0-9]+)(?: +|-)(?P<part>[0-9]+/[0-9]+)")
_RATIO = re.compile(r"(?P<first>[0-9.]+) ?: ?(?P<second>[0-9.]+)")
_SIXTIETHS = r"[0-9]+(?:\.[0-9]+)?"
_SECONDS_SIGN = r"(?:\"|sec|arcsec|s)"
_SEXAGESIMAL = re.compile(
    r"(?P<sign>[-+]?) ?(?P<deg>[0-9]+) ?(?:deg|degrees?|\u00b0|d) ?"
    rf"(?:(?P<only_sec>{_SIXTIETHS}) ?{_SECONDS_SIGN}"
    rf"|(?P<min>{_SIXTIETHS})(?: ?(?:'|min|arcmin|m))?"
    # Seconds stand apart from the minutes, so that 45 is never taken as 4 minutes and 5 seconds.
    rf"(?:(?:(?<=[^0-9]) ?| )(?P<sec>{_SIXTIETHS}) ?{_SECONDS_SIGN}?)?)"
)
_COMMA = re.compile(r"[0-9],[0-9]")
_TO_ANOTHER = re.compile(r"(?P<to>to|-|\u2013) ?[0-9.]+ ?(?P<unit>[^0-9./-].*)?")
"""What stands behind the first end of a range; two numbers with a hyphen and no unit may be the name of a thread."""

LISTED = re.compile(r"[0-9.]+(?:,[0-9.]+){2,}|[0-9]*\.[0-9]+,[0-9.]+|[0-9]+,[0-9]*\.[0-9]+")
"""Numbers with bare commas between them: with more than one comma, or a point besides, it is no decimal."""


class UnitError(ValueError):
    """A number or unit that cannot be read; the message is a sentence for the person who typed it."""


@dataclass(frozen=True)
class Parsed:
    """A number as typed, exact, with its unit.

    Attributes:
        number: the number in that unit.
        kind: the kind of the unit; nothing when none was typed.
        unit: the unit as Heelclear writes it; empty when none was typed; ``D`` for a share of the diameter.
        fraction: true when it was typed as a fraction or a mixed number.
    """

    number: Fraction
    kind: Kind | None
    unit: str
    fraction: bool = False


REMEMBERED = 80
"""The longest text that is kept once it was read."""


def tidy(text: str) -> str:
    """The text with look-alike signs made plain and spaces folded.

    Example:
        >>> tidy("  3/8\u2033 ")
        '3/8"'
    """
    return " ".join(text.translate(_SAME_SIGN).split())


def parse(text: str, kind: Kind, *, of_diameter: bool = False) -> Parsed:
    """Read one number with its unit.

    Args:
        text: what was typed.
        kind: what is wanted there; it decides what a mark such as ``"`` means.
        of_diameter: whether ``0.25 D`` is allowed, as in a book.

    Returns:
        The exact number and its unit, which may be of another kind than wanted.

    Raises:
        UnitError: with a sentence that says what would be accepted.

    Example:
        >>> parse("1-1/2 in", Kind.LENGTH)
        Parsed(number=Fraction(3, 2), kind=<Kind.LENGTH: 'length'>, unit='in', fraction=True)
    """
    found = (
        _remembered(text, kind, of_diameter) if len(text) <= REMEMBERED else _parsed(text, kind, of_diameter)
    )
    if isinstance(found, UnitError):
        raise found.with_traceback(None)
    return found


def _parsed(text: str, kind: Kind, of_diameter: bool) -> Parsed | UnitError:
    try:
        return _parse(text, kind, of_diameter=of_diameter)
    except UnitError as error:
        return error


_remembered = lru_cache(maxsize=4096)(_parsed)
"""The same text is read again at each key, by every calculation of a card; a short one is read once."""


def _parse(text: str, kind: Kind, *, of_diameter: bool) -> Parsed:
    plain = tidy(text)
    _refuse_the_hopeless(text, plain, kind)
    if kind is Kind.ANGLE and (found := _SEXAGESIMAL.fullmatch(plain.lower())):
        return _sexagesimal(found)
    if kind is Kind.RATIO and (pair := _RATIO.fullmatch(plain) or tapers.IN.fullmatch(plain.lower())):
        return _ratio(text, pair)
    start = _NUMBER.match(plain)
    if start is None and _POINTS.match(plain):
        raise UnitError(
            f"{text.strip()!r} has more than one decimal point; a number has one at most, such as {_EXAMPLES[kind]}."
        )
    if start is None:
        raise UnitError(f"{text.strip()!r} does not begin with a number, such as {_EXAMPLES[kind]}.")
    number = _number(text, start["number"], kind)
    unit_text = plain[start.end() :].strip()
    signed = -number if start["sign"] == "-" else number
    fraction = "/" in start["number"]
    if not unit_text:
        return Parsed(signed, None, "", fraction)
    if kind is Kind.RATIO and (of_taper := tapers.unit_of(unit_text.lower())):
        return Parsed(signed, kind, of_taper)
    if of_diameter and kind is Kind.LENGTH and unit_text in {"D", "d"}:
        return Parsed(signed, Kind.LENGTH, "D", fraction)
    unit_kind, unit = _unit(text, unit_text, kind)
    if unit_kind is Kind.PERCENT and kind is not Kind.PERCENT:
        unit_kind = Kind.RATIO
    return Parsed(signed, unit_kind, unit, fraction)


_EXAMPLES = {
    Kind.LENGTH: "3.2 mm, 1/8 in or 40 thou",
    Kind.AREA: "0.5 mm2",
    Kind.ANGLE: "8 deg or 3 deg 30 min",
    Kind.SPEED: "30 m/s or 6000 ft/min",
    Kind.ROTATION: "3000 rpm",
    Kind.COUNT: "4",
    Kind.RATIO: "1:48 or 1/4 in per foot",
    Kind.PERCENT: "75 or 75 %",
    Kind.PER_LENGTH: "10 tpi",
    Kind.CHOICE: "a word",
}


def example(kind: Kind) -> str:
    """What may be typed for a kind, as an example inside a sentence."""
    return _EXAMPLES[kind]


def _is_to_another(behind: str) -> bool:
    """Whether behind a number stands the other end of a range."""
    found = _TO_ANOTHER.fullmatch(behind)
    return found is not None and (found["to"] == "to" or found["unit"] in SPELLINGS)


def _a_list(text: str, kind: Kind) -> str:
    return f"{text.strip()!r} is a list; one value is wanted here, such as {example(kind)}."


def _refuse_the_hopeless(text: str, plain: str, kind: Kind) -> None:
    if not plain:
        raise UnitError("Nothing is written there; give a number.")
    if len(plain) > LONGEST + LONGEST_UNIT:
        raise UnitError(_too_long(plain))
    if LISTED.match(plain):
        raise UnitError(_a_list(text, kind))
    if _COMMA.search(plain):
        raise UnitError(
            f"{text.strip()!r} has a comma; write the decimal with a point: {plain.replace(',', '.')}."
        )


def _too_long(digits: str) -> str:
    return f"That is {len(digits)} characters long; a number has {LONGEST} at most."


def _number(text: str, digits: str, kind: Kind) -> Fraction:
    if len(digits) > LONGEST:
        raise UnitError(_too_long(digits))
    mixed = _MIXED.fullmatch(digits)
    try:
        return (
            Fraction(int(mixed["whole"])) + Fraction(mixed["part"]) if mixed else Fraction(digits.rstrip("."))
        )
    except ZeroDivisionError:
        raise UnitError(
            f"{text.strip()!r} has a zero under its line, which is no number; write one such as {example(kind)}."
        ) from None


def _sexagesimal(found: re.Match[str]) -> Parsed:
    minutes, seconds = Fraction(found["min"] or 0), Fraction(found["sec"] or found["only_sec"] or 0)
    if minutes >= 60 or seconds >= 60:
        raise UnitError("Minutes and seconds of an angle stay under 60.")
    degrees = int(found["deg"]) + minutes / 60 + seconds / 3600
    return Parsed(-degrees if found["sign"] == "-" else degrees, Kind.ANGLE, "deg")


def _ratio(text: str, pair: re.Match[str]) -> Parsed:
    try:
        return Parsed(Fraction(pair["first"]) / Fraction(pair["second"]), Kind.RATIO, "")
    except (ZeroDivisionError, ValueError):
        raise UnitError(f"{text.strip()!r} is not a ratio; write it as {example(Kind.RATIO)}.") from None


def _unit(text: str, unit_text: str, kind: Kind) -> tuple[Kind, str]:
    lower = unit_text.lower()
    if (kind, unit_text) in MARKS:
        return kind, MARKS[kind, unit_text]
    if lower in SPELLINGS:
        return SPELLINGS[lower]
    if lower in {"mil", "mils"}:
        raise UnitError(
            f"{text.strip()!r}: 'mil' means a thou to some and a millimetre to others; write thou or mm."
        )
    if unit_text[0] in ",;":
        raise UnitError(_a_list(text, kind))
    if _is_to_another(lower):
        raise UnitError(f"{text.strip()!r} is a range; one value is wanted here, such as {example(kind)}.")
    if unit_text[0] in "/-+." or unit_text[0].isdigit():
        raise UnitError(f"{text.strip()!r} is no number; write one such as {example(kind)}.")
    if kind is Kind.COUNT:
        raise UnitError(f"{text.strip()!r} has a unit; what is counted has none, such as {example(kind)}.")
    near = get_close_matches(lower, SPELLINGS, n=1, cutoff=0.6)
    hint = f" Did you mean {near[0]}?" if near else ""
    raise UnitError(f"{text.strip()!r} has a unit that is not known here; write it as {example(kind)}.{hint}")
