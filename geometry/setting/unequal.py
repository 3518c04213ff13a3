"""Unequal spaces between edges, searched so that every one of them falls on a hole of the plates at hand.

A circle of ``H`` holes on a head of ratio ``N`` cuts the turn into ``N H`` parts. Spaces that rise by one step from
edge to edge over half a turn, and once more over the other half, leave every edge opposite another, so that a
micrometer still finds the diameter. What the steps leave over goes one hole each to the widest spaces: so any circle
that is fine enough is met without error, and the search is for the one whose steps come nearest. All derived.
"""

from __future__ import annotations

import cmath
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise, permutations

from geometry.preconditions import require_positive
from geometry.setting.indexing import LEAST_SPACING

MOST_ORDERED = 6
"""Up to so many spaces every order of them is tried for balance: 120 with the first one held."""

SAME = 1e-9
"""Two circles whose steps miss by angles this near (rad) to each other are as good."""


@dataclass(frozen=True)
class Spacing:
    """Spaces once round a tool.

    Attributes:
        circle: the holes of the circle that they fall on.
        ratio: turns of the crank for one of the spindle.
        holes: from each edge to the next, as holes passed in all.
    """

    circle: int
    ratio: int
    holes: tuple[int, ...]

    @property
    def part(self) -> float:
        """How far one hole turns the tool, in radians."""
        return 2 * math.pi / (self.ratio * self.circle)

    @property
    def angles(self) -> tuple[float, ...]:
        """From each edge to the next, in radians."""
        return tuple(holes * self.part for holes in self.holes)

    @property
    def steps(self) -> tuple[float, ...]:
        """From each space to the next wider one, in radians."""
        wide = sorted(set(self.holes))
        return tuple((after - before) * self.part for before, after in pairwise(wide))

    @property
    def off_balance(self) -> float:
        """How far off the axis the middle of all edges lies, as a share of the radius; nothing where all stand opposite."""
        at, middle = 0, 0j
        for holes in self.holes:
            middle += cmath.exp(1j * at * self.part)
            at += holes
        share = abs(middle) / len(self.holes)
        return share if share > SAME else 0.0


def usual_step(spaces: int) -> float:
    """A step from space to space where none was asked for: 2 degrees, less where many spaces would differ by over 6.

    Common practice, no source.

    Args:
        spaces: how many differ, from two.

    Returns:
        The step in radians.

    Example:
        >>> round(math.degrees(usual_step(4)), 9), round(math.degrees(usual_step(5)), 9)
        (2.0, 1.5)
    """
    return math.radians(min(2.0, 6.0 / (spaces - 1)))


def spacing_on(circle: int, ratio: int, flutes: int, step: float, opposite: bool) -> Spacing | None:
    """The spaces on one circle whose steps come nearest to a wanted one, rising from the first to the last.

    Args:
        circle: number of holes, from one.
        ratio: turns of the crank for one of the spindle, from one.
        flutes: how many edges, from two; even where each stands opposite another.
        step: from each space to the next, in radians, above zero.
        opposite: whether the spaces repeat over the other half of the turn.

    Returns:
        The spaces; nothing where the circle is too coarse, or has no half turn.

    Example:
        >>> [round(math.degrees(one), 6) for one in spacing_on(54, 40, 8, math.radians(2), True).angles[:4]]
        [42.0, 44.0, 46.0, 48.0]
    """
    whole = ratio * circle
    rounds = 2 if opposite else 1
    spaces, holes = flutes // rounds, whole // rounds
    narrowest = math.ceil(LEAST_SPACING * whole / (2 * math.pi) - SAME)
    most = (holes - spaces * narrowest) // (spaces * (spaces - 1) // 2)
    if whole % rounds or most < 1:
        return None
    rises = min(max(1, math.floor(step * whole / (2 * math.pi) + 0.5)), most)
    first, left = divmod(holes - rises * spaces * (spaces - 1) // 2, spaces)
    found = [first + rises * at + (at >= spaces - left) for at in range(spaces)]
    return Spacing(circle, ratio, tuple(found) * rounds)


def least_circle(ratio: int, flutes: int, opposite: bool, most: int) -> int | None:
    """The circle with the fewest holes on which so many spaces can differ at all; nothing where none has so few.

    Args:
        ratio: turns of the crank for one of the spindle, from one.
        flutes: how many edges, from two; even where each stands opposite another.
        opposite: whether each edge stands opposite another.
        most: the holes of the largest circle that is looked at.

    Example:
        >>> least_circle(1, 8, True, 1000)
        20
    """
    tried = (one for one in range(1, most + 1) if spacing_on(one, ratio, flutes, SAME, opposite) is not None)
    return next(tried, None)


def nearest_spacing(
    circles: Sequence[int], ratio: int, flutes: int, step: float, opposite: bool
) -> tuple[Spacing, tuple[int, ...]] | None:
    """The spaces that come nearest to a wanted step on any of the circles, and the circles that are as good.

    Args:
        circles: numbers of holes, each from one.
        ratio: turns of the crank for one of the spindle, from one.
        flutes: how many edges, from two; even where each stands opposite another.
        step: wanted from each space to the next, in radians, above zero.
        opposite: whether each edge stands opposite another.

    Returns:
        The spaces on the circle with the fewest holes to count, in the order that balances best; nothing where no
        circle will do.

    Example:
        >>> found, others = nearest_spacing((24, 54, 66), 40, 8, math.radians(2), True)
        >>> found.circle, others
        (54, ())
    """
    require_positive("spacing_step", step)
    fitting = [spacing_on(circle, ratio, flutes, step, opposite) for circle in sorted(set(circles))]
    rated = [(_misses(one, step), one) for one in fitting if one is not None]
    if not rated:
        return None
    least = min(missed for missed, _ in rated)
    best, *others = [one for missed, one in rated if missed <= least + SAME]
    return (best if opposite else _balanced(best)), tuple(one.circle for one in others)


def _misses(spacing: Spacing, step: float) -> float:
    """By how much the step that is furthest from the wanted one misses it, in radians."""
    return max((abs(one - step) for one in spacing.steps), default=0.0)


def _balanced(spacing: Spacing) -> Spacing:
    """The same spaces in the order whose edges balance best round the axis; one of a few orders where they are many."""
    orders = (
        permutations(spacing.holes[1:]) if len(spacing.holes) <= MOST_ORDERED else _orders(spacing.holes[1:])
    )
    first = spacing.holes[0]
    tried = (Spacing(spacing.circle, spacing.ratio, (first, *order)) for order in orders)
    return min(tried, key=lambda one: round(one.off_balance, 9))


def _orders(rising: Sequence[int]) -> Iterator[tuple[int, ...]]:
    """A few orders of many spaces: rising, every other one up and the rest down, wide and narrow in turn, by thirds."""
    yield tuple(rising)
    yield (*rising[::2], *reversed(rising[1::2]))
    half = len(rising) // 2
    low, high = list(rising[:half]), list(rising[half:])
    mixed = [one for pair in zip(high, reversed(low), strict=False) for one in pair]
    yield (*mixed, *high[len(low) :])
    yield (*rising[::3], *rising[1::3], *rising[2::3])
