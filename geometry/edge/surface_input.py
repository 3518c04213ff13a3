"""Inputs on a surface: which one a calculation works on, and how its edge lies.

A calculation on a relief asks which surface it is first. The relief is then that surface's, in the view in
which the trade gives it, and what says how the edge lies is asked for only where it is wanted.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property, lru_cache

from geometry.calculation import Field, Inputs
from geometry.edge.readings import eccentric_reading, flat_reading
from geometry.edge.views import View, normal_of, seen, share
from geometry.preconditions import refuse
from geometry.surfaces import SURFACES, Surface

READ_IN: dict[str, View] = {"at-the-axis": "radial", "square": "normal", "along-the-axis": "axial"}
"""The view that an indicator reads, by the word for where it points."""

READING_KEYS: dict[View, str] = {"radial": "radial_drop", "normal": "square_drop", "axial": "axial_drop"}
"""The quantity that holds what an indicator reads in a view."""

RELIEF_KEYS: dict[View, str] = {
    "normal": "normal_relief_angle",
    "radial": "radial_relief_angle",
    "axial": "axial_relief_angle",
}
"""The quantity that holds a relief as a view shows it."""


HALF = "half_included_angle"
"""The quantity that holds how far the side of a cone lies off the axis, to which a head or a table is swivelled."""


def surface_fields(*allowed: str, default: str, silent: tuple[str, ...] = ()) -> tuple[Field, ...]:
    """The fields that ask for the surface, and for the angle of its edge where a quantity says it.

    Args:
        allowed: the surfaces that the calculation serves.
        default: the one that is meant where neither the person nor the family says it.
        silent: surfaces whose relief is already in the view that is wanted, so that the angle of the edge is not asked.

    Example:
        >>> [field.key for field in surface_fields("land", "cone", default="land")]
        ['surface', 'included_angle']
    """
    asked: dict[str, list[str]] = {}
    for word in allowed:
        if SURFACES[word].edge_key and word not in silent:
            asked.setdefault(SURFACES[word].edge_key, []).append(word)
    return (
        Field("surface", default=default),
        *(Field(key, when=("surface", *words)) for key, words in asked.items()),
    )


@dataclass(frozen=True)
class Edge:
    """The edge of one surface at one diameter.

    Attributes:
        surface: which one.
        kappa: of the edge to the axis, in radians.
    """

    surface: Surface
    kappa: float

    def normal(self, relief: float) -> float:
        """The relief (rad) square to the edge, from the surface's own view."""
        return normal_of(relief, self.kappa, self.surface.view)

    def seen(self, relief: float, view: View) -> float | None:
        """The relief (rad) as a view shows it, from the surface's own view; nothing where it shows nothing."""
        return relief if view == self.surface.view else seen(self.normal(relief), self.kappa, view)

    def given(self, relief: float, view: View) -> float:
        """The relief (rad) in the surface's own view, from another view; from a right angle on it stays as it is."""
        if view == self.surface.view or relief >= math.pi / 2:
            return relief
        found = seen(normal_of(relief, self.kappa, view), self.kappa, self.surface.view)
        assert found is not None, "a surface is given in a view that shows it"
        return found

    @cached_property
    def is_cylinder(self) -> bool:
        """Whether the edge runs along the axis, so that only the radial view shows anything of its own."""
        return share(self.kappa, "axial") == 0

    @cached_property
    def is_end(self) -> bool:
        """Whether the edge lies square to the axis, so that nothing is seen square to the axis."""
        return share(self.kappa, "radial") == 0

    @cached_property
    def views(self) -> tuple[View, ...]:
        """The views that show something of this edge."""
        found: tuple[View, ...] = ("radial", "normal", "axial")
        return tuple(view for view in found if share(self.kappa, view) > 0)

    @property
    def points(self) -> str:
        """Where an indicator points on this surface in common practice: at the axis, on a lip or an end along it."""
        return "along-the-axis" if self.surface.view == "axial" or self.is_end else "at-the-axis"

    def half_included(self) -> dict[str, float]:
        """How far the edge of a cone lies off the axis, by quantity; none on a surface that says its own angle."""
        return {HALF: self.kappa} if self.surface.edge_key == "included_angle" else {}

    def reliefs(self, relief: float) -> dict[str, float]:
        """The relief in every view that shows it, by quantity; none where all are one.

        Args:
            relief: in the surface's own view, in radians.
        """
        if self.is_cylinder:
            return {}
        return {
            RELIEF_KEYS[view]: found for view in self.views if (found := self.seen(relief, view)) is not None
        }

    def readings(self, relief: float, form: str, diameter: float) -> dict[View, Callable[[float], float]]:
        """What an indicator reads behind the edge, by the view in which it points.

        Args:
            relief: in the surface's own view, in radians.
            form: ``eccentric`` or ``flat``.
            diameter: of the place on the edge, in mm.
        """
        reading = eccentric_reading if form == "eccentric" else flat_reading
        square = self.normal(relief)
        return {view: reading(square, self.kappa, diameter, view) for view in self.views}


def edge_of(given: Inputs) -> Edge:
    """The edge that the inputs speak of.

    Raises:
        GeometryError: when the edge cannot lie so, or its relief is given in a view that shows nothing of it.
    """
    surface = SURFACES[given.choice("surface")]
    angles = {surface.edge_key: given.number(surface.edge_key)} if given.has(surface.edge_key) else {}
    kappa = surface.kappa(angles)
    if not 0 <= kappa <= math.pi / 2 or share(kappa, surface.view) == 0:
        raise refuse(
            surface.edge_key,
            "At that angle the {surface} has no relief in the view in which it is given. Measure the angle again.",
            {"surface": surface.title},
        )
    return _edge(surface.key, kappa)


@lru_cache(maxsize=64)
def _edge(surface: str, kappa: float) -> Edge:
    """The edge, found again where it was looked at before: a trial of advice asks for the same one many times."""
    return Edge(SURFACES[surface], kappa)


def pointed(given: Inputs, edge: Edge) -> View:
    """The view in which the indicator reads: as it was said, else as it is common for the surface."""
    word = given.choice("indicator_points") if given.has("indicator_points") else edge.points
    view = READ_IN[word]
    if view not in edge.views:
        raise refuse(
            "indicator_points",
            "Pointed that way an indicator sees nothing of the {surface}. Point it {other}.",
            {"surface": edge.surface.title, "other": edge.points.replace("-", " ")},
        )
    return view
