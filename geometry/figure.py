"""The drawing model of a calculation, seen along the axis: plain curves, not pictures.

The profile behind an edge is drawn as its drop below the circle against the angle behind the edge;
the one who draws chooses the exaggeration and says so.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass

SAMPLES = 48
"""How many pieces a curve is cut into; enough for a terminal and for a printed card."""


_DRAWS: ContextVar[bool] = ContextVar("draws", default=True)


@contextmanager
def undrawn() -> Iterator[None]:
    """Compute without sampling profiles, where nobody sees the drawing, as in a search for a number.

    Example:
        >>> with undrawn():
        ...     curve("flat", 0.5, lambda angle: angle).points
        ()
    """
    token = _DRAWS.set(False)
    try:
        yield
    finally:
        _DRAWS.reset(token)


def is_drawn() -> bool:
    """Whether profiles are sampled where this is asked."""
    return _DRAWS.get()


@dataclass(frozen=True)
class Curve:
    """One profile behind the edge.

    Attributes:
        name: what it is, such as ``eccentric``.
        points: pairs of the angle behind the edge (rad) and the drop below the circle (mm).
        corners: the angles behind the edge (rad) at which one facet meets the next.
    """

    name: str
    points: tuple[tuple[float, float], ...]
    corners: tuple[float, ...] = ()


@dataclass(frozen=True)
class Figure:
    """One tooth: the circle of its edge, how far its land goes round, and the profiles behind it.

    Attributes:
        radius: of the circle that the edge runs on, in mm.
        land_angle: from edge to heel, in radians.
        curves: the profiles, the chosen one first; none where the figure is there for the face alone,
            and the land is an example.
        rake_angle: of the face, in radians, so that the tooth can be drawn whole.
    """

    radius: float
    land_angle: float
    curves: tuple[Curve, ...]
    rake_angle: float = 0.0


def curve(
    name: str, land_angle: float, drop: Callable[[float], float], corners: tuple[float, ...] = ()
) -> Curve:
    """Sample a profile from edge to heel.

    Args:
        name: what the curve is.
        land_angle: how far behind the edge it goes, in radians.
        drop: its drop below the circle (mm) at an angle (rad) behind the edge.
        corners: where one facet meets the next, in radians behind the edge.

    Example:
        >>> curve("eccentric", 0.5, lambda angle: 2 * angle).points[-1]
        (0.5, 1.0)
    """
    if not _DRAWS.get():
        return Curve(name, (), corners)
    steps = [land_angle * (i / SAMPLES) for i in range(SAMPLES + 1)]
    return Curve(name, tuple([(angle, drop(angle)) for angle in steps]), corners)
