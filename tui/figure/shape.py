"""The part of a figure that can be drawn, as shares of its radius, whatever numbers it holds."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cached_property

from geometry.figure import Figure

_WHOLE_TURN = 2 * math.pi
_SMALLEST = 1e-9
"""In mm, radians or radii: what is smaller is not there, to a grinder as to arithmetic."""


@dataclass(frozen=True)
class Outline:
    """One profile behind the edge, to scale.

    Attributes:
        name: what it is; empty where nothing is known of it.
        points: pairs of the angle behind the edge (rad) and the drop below the circle, in radii of the circle.
        corners: the angles (rad) at which two facets meet.
    """

    name: str
    points: tuple[tuple[float, float], ...]
    corners: tuple[float, ...] = ()

    @cached_property
    def deepest(self) -> float:
        """The greatest drop, in radii; 0 where it never falls."""
        return max(0.0, *(drop for _, drop in self.points))

    @cached_property
    def proudest(self) -> float:
        """How far it stands outside the circle at most, in radii; 0 where it never does."""
        return max(0.0, *(-drop for _, drop in self.points))

    def comes_within(self, out: float) -> bool:
        """Whether any of it stands no further than ``out`` (radii) outside the circle."""
        return any(drop >= -out for _, drop in self.points)

    def drop(self, angle: float) -> float:
        """The drop at an angle behind the edge, in radii, by straight lines between the points."""
        before = self.points[0]
        for after in self.points:
            if after[0] >= angle:
                if after[0] == before[0]:
                    return after[1]
                along = (angle - before[0]) / (after[0] - before[0])
                return before[1] + along * (after[1] - before[1])
            before = after
        return self.points[-1][1]


@dataclass(frozen=True)
class Shape:
    """A tooth on a circle with a radius of one.

    Attributes:
        land_angle: from edge to heel, in radians.
        rake_angle: of the face, in radians.
        outlines: the profiles, the chosen one first.
    """

    land_angle: float
    rake_angle: float
    outlines: tuple[Outline, ...]


def shape_of(figure: Figure) -> Shape | None:
    """A figure made ready to draw, or nothing where it has no tooth to draw.

    A figure may hold any numbers; what lies beyond a whole turn or the radius is drawn at its limit.

    Args:
        figure: what a calculation wants drawn.
    """
    if not (_SMALLEST < figure.radius < math.inf and _SMALLEST < figure.land_angle < math.inf):
        return None
    outlines = [
        Outline(
            one.name,
            tuple(
                (_within(angle, 0.0, _WHOLE_TURN), _share(drop, figure.radius)) for angle, drop in one.points
            ),
            tuple(corner for corner in one.corners if 0 < corner < _WHOLE_TURN),
        )
        for one in figure.curves
        if len(one.points) > 1
    ]
    land = min(figure.land_angle, _WHOLE_TURN)
    if not outlines:
        outlines = [Outline("", tuple((land * share / 24, 0.0) for share in range(25)))]
    return Shape(land, _within(figure.rake_angle, -1.0, 1.0), tuple(outlines))


def _share(drop: float, radius: float) -> float:
    """A drop in radii, at most one; what is too small for any drawing is 0."""
    share = _within(drop / radius, -1.0, 1.0)
    return share if abs(share) > _SMALLEST else 0.0


def _within(value: float, low: float, high: float) -> float:
    return max(low, min(value, high))
