"""Sentences with amounts in them as numbers, so that geometry words a message and the library chooses its units.

A check says "The heel stands 0.055 mm proud". Geometry knows the length and that it is one, but not
whether the person at the bench works in millimetres or thou. So it hands over a template and the
amounts, and ``library.units`` writes the sentence.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from enum import StrEnum


class Kind(StrEnum):
    """What sort of thing a number measures; it decides which units a person may type."""

    LENGTH = "length"
    ANGLE = "angle"
    AREA = "area"
    SPEED = "speed"
    ROTATION = "rotation"
    COUNT = "count"
    RATIO = "ratio"
    PERCENT = "percent"
    PER_LENGTH = "per length"
    CHOICE = "choice"


class Rounding(StrEnum):
    """Which way an amount may be rounded when it is shown.

    A limit is rounded to the safe side: a land that may be 1.6755 wide is shown as 1.67, not 1.68.
    """

    NEAREST = "nearest"
    DOWN = "down"
    UP = "up"


@dataclass(frozen=True)
class Amount:
    """One number inside a sentence, in mm, radians, mm/s, rad/s or as a bare count; a fine one as that of a quantity.

    What a thing is marked with itself, such as the throw on a cam, stands before it where that is in another unit. Where
    inches are worked in, something else may be told in its place, such as a foot for 100 mm.
    """

    value: float
    kind: Kind
    rounding: Rounding = Rounding.NEAREST
    fine: bool = False
    mark: str = ""
    in_inches: Amount | str = ""


@dataclass(frozen=True)
class Sentence:
    """A template with ``{name}`` places, and the amount (or a plain word) that goes into each.

    Example:
        >>> str(Sentence("The heel clears by {gap}.", {"gap": length(0.25)}))
        'The heel clears by 0.25 mm.'
    """

    template: str
    parts: Mapping[str, Amount | str] = field(default_factory=dict)

    def __str__(self) -> str:
        """The sentence in millimetres and degrees, for logs and tracebacks."""
        return self.template.format_map({name: _plain(part) for name, part in self.parts.items()})


_PLAIN_UNITS = {
    Kind.LENGTH: "mm",
    Kind.ANGLE: "deg",
    Kind.AREA: "mm2",
    Kind.SPEED: "mm/s",
    Kind.ROTATION: "rad/s",
    Kind.PERCENT: "%",
    Kind.PER_LENGTH: "per mm",
}


def _plain(part: Amount | str) -> str:
    if isinstance(part, str):
        return part
    value = math.degrees(part.value) if part.kind is Kind.ANGLE else part.value
    return f"{value:.4g} {_PLAIN_UNITS.get(part.kind, '')}".rstrip()


def length(
    value: float,
    rounding: Rounding = Rounding.NEAREST,
    *,
    fine: bool = False,
    mark: str = "",
    in_inches: Amount | str = "",
) -> Amount:
    """A length in mm as part of a sentence."""
    return Amount(value, Kind.LENGTH, rounding, fine, mark, in_inches)


def angle(value: float, rounding: Rounding = Rounding.NEAREST) -> Amount:
    """An angle in radians as part of a sentence."""
    return Amount(value, Kind.ANGLE, rounding)


def count(value: float) -> Amount:
    """A whole number as part of a sentence."""
    return Amount(value, Kind.COUNT)


def ratio(value: float) -> Amount:
    """A ratio without unit as part of a sentence."""
    return Amount(value, Kind.RATIO)


def speed(value: float, rounding: Rounding = Rounding.NEAREST) -> Amount:
    """A surface speed in mm/s as part of a sentence."""
    return Amount(value, Kind.SPEED, rounding)


def rotation(value: float, rounding: Rounding = Rounding.NEAREST) -> Amount:
    """A rotational speed in rad/s as part of a sentence."""
    return Amount(value, Kind.ROTATION, rounding)
