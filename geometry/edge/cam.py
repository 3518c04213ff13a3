"""One cam that draws a tool toward its axis: the relief that it gives an edge, and the throw that a relief wants.

Behind the edge the surface falls evenly, ``k`` for each radian turned, and seen square to the axis the relief is
``atan(k / r)``; over a turn the cam falls ``2 pi k``, from one tooth to the next that divided by the teeth, ``pi D
tan(a) / Z``. Derived; published in that form for the relief of form-relieved hobs.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Callable, Sequence
from typing import TypeVar

from geometry.calculation import Inputs
from geometry.cone.relief import radians_of_throw
from geometry.edge.surface_input import Edge
from geometry.preconditions import NotGiven, require_positive
from geometry.tooth import eccentric

NEAR_ENOUGH = math.radians(0.25)
"""How far (rad) a cam may be off the relief wanted: what a shop can tell on a tool; common practice, no source."""

CLOSE = 1e-9
"""A relief (rad) this near to the wanted one has reached it: far finer than any machine; no source."""

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


def out_of_drawer(cams: Sequence[Cam], reaches: Callable[[Cam], bool]) -> tuple[Cam, bool]:
    """The cam that is taken: the first that reaches what is wanted, else the largest.

    Args:
        cams: of the drawer, the smallest first; at least one.
        reaches: whether a cam gives the relief wanted or more; where one does, all larger ones do.

    Returns:
        The cam, and whether it reaches.

    Example:
        >>> out_of_drawer((1.0, 1.6, 2.5), lambda cam: cam >= 1.2), out_of_drawer((1.0, 1.6), lambda cam: False)
        ((1.6, True), (1.6, False))
    """
    place = bisect_left(cams, True, key=reaches)
    return cams[min(place, len(cams) - 1)], place < len(cams)
