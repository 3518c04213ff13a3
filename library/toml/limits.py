"""How much of TOML is read: lines that the parser takes quickly, keys and values not too deep, finite numbers."""

from __future__ import annotations

import math
import re
import tomllib
from typing import Any

from library.toml.patterns import KEY

LONGEST_LINE = 4096
"""Bytes in one line; a longer one makes the parser slow beyond reason."""

DEEPEST = 16
"""Tables, arrays and dotted keys within each other."""

_DEEP_KEY = re.compile(
    rf"^[ \t]*+\[?\[?[ \t]*+{KEY}(?:[ \t]*+\.[ \t]*+{KEY}){{{DEEPEST},}}+[ \t]*+[=\]]", re.MULTILINE
)
_NO_TEXT = re.compile("[\udc80-\udcff]")


def loads(text: str) -> dict[str, Any] | None:
    """What a text means; nothing where it is not TOML or goes beyond the limits.

    Example:
        >>> loads("schema = 1"), loads("schema 1"), loads(f"x = '{LONGEST_LINE * '-'}'")
        ({'schema': 1}, None, None)
    """
    try:
        return None if is_too_much(text) else tomllib.loads(text)
    except (ValueError, RecursionError):
        return None


def is_too_much(text: str) -> bool:
    """Whether a text holds what the parser must not be given."""
    if any(map(is_too_long, text.split("\n"))):
        return True
    return _DEEP_KEY.search(text) is not None or _NO_TEXT.search(text) is not None


def is_too_long(line: str) -> bool:
    """Whether a line is longer than the parser takes in reasonable time."""
    return len(line) > LONGEST_LINE // 4 and len(line.encode("utf-8", "surrogateescape")) > LONGEST_LINE


def has_deep_key(line: str) -> bool:
    """Whether a line begins with a key or a header of too many parts."""
    return _DEEP_KEY.match(line) is not None


def beyond_limits(raw: object) -> tuple[str, str] | None:
    """What is wrong with a value, whatever it means, and what to do; nothing when all is well.

    Example:
        >>> beyond_limits([1.0, float("inf")])
        ('The number inf is not an ordinary one.', 'Write an ordinary number, or remove it.')
    """
    if isinstance(raw, str):
        return None
    level: list[object] = [[raw]]
    for _ in range(DEEPEST + 2):
        level = [inner for outer in level for inner in _inside(outer)]
        if not level:
            return None
        strange = next((one for one in level if isinstance(one, float) and not math.isfinite(one)), None)
        if strange is not None:
            return f"The number {strange} is not an ordinary one.", "Write an ordinary number, or remove it."
    return f"This lies more than {DEEPEST} brackets deep.", "Write it with fewer brackets, or remove it."


def _inside(outer: object) -> list[object]:
    if isinstance(outer, dict):
        return list(outer.values())
    return outer if isinstance(outer, list) else []
