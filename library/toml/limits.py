"""Whether what TOML allows is something that a book can hold: not too deep, and finite numbers."""

from __future__ import annotations

import math

DEEPEST = 16
"""Tables and arrays within each other."""


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
