"""The order in which a person looks for names with sizes: M3 before M10, 1/4 before 1/2, 1-1/2 after 1."""

from __future__ import annotations

import re

_NUMBER = re.compile(
    r"(?:(?P<whole>\d{1,6})[- ])?(?P<top>\d{1,6})/(?P<below>\d{1,6})|(?P<plain>\d{1,15}(?:\.\d{1,15})?)"
)

Key = tuple[tuple[int, float, str], ...]

_FROM_NOTHING = re.compile(r"(?<![0-9] )(?<! mm )(?<! in )\b(?:up )?to (?=[0-9])")
_OVER = re.compile(r"\bover (?=[0-9./-]+ to [0-9])")
"""Ranges of sizes that are told by one end, or from past their other one."""


def natural(text: str) -> Key:
    """What to sort a text by, so that the numbers in it stand in the order of their size.

    Args:
        text: such as a title.

    Example:
        >>> sorted(["Tap M10", "Tap 1/2", "Tap M3", "Tap 1-1/2", "Tap 1/4"], key=natural)
        ['Tap 1/4', 'Tap 1/2', 'Tap 1-1/2', 'Tap M3', 'Tap M10']
        >>> sorted(["Work 6 to 10", "Work over 4 to 6", "Work to 4"], key=natural)
        ['Work to 4', 'Work over 4 to 6', 'Work 6 to 10']
    """
    text = _OVER.sub("", _FROM_NOTHING.sub("0 to ", text))
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
