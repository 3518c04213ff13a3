"""Lines in which git has left two versions of the same text, of which neither is read."""

from __future__ import annotations

import re
from dataclasses import dataclass

_BEGINS = re.compile(r"^<{7}(?:[ \t]|\r?$)", re.MULTILINE)
_ENDS = re.compile(r"^>{7}(?:[ \t].*)?$", re.MULTILINE)


@dataclass(frozen=True)
class Conflict:
    """Lines, from the first mark to the last, that hold two versions."""

    first: int
    last: int


def conflicts(text: str) -> list[Conflict]:
    r"""Find every conflict in a text.

    Example:
        >>> conflicts("a\n<<<<<<< HEAD\nb\n=======\nc\n>>>>>>> theirs\n")
        [Conflict(first=2, last=6)]
    """
    found: list[Conflict] = []
    at, line = 0, 1
    while (begins := _BEGINS.search(text, at)) and (ends := _ENDS.search(text, begins.end())):
        first = line + text.count("\n", at, begins.start())
        line = first + text.count("\n", begins.start(), ends.end())
        found.append(Conflict(first, line))
        at = ends.end()
    return found
