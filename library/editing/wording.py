"""Keys and values of the book in words, for the sentences that tell of a change or a conflict."""

from __future__ import annotations

from collections.abc import Mapping

from library.sanitize import sanitize


def words(key: str) -> str:
    """A key of the book in words.

    Example:
        >>> words("relief_angle")
        'relief angle'
    """
    return sanitize(key.replace("_", " "))


def told(value: object) -> str:
    """A value in short, for a sentence."""
    if isinstance(value, Mapping):
        parts = [f"{key} {value[key]}" for key in ("low", "usual", "high", "source") if key in value]
        return ", ".join(parts) or "changed"
    text = str(value)
    return text if len(text) <= 40 and "\n" not in text else "changed"
