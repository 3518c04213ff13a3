"""One cam that draws a tool toward its axis: the relief that it gives an edge, and the throw that a relief wants.

Behind the edge the surface falls evenly, ``k`` for each radian turned, and seen square to the axis the relief is
``atan(k / r)``; over a turn the cam falls ``2 pi k``, from one tooth to the next that divided by the teeth, ``pi D
tan(a) / Z``. Derived; published in that form for the relief of form-relieved hobs.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from itertools import takewhile
from typing import TypeVar

from geometry.calculation import Inputs
from geometry.cone.relief import radians_of_throw
from geometry.edge.surface_input import Edge
from geometry.preconditions import NotGiven, require_positive
from geometry.tooth import eccentric

NEAR_ENOUGH = math.radians(0.25)
"""How far (rad) a cam may be off the relief wanted: what a shop can tell on a tool; common practice, no source."""

CLOSE = 1e-9
"""A throw (mm) this near to another is the same: far finer than any machine; no source."""

READS_ALIKE = math.radians(0.005) + 1e-9
"""A relief (rad) this near to another reads alike where angles are shown to a hundredth of a degree."""

TOWARD_THE_AXIS = ("land", "thread-land", "chamfer", "cone", "shoulder", "bevel")
"""Surfaces that a cam relieves that draws the tool toward its axis; a lip and an end fall along the axis."""

Cam = TypeVar("Cam")


def turn_of_throw(given: Inputs) -> float:
    """The angle that the tool turns while the cam makes its throw, as the inputs say it.

    Args:
        given: with ``throw_per``, and with ``flutes`` where it is counted from tooth to tooth.

    Raises:
        NotGiven: when the flutes are wanted.

    Example:
        >>> round(turn_of_throw(Inputs({"throw_per": "tooth", "flutes": 4.0})) / math.pi, 6)
        0.5
    """
    if given.choice("throw_per") == "tooth" and not given.has("flutes"):
        raise NotGiven("Give flutes, since the throw is counted from tooth to tooth.", "flutes")
    return radians_of_throw(given.choice("throw_per"), given.number_or("flutes", 1))


def relief_by_cam(edge: Edge, throw: float, turn: float, diameter: float) -> float:
    """The relief that a cam gives: ``atan(throw / (turn r))`` square to the axis, in the surface's own view.

    Args:
        edge: that falls toward the axis.
        throw: of the cam, in mm, from zero.
        turn: that the tool makes meanwhile, in radians, above zero.
        diameter: of the place on the edge, in mm, above zero.

    Returns:
        The angle in radians.

    Example:
        >>> from geometry.surfaces import SURFACES
        >>> round(math.degrees(relief_by_cam(Edge(SURFACES["land"], 0.0), 1.6, math.pi / 2, 16.0)), 4)
        7.2561
    """
    return edge.given(math.atan2(throw / turn, require_positive("diameter", diameter) / 2), "radial")


def throws_for(radial_relief: float, diameter: float, flutes: float | None = None) -> dict[str, float]:
    """The throw that a relief wants, in a turn and from tooth to tooth, by quantity.

    Args:
        radial_relief: square to the axis, in radians, from zero to under a right angle.
        diameter: of the circle of the edges, in mm, above zero.
        flutes: where they are known.

    Example:
        >>> round(throws_for(math.radians(10), 80.0, 10)["throw_per_tooth"], 2)
        4.43
    """
    turn = eccentric.throw_per_turn(radial_relief, diameter)
    found = {"throw_per_turn": turn}
    return found | ({"throw_per_tooth": turn / flutes} if flutes else {})


@dataclass(frozen=True)
class Wanted:
    """The relief that a cam shall give, and from where to where it may be, in radians.

    Attributes:
        relief: that is wanted.
        low: that it may be at the least; nothing where none was given.
        high: that it may be at the most; nothing where none was given.
    """

    relief: float
    low: float | None = None
    high: float | None = None

    @property
    def has_limits(self) -> bool:
        """Whether a cam may be under what is wanted: there is a low limit, and what is wanted keeps both itself.

        Example:
            >>> Wanted(0.14, 0.1, 0.17).has_limits, Wanted(0.2, 0.1, 0.17).has_limits, Wanted(0.14, high=0.17).has_limits
            (True, False, False)
        """
        return self.low is not None and self.keeps(self.relief)

    def keeps(self, relief: float) -> bool:
        """Whether a relief reads within the limits."""
        low, high = self.low, self.high
        return (low is None or relief >= low - READS_ALIKE) and (high is None or relief <= high + READS_ALIKE)


def out_of_drawer(
    cams: Sequence[Cam], gives: Callable[[Cam], float | None], wanted: Wanted
) -> tuple[Cam, bool]:
    """The cam that is taken: the nearest within the limits, else the first that gives enough, else the largest.

    Args:
        cams: of the drawer, the smallest first; at least one.
        gives: the relief by a cam in radians, the more the larger it is; nothing where it gives none.
        wanted: the relief, with its limits.

    Returns:
        The cam, and whether what it gives will do.

    Example:
        >>> cams, gives = (0.08, 0.13, 0.2), lambda cam: cam
        >>> out_of_drawer(cams, gives, Wanted(0.14)), out_of_drawer(cams, gives, Wanted(0.14, 0.1, 0.17))
        ((0.2, True), (0.13, True))
        >>> out_of_drawer(cams, gives, Wanted(0.3))
        (0.2, False)
    """

    def first_with(relief: float) -> int:
        return bisect_left(
            cams, True, key=lambda cam: (found := gives(cam)) is not None and found >= relief - READS_ALIKE
        )

    if wanted.has_limits and wanted.low is not None:
        able = [(cam, gives(cam)) for cam in cams[first_with(wanted.low) :]]
        kept = takewhile(
            lambda one: wanted.keeps(one[1]), [(cam, one) for cam, one in able if one is not None]
        )
        # Of two that are as near, the larger: too little rubs.
        nearest = min(kept, key=lambda one: (abs(one[1] - wanted.relief), -one[1]), default=None)
        if nearest is not None:
            return nearest[0], True
    place = first_with(wanted.relief)
    return cams[min(place, len(cams) - 1)], place < len(cams)
