"""Where a profile stands outside the circle: the only part of a tooth that is filled."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

_ROUND = 0.05
"""How far round (rad) the circle is drawn with one straight line under a filled part."""

Place = tuple[float, float]
"""An angle behind the edge (rad) and a drop below the circle, in any unit."""


def proud_parts(points: Sequence[Place]) -> list[list[Place]]:
    """The parts of a profile outside the circle, each as an outline: along the profile, and back along the circle.

    A part begins and ends where the profile crosses the circle, found on the straight line between two of its points.

    Args:
        points: of the profile, from the edge on.

    Example:
        >>> proud_parts(((0.0, 0.0), (0.02, 0.01), (0.04, -0.01)))
        [[(0.03, 0.0), (0.04, -0.01), (0.04, 0.0), (0.03, 0.0)]]
    """
    parts: list[list[Place]] = []
    current: list[Place] = []
    for before, after in pairwise(points):
        if before[1] < 0 and not current:
            current = [(before[0], 0.0), before]
        if before[1] * after[1] < 0:
            share = before[1] / (before[1] - after[1])
            crossing = (round(before[0] + share * (after[0] - before[0]), 12), 0.0)
            current = [*current, crossing] if current else [crossing]
        elif before[1] >= 0 > after[1]:
            current = [before]
        if after[1] < 0:
            current.append(after)
        elif current:
            parts.append(_closed(current if current[-1][1] == 0 else [*current, after]))
            current = []
    return [*parts, _closed(current)] if current else parts


def _closed(part: list[Place]) -> list[Place]:
    """A part with the way back along the circle."""
    first, last = part[0][0], part[-1][0]
    pieces = max(1, round(abs(last - first) / _ROUND))
    return part + [(last + (first - last) * n / pieces, 0.0) for n in range(part[-1][1] == 0, pieces + 1)]
