"""What a text for a measure means, found a second way: sign by sign, in exact fractions, with no pattern and no table of
the library. It is written from what the README promises a person, and shares nothing with the code under test.

A text is one number with its unit, a list of them, and each may have ``+/-`` behind it. Every answer is a ``Fraction``:
of a millimetre, of a degree, of a square millimetre, of mm/s, of a turn a minute, of threads per inch, or a bare number.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

DIGITS = "0123456789"

INCH = Fraction(127, 5)  # 25.4 mm, the international inch of 1959.
UNITS: dict[str, dict[str, Fraction]] = {
    "length": {
        "mm": Fraction(1), "cm": Fraction(10), "um": Fraction(1, 1000), "in": INCH, "inch": INCH, '"': INCH,
        "thou": INCH / 1000, "tenths": INCH / 10000,
    },
    "angle": {
        "deg": Fraction(1), "\u00b0": Fraction(1), "min": Fraction(1, 60), "'": Fraction(1, 60),
        "sec": Fraction(1, 3600), '"': Fraction(1, 3600),
    },
    "area": {"mm2": Fraction(1), "in2": INCH * INCH},
    "speed": {
        "m/s": Fraction(1000), "mm/s": Fraction(1), "m/min": Fraction(1000, 60), "ft/min": 12 * INCH / 60,
    },
    "rotation": {"rpm": Fraction(1)},
    "threads": {"tpi": Fraction(1), "per mm": INCH},
    "count": {},
    "ratio": {"%": Fraction(1, 100)},
    "percent": {"%": Fraction(1)},
}  # fmt: skip
WORKED_IN = {
    "length": {"mm": "mm", "in": "in"},
    "area": {"mm": "mm2", "in": "in2"},
    "speed": {"mm": "m/s", "in": "ft/min"},
}
ALWAYS_IN = {"angle": "deg", "rotation": "rpm", "threads": "tpi", "percent": "%"}
FINE = {"thou", "tenths", "um", "min", "'", "sec"}
"""Units so small that behind the +/- alone they may be meant for it alone."""


class Unclear(Exception):
    """The text means nothing, or two things."""


@dataclass(frozen=True)
class Meaning:
    """What one number of a text means."""

    number: Fraction
    half_width: Fraction | None = None


@dataclass(frozen=True)
class _One:
    number: Fraction
    unit: str
    as_fraction: bool = False
    is_pair: bool = False
    is_odd: bool = False


def meaning(text: str, kind: str, worked_in: str, *, many: bool = False) -> tuple[Meaning, ...]:
    """What a text means.

    Args:
        text: as typed.
        kind: a key of ``UNITS``.
        worked_in: ``mm`` or ``in``.
        many: whether a list may stand there.
    """
    if not many:
        return (_measure(text, kind, worked_in, ""),)
    for place in range(1, len(text) - 1):
        between = text[place] == "," and text[place - 1] in DIGITS and text[place + 1] in DIGITS
        if between and kind != "count":
            raise Unclear("6,5 is one number to some and two to others")
    parts = [part for part in text.replace(";", ",").split(",") if part.strip()]
    if not parts:
        raise Unclear("nothing is written there")
    if len(parts) == 1 and kind == "length" and _is_half_a_millimetre(parts[0]):
        raise Unclear("8/12 mm is a fraction to some and two diameters to others")
    last_unit = _unit_of(parts[-1], kind)
    return tuple(_measure(part, kind, worked_in, last_unit) for part in parts)


def _is_half_a_millimetre(text: str) -> bool:
    """Whether it is one whole number over another, in mm."""
    plain = text.strip()
    over = [one.strip() for one in plain[:-2].split("/")]
    return (
        plain[-2:].lower() == "mm"
        and len(over) == 2
        and all(one.isdigit() for one in over)
        and int(over[1]) > 0
    )


def _halves(text: str) -> list[str]:
    for sign in ("\u00b1", "+-"):
        text = text.replace(sign, "+/-")
    halves = text.split("+/-")
    if len(halves) > 2:
        raise Unclear("+/- twice")
    return halves


def _unit_of(text: str, kind: str) -> str:
    """The unit that governs a number: its own, else that behind its +/- where it can only be meant for both."""
    main, *spread = (_number(half, kind) for half in _halves(text))
    if main.unit or not spread:
        return main.unit
    return spread[0].unit


def _measure(text: str, kind: str, worked_in: str, last_unit: str) -> Meaning:
    main, *spread = (_number(half, kind) for half in _halves(text))
    if spread and kind == "count":
        raise Unclear("what is counted has no +/-")
    own = WORKED_IN[kind][worked_in] if kind in WORKED_IN else ALWAYS_IN.get(kind, "")
    unit = main.unit
    if not unit and spread and spread[0].unit:
        unit = spread[0].unit
        if unit in FINE or (kind, unit) in {("ratio", "%"), ("angle", '"')}:
            raise Unclear("the unit behind +/- may be meant for both or for one")
    if (
        not unit
        and last_unit
        and not main.is_pair
        and not (main.as_fraction and kind == "length" and last_unit not in {"in", "inch", '"'})
    ):
        unit = last_unit
    if not unit and main.as_fraction and kind == "length" and own == "mm":
        raise Unclear("a fraction of what?")
    unit = unit or own
    if main.is_odd and unit in {"mm", "cm", "um"}:
        raise Unclear("nobody measures such a part of a millimetre")
    worth = UNITS[kind].get(unit, Fraction(1))
    if not spread:
        return Meaning(main.number * worth)
    if spread[0].number < 0:
        raise Unclear("less than nothing off")
    of_spread = UNITS[kind].get(spread[0].unit or unit, Fraction(1))
    return Meaning(main.number * worth, spread[0].number * of_spread)


def _number(text: str, kind: str) -> _One:
    """One number with its unit, nothing before, between or behind."""
    rest = _Rest(" ".join(text.split()))
    if kind == "ratio" and rest.has(":"):
        return _pair(rest)
    sign = -1 if rest.take("-") else 1
    if sign == 1:
        rest.take("+")
    rest.blank()
    whole = rest.digits()
    if rest.take("/"):
        below = rest.digits()
        over = _with_unit(rest, kind, sign * _over(whole, below), as_fraction=True)
        return replace(over, is_odd=_is_odd(whole, below))
    if whole and (rest.left[:1] in {" ", "-"}) and (mixed := rest.mixed()):
        return _with_unit(rest, kind, sign * (Fraction(int(whole)) + mixed), as_fraction=True)
    if kind == "angle" and whole and (found := _sexagesimal(rest, int(whole))) is not None:
        return _One(sign * found, "deg")
    decimals = rest.digits() if rest.take(".") else ""
    if not whole and not decimals:
        raise Unclear("no number")
    number = Fraction(int(whole or "0")) + (Fraction(int(decimals), 10 ** len(decimals)) if decimals else 0)
    return _with_unit(rest, kind, sign * number * rest.power_of_ten(), as_fraction=False)


def _over(above: str, below: str) -> Fraction:
    if not above or not below or int(below) == 0:
        raise Unclear("no fraction")
    return Fraction(int(above), int(below))


def _is_odd(above: str, below: str) -> bool:
    """Whether a fraction is neither a half, a quarter and so on in lowest terms nor in hundredths."""
    is_halves = int(below) in {2, 4, 8, 16, 32, 64} and int(above) % 2 == 1
    return int(above) >= int(below) or not (is_halves or int(below) in {100, 1000})


def _with_unit(rest: _Rest, kind: str, number: Fraction, *, as_fraction: bool) -> _One:
    unit = rest.left.strip()
    if rest.left[:1] in {".", *DIGITS} or (unit and unit not in UNITS[kind]):
        raise Unclear(f"no unit {unit!r}")
    return _One(number, unit, as_fraction)


def _pair(rest: _Rest) -> _One:
    one, other = (part.strip() for part in rest.left.split(":", 1))
    numbers = []
    for part in (one, other):
        before, _, behind = part.partition(".")
        if not (before + behind) or any(sign not in DIGITS for sign in before + behind):
            raise Unclear("no ratio")
        numbers.append(
            Fraction(int(before or "0")) + (Fraction(int(behind), 10 ** len(behind)) if behind else 0)
        )
    if numbers[1] == 0:
        raise Unclear("no ratio")
    return _One(numbers[0] / numbers[1], "", is_pair=True)


def _sexagesimal(rest: _Rest, degrees: int) -> Fraction | None:
    """Degrees with minutes, with seconds or with both; nothing where only degrees, or another unit, stand there."""
    if not rest.after_unit(("deg", "\u00b0")):
        return None
    first = rest.plain_number()
    if first is None:
        raise Unclear("no minutes")
    if rest.after_unit(("sec", '"')):
        minutes, seconds = Fraction(0), first
    else:
        is_parted = rest.after_unit(("min", "'")) or rest.left[:1] == " "
        rest.blank()
        second = rest.plain_number() if is_parted else None
        minutes, seconds = first, Fraction(0) if second is None else second
        if second is not None:
            rest.after_unit(("sec", '"'))
    if rest.left.strip() or minutes >= 60 or seconds >= 60:
        raise Unclear("no minutes and seconds")
    return degrees + minutes / 60 + seconds / 3600


class _Rest:
    """What is left to read of a text."""

    def __init__(self, left: str) -> None:
        self.left = left

    def has(self, sign: str) -> bool:
        return sign in self.left

    def take(self, sign: str) -> bool:
        if not self.left.startswith(sign):
            return False
        self.left = self.left[len(sign) :]
        return True

    def blank(self) -> None:
        self.left = self.left.removeprefix(" ")

    def digits(self) -> str:
        found = ""
        while self.left[:1] and self.left[0] in DIGITS:
            found, self.left = found + self.left[0], self.left[1:]
        return found

    def mixed(self) -> Fraction | None:
        """The fraction of ``1-1/2`` and ``1 1/2``, or nothing and nothing is taken."""
        kept = self.left
        self.left = self.left[1:]
        above = self.digits()
        if above and self.take("/"):
            below = self.digits()
            if below:
                return _over(above, below)
        self.left = kept
        return None

    def power_of_ten(self) -> Fraction:
        kept = self.left
        if self.left[:1] in {"e", "E"}:
            self.left = self.left[1:]
            down = self.take("-")
            if not down:
                self.take("+")
            power = self.digits()
            if 1 <= len(power) <= 2:
                return Fraction(10) ** (-int(power) if down else int(power))
        self.left = kept
        return Fraction(1)

    def after_unit(self, names: tuple[str, ...]) -> bool:
        """Take one of some units, if something still stands behind it or nothing at all does."""
        kept = self.left
        self.blank()
        for name in names:
            if self.take(name):
                if name in {"deg", "\u00b0"}:
                    if not self.left.strip():
                        break
                    self.blank()
                return True
        self.left = kept
        return False

    def plain_number(self) -> Fraction | None:
        kept = self.left
        whole = self.digits()
        if not whole:
            return None
        if self.take("."):
            decimals = self.digits()
            if not decimals:
                self.left = kept
                return None
            return Fraction(int(whole)) + Fraction(int(decimals), 10 ** len(decimals))
        return Fraction(int(whole))
