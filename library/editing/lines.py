"""Merge the lines of two changed texts with their common base, so that the comments of both are kept.

What comes out is a place to begin from, not a result: whether it means what it must is found out by
reading it, and what it does not mean is changed key by key.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

MOST_WORK = 2_000_000
"""Pairs of equal lines that are compared at most; beyond that the other side's text is taken as it is."""


@dataclass(frozen=True)
class _Hunk:
    """Lines ``start`` to ``end`` of the base, and what a side has instead."""

    start: int
    end: int
    lines: tuple[str, ...]
    mine: bool


def woven(base: str, mine: str, theirs: str) -> str:
    r"""Their text with my changed lines in it; where both changed the same lines, theirs.

    Args:
        base: the text that both came from.
        mine: as I changed it.
        theirs: as they changed it.

    Example:
        >>> woven("a\nb\nc\nd\n", "A\nb\nc\nD\n", "a\nb\nc\nX\n")
        'A\nb\nc\nX\n'
    """
    old, my, their = _lines(base), _lines(mine), _lines(theirs)
    if _work(old, my) + _work(old, their) > MOST_WORK:
        return theirs
    hunks = sorted(
        [*_hunks(old, my, True), *_hunks(old, their, False)], key=lambda hunk: (hunk.start, hunk.end)
    )
    text: list[str] = []
    at = 0
    for cluster in _clusters(hunks):
        start, end = cluster[0].start, max(hunk.end for hunk in cluster)
        sides = {hunk.mine for hunk in cluster}
        chosen = [hunk for hunk in cluster if hunk.mine is False or sides == {True}]
        text += old[at:start]
        text += _region(old, start, end, chosen)
        at = end
    return "".join([*text, *old[at:]])


def _lines(text: str) -> list[str]:
    found = [f"{line}\n" for line in text.split("\n")]
    found[-1] = found[-1][:-1]
    return found if found[-1] else found[:-1]


def _work(old: Sequence[str], new: Sequence[str]) -> int:
    first, last = _common(old, new)
    ours, counts = old[first : len(old) - last], Counter(new[first : len(new) - last])
    return sum(counts[line] for line in ours)


def _common(old: Sequence[str], new: Sequence[str]) -> tuple[int, int]:
    """How many lines are the same at the beginning and, of the rest, at the end."""
    most = min(len(old), len(new))
    first = next((number for number in range(most) if old[number] != new[number]), most)
    most -= first
    last = next((number for number in range(most) if old[-1 - number] != new[-1 - number]), most)
    return first, last


def _hunks(old: Sequence[str], new: Sequence[str], mine: bool) -> list[_Hunk]:
    first, last = _common(old, new)
    middle = new[first : len(new) - last]
    matcher = SequenceMatcher(None, old[first : len(old) - last], middle, autojunk=False)
    return [
        _Hunk(first + start, first + end, tuple(middle[from_:to]), mine)
        for tag, start, end, from_, to in matcher.get_opcodes()
        if tag != "equal"
    ]


def _clusters(hunks: Sequence[_Hunk]) -> list[list[_Hunk]]:
    """Hunks that overlap, or put lines in at the same place, together."""
    clusters: list[list[_Hunk]] = []
    end = -1
    for hunk in hunks:
        if clusters and (
            hunk.start < end or hunk.start == end == clusters[-1][0].start or hunk.start == hunk.end == end
        ):
            clusters[-1].append(hunk)
        else:
            clusters.append([hunk])
        end = max(end, hunk.end)
    return clusters


def _region(old: Sequence[str], start: int, end: int, hunks: Sequence[_Hunk]) -> list[str]:
    text: list[str] = []
    for hunk in hunks:
        text += [*old[start : hunk.start], *hunk.lines]
        start = hunk.end
    return [*text, *old[start:end]]
