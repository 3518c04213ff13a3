"""The order in which a person looks for names with sizes: M3 before M10, 1/4 before 1/2, 1-1/2 after 1."""

from __future__ import annotations

import re

_NUMBER = re.compile(
    r"(?:(?P<whole>\d{1,6})[- ])?(?P<top>\d{1,6})/(?P<below>\d{1,6})|(?P<plain>\d{1,15}(?:\.\d{1,15})?)"
)

Key = tuple[tuple[int, float, str], ...]


def natural(text: str) -> Key:
    """What to sort a text by, so that the numbers in it stand in the order of their size.

    Args:
        text: such as a title.

    Example:
        >>> sorted(["Tap M10", "Tap 1/2", "Tap M3", "Tap 1-1/2", "Tap 1/4"], key=natural)
        ['Tap 1/4', 'Tap 1/2', 'Tap 1-1/2', 'Tap M3', 'Tap M10']
    """
    key: list[tuple[int, float, str]] = []
    at = 0
    for found in _NUMBER.finditer(text):
        if between := text[at : found.start()].casefold():
            key.append((1, 0.0, between))
        key.append((0, _size(found), ""))
        at = found.end()
    if rest := text[at:].casefold():
        key.append((1, 0.0, rest))
    return tuple(key)


def _size(found: re.Match[str]) -> float:
    if found["plain"] is not None:
        return float(found["plain"])
    below = int(found["below"])
    return int(found["whole"] or 0) + (int(found["top"]) / below if below else 0.0)
