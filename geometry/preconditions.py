"""Preconditions that public functions put on their arguments, and the errors they raise."""

from __future__ import annotations

import math
from collections.abc import Mapping

from geometry.sentences import Amount, Sentence, angle, length


class GeometryError(ValueError):
    """A tool that cannot exist, or a relation used outside its range.

    Attributes:
        sentence: what is wrong and what to change, with its amounts.
        key: the quantity to change first, as named in ``geometry.quantities``; may be empty.
    """

    def __init__(self, sentence: Sentence | str, key: str = "") -> None:
        self.sentence = sentence if isinstance(sentence, Sentence) else Sentence(sentence)
        self.key = key
        super().__init__(str(self.sentence))


class NotGiven(GeometryError):
    """Something the relation needs that nobody has given yet, so that a form may wait for it calmly."""


def refuse(key: str, template: str, parts: Mapping[str, Amount | str] | None = None) -> GeometryError:
    """Make the error for ``key``; the caller raises it."""
    return GeometryError(Sentence(template, parts or {}), key)


def _name(key: str) -> str:
    return key.replace("_", " ")


def require_finite(key: str, value: float) -> float:
    """Return ``value``, or raise when it is not an ordinary number."""
    if not math.isfinite(value):
        raise refuse(key, f"The {_name(key)} must be an ordinary number.")
    return value


def require_positive(key: str, value: float) -> float:
    """Return the length, count or speed ``value``, or raise when it is not above zero.

    Example:
        >>> require_positive("diameter", 12.0)
        12.0
    """
    if require_finite(key, value) <= 0:
        raise refuse(key, f"The {_name(key)} must be more than zero.")
    return value


def require_not_negative(key: str, value: float) -> float:
    """Return ``value``, or raise when it is below zero."""
    if require_finite(key, value) < 0:
        raise refuse(key, f"The {_name(key)} must not be less than zero.")
    return value


def require_angle(key: str, value: float, low: float, high: float) -> float:
    """Return the angle ``value`` (radians), or raise unless ``low < value < high``."""
    if not low < require_finite(key, value) < high:
        raise refuse(
            key,
            f"The {_name(key)} must be more than {{low}} and less than {{high}}.",
            {"low": angle(low), "high": angle(high)},
        )
    return value


def require_relief(key: str, value: float) -> float:
    """Return a relief angle (radians), or raise unless it is from zero to under a right angle."""
    if not 0 <= require_finite(key, value) < math.pi / 2:
        raise refuse(key, f"The {_name(key)} must be from {{low}} to under {{high}}.", {
            "low": angle(0.0), "high": angle(math.pi / 2)})  # fmt: skip
    return value


def require_at_most(key: str, value: float, limit: float, because: str) -> float:
    """Return the length ``value`` (mm), or raise when it is more than ``limit``, saying why."""
    if require_finite(key, value) > limit:
        raise refuse(
            key,
            f"The {_name(key)} of {{value}} is more than {{limit}}, {because}.",
            {"value": length(value), "limit": length(limit)},
        )
    return value
