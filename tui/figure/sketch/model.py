"""What a sketch is made of: lines and names of the thing, and the marks that show what a quantity asks for.

Places are across and up, in any unit; whoever draws finds the size.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

Place = tuple[float, float]
"""Across and up."""

Kind = Literal["whole", "dotted", "part", "area"]
"""A line of the thing, one that only helps, one that is asked for, or the outline of an area that is."""


@dataclass(frozen=True)
class Path:
    """A line through some places."""

    points: tuple[Place, ...]
    kind: Kind = "whole"


@dataclass(frozen=True)
class Name:
    """A word at a place: before it (-1), over it (0) or behind it (1)."""

    at: Place
    text: str
    side: int = 1
    strong: bool = False


@dataclass(frozen=True)
class Measure:
    """A line with a head at both ends, and its name in it or, where that has no room, at one side."""

    start: Place
    end: Place
    text: str
    side: int = 1


@dataclass(frozen=True)
class Bow:
    """The arc of an angle, in degrees from the right, against the clock; with a head where something turns."""

    centre: Place
    radius: float
    start: float
    end: float
    text: str
    turns: bool = False


@dataclass(frozen=True)
class Arrow:
    """A way that something goes, with its name at one side of where it begins."""

    start: Place
    end: Place
    text: str
    side: int = 1


Part = Path | Name | Measure | Bow | Arrow


@dataclass(frozen=True)
class Sketch:
    """A picture.

    Attributes:
        base: the thing itself, the same for all quantities that are asked of it.
        marks: what this quantity asks for.
    """

    base: tuple[Part, ...]
    marks: tuple[Part, ...]


def line(*points: Place) -> Path:
    """A line of the thing."""
    return Path(points)


def dots(*points: Place) -> Path:
    """A line that is not there, such as an axis or the way of an edge."""
    return Path(points, "dotted")


def part(*points: Place) -> Path:
    """The part that is asked for, drawn thick."""
    return Path(points, "part")


def area(*points: Place) -> Path:
    """The area that is asked for, hatched."""
    return Path(points, "area")


def ring(centre: Place, radius: float, start: float = 0.0, end: float = 360.0) -> tuple[Place, ...]:
    """Places round a circle, from one angle to another in degrees.

    Example:
        >>> [(round(x, 6), round(y, 6)) for x, y in ring((1.0, 0.0), 2.0, 0.0, 90.0)][::9]
        [(3.0, 0.0), (1.0, 2.0)]
    """
    count = max(2, math.ceil(abs(end - start) / 10))
    return tuple(polar(centre, radius, start + (end - start) * n / count) for n in range(count + 1))


def polar(centre: Place, radius: float, degrees: float) -> Place:
    """The place at an angle round a centre.

    Example:
        >>> polar((1.0, 1.0), 2.0, 0.0)
        (3.0, 1.0)
    """
    turned = math.radians(degrees)
    return centre[0] + radius * math.cos(turned), centre[1] + radius * math.sin(turned)


def moved(parts: Iterable[Part], dx: float, dy: float) -> tuple[Part, ...]:
    """Lines and names of a thing somewhere else."""
    found: list[Part] = []
    for one in parts:
        if isinstance(one, Path):
            found.append(Path(tuple((x + dx, y + dy) for x, y in one.points), one.kind))
        elif isinstance(one, Name):
            found.append(Name((one.at[0] + dx, one.at[1] + dy), one.text, one.side, one.strong))
    return tuple(found)
