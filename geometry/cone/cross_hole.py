"""A countersink without flutes: where the rim of its cross hole lies on the cone, and how that edge cuts.

The cone has its tip at zero and its axis upward. The hole of radius b crosses the axis at the height h, its axis tilted by t
from that of the tool, and opens lowest where the turn p is zero. A place of the cone at radius r lies on the rim where

    (r cos p cos t - q)^2 + r^2 sin^2 p = b^2        with q = (h - r cot k) sin t

k being half the included angle. The rim begins and ends, at p = 0, at the radii (h sin t -/+ b) sin k / sin(k + t). Its edge
is the half that comes last as the tool turns. The wall of the hole is its face and the cone its flank, so that the sine of the
rake square to the edge is the outward normal of the cone times the way from the axis of the hole to its wall, over b.

A round cone runs in its own path: no relief falls from the hole alone. That comes from a cam on the cone, and square to an
edge that is inclined by i its tangent is 1 / cos i times as large (ISO 3002-2). All derived; no number is published for any
of it, and the tests repeat it with vectors.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import GeometryError, refuse, require_angle, require_positive
from geometry.sentences import length

Vector = tuple[float, float, float]

LEAST_CONE = math.radians(1)
"""Included angle below which there is no cone to be cut, and whose cotangent is beyond counting."""

LOOKED_AT = 48
"""At how many places between its ends the rim is looked at for whether it holds together."""


@dataclass(frozen=True)
class CrossHole:
    """A cone and the hole through it; lengths in mm, angles in radians.

    Attributes:
        half_angle: of the cone, from its axis.
        radius: of the hole.
        tilt: of the axis of the hole, from that of the tool.
        height: above the tip at which the two axes cross.
    """

    half_angle: float
    radius: float
    tilt: float
    height: float

    @property
    def ends(self) -> tuple[float, float]:
        """How far from the axis the rim begins and ends, in mm."""
        share = math.sin(self.half_angle) / math.sin(self.half_angle + self.tilt)
        middle = self.height * math.sin(self.tilt)
        return (middle - self.radius) * share, (middle + self.radius) * share

    def _room(self, r: float) -> tuple[float, float]:
        q = (self.height - r / math.tan(self.half_angle)) * math.sin(self.tilt)
        return q, q * q + math.sin(self.tilt) ** 2 * (r * r - self.radius**2)

    def turned(self, r: float) -> float:
        """How far round, from the lowest place of the rim, it passes at a radius of the cone, in radians.

        Args:
            r: in mm, between the ends of the rim.
        """
        q, room = self._room(r)
        if room < 0:
            raise _openings_meet(self)
        sine = math.sin(self.tilt)
        cosine = (math.sqrt(room) - q * math.cos(self.tilt)) / (r * sine * sine)
        return math.acos(max(-1.0, min(1.0, cosine)))

    def place(self, r: float) -> EdgePlace:
        """The edge where it passes a radius of the cone, in mm, between the ends of the rim."""
        p = self.turned(r)
        cos_k, sin_k = math.cos(self.half_angle), math.sin(self.half_angle)
        normal: Vector = (cos_k * math.cos(p), cos_k * math.sin(p), -sin_k)
        along: Vector = (-math.sin(self.tilt), 0.0, math.cos(self.tilt))
        way: Vector = (r * math.cos(p), r * math.sin(p), r / math.tan(self.half_angle) - self.height)
        on_axis = _dot(way, along)
        to_wall: Vector = (
            way[0] - on_axis * along[0],
            way[1] - on_axis * along[1],
            way[2] - on_axis * along[2],
        )
        leans = max(-1.0, min(1.0, _dot(normal, to_wall) / self.radius))
        edge = _cross(normal, to_wall)
        size = math.hypot(*edge)
        turning: Vector = (-math.sin(p), math.cos(p), 0.0)
        inclined = math.asin(min(1.0, abs(_dot(edge, turning)) / size)) if size > 0 else math.pi / 2
        return EdgePlace(r, p, math.asin(leans), inclined)


@dataclass(frozen=True)
class EdgePlace:
    """One place of the edge.

    Attributes:
        radius: from the axis of the tool, in mm.
        turned: from the lowest place of the rim, in radians.
        rake: square to the edge, of the wall of the hole, in radians.
        inclination: of the edge against the plane square to its way, in radians.
    """

    radius: float
    turned: float
    rake: float
    inclination: float

    def square_relief(self, relief: float) -> float:
        """The relief square to the inclined edge from that on the way round (rad), in radians."""
        return math.atan(math.tan(relief) / math.cos(self.inclination))


def cross_hole(included_angle: float, hole_diameter: float, tilt: float, height: float) -> CrossHole:
    """A cross hole that leaves the tip of the cone and metal between its two openings.

    Args:
        included_angle: of the cone, in radians, above a degree, under half a turn.
        hole_diameter: in mm, above zero.
        tilt: of the hole from the axis of the tool, in radians, above zero, up to a right angle.
        height: above the tip at which the axes cross, in mm, above zero.

    Raises:
        GeometryError: for a hole that takes the tip away, or is too wide for its cone.

    Example:
        >>> made = cross_hole(math.radians(90), 6.0, math.radians(45), 10.0)
        >>> [round(one, 4) for one in made.ends]
        [2.8787, 7.1213]
    """
    half = require_angle("included_angle", included_angle, LEAST_CONE, math.pi) / 2
    radius = require_positive("cross_hole_diameter", hole_diameter) / 2
    if not 0 < tilt <= math.pi / 2 + 1e-12:
        raise refuse(
            "cross_hole_tilt", "A cross hole is tilted from the axis of the tool, up to square to it."
        )
    made = CrossHole(half, radius, tilt, require_positive("cross_hole_height", height))
    if made.height * math.sin(tilt) <= radius * (1 + 1e-9):
        raise refuse(
            "cross_hole_height",
            "A hole of {hole} that crosses so low takes the tip away. Measure it again: it crosses higher than {least}.",
            {"hole": length(hole_diameter), "least": length(radius / math.sin(tilt))},
        )
    low, high = made.ends
    for number in range(1, LOOKED_AT):
        made.turned(low + (high - low) * number / LOOKED_AT)
    return made


def _openings_meet(made: CrossHole) -> GeometryError:
    return refuse(
        "cross_hole_diameter",
        "A hole of {hole} is so wide for this cone that its two openings meet. Measure it again, and where it crosses.",
        {"hole": length(2 * made.radius)},
    )


def _dot(one: Vector, other: Vector) -> float:
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def _cross(one: Vector, other: Vector) -> Vector:
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )
