"""The wording of a change: its keys and values as a sentence to the person says them."""

from __future__ import annotations

from collections.abc import Mapping

from library.sanitize import sanitize


def words(key: str) -> str:
    """A key as a person says it.

    Example:
        >>> words("relief_angle")
        'relief angle'
    """
    return sanitize(key.replace("_", " "))


def told(value: object) -> str:
    """A value in short, for the sentence."""
    if isinstance(value, Mapping):
        parts = [f"{key} {value[key]}" for key in ("low", "usual", "high", "source") if key in value]
        return ", ".join(parts) or "changed"
    text = str(value)
    return text if len(text) <= 40 and "\n" not in text else "changed"
