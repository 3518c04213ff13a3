"""The relieved surfaces of a tool: what each is called, in which view its relief is given, how its edge lies.

A relief belongs to one surface and says nothing of another: the chamfer of a tap cuts, its thread land
must not lose its size. The trade gives each in its own view (see ``geometry.edge.views``).
Common practice, no source; the views and their names are those of ISO 3002-1.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from geometry.edge.views import View
from geometry.preconditions import NotGiven
from geometry.sentences import Sentence

SECOND = "second_"
"""What stands before the key of a relief for the facet behind the first one of the same surface."""


@dataclass(frozen=True)
class Surface:
    """One relieved surface.

    Attributes:
        key: the word for it in ``surface``.
        title: in words, for a screen.
        relief_key: the quantity that holds its relief.
        view: in which that relief is given.
        edge_key: the quantity that says how its edge lies to the axis; empty where it always lies the same way.
        edge_share: what of that quantity is the angle to the axis: one, or a half of an included angle.
        fixed: the angle of the edge to the axis (rad) where no quantity says it.
    """

    key: str
    title: str
    relief_key: str
    view: View
    edge_key: str = ""
    edge_share: float = 1.0
    fixed: float = 0.0

    @property
    def second_key(self) -> str:
        """The quantity that holds the relief of its second facet."""
        return SECOND + self.relief_key

    def kappa(self, values: Mapping[str, float]) -> float:
        """The angle of its edge to the axis, in radians.

        Args:
            values: quantities of the tool in radians, by key.

        Raises:
            NotGiven: when the quantity that says it is not among them.

        Example:
            >>> round(math.degrees(SURFACES["cone"].kappa({"included_angle": math.radians(82)})), 6)
            41.0
        """
        if not self.edge_key:
            return self.fixed
        if self.edge_key not in values:
            raise NotGiven(
                Sentence(
                    "Give {key}: the {surface} lies at that angle.",
                    {"key": self.edge_key, "surface": self.title},
                ),
                self.edge_key,
            )
        return values[self.edge_key] * self.edge_share


SURFACES: Mapping[str, Surface] = {
    one.key: one
    for one in (
        Surface("land", "land", "land_relief_angle", "radial"),
        Surface("thread-land", "thread land", "thread_relief_angle", "radial"),
        Surface("chamfer", "chamfer", "chamfer_relief_angle", "radial", "chamfer_angle"),
        Surface("cone", "cone", "cone_relief_angle", "normal", "included_angle", 0.5),
        Surface("shoulder", "shoulder", "shoulder_relief_angle", "normal", "included_angle", 0.5),
        Surface("lip", "lip", "lip_relief_angle", "axial", "point_angle", 0.5),
        Surface("bevel", "bevel lead", "bevel_relief_angle", "normal", "bevel_angle"),
        Surface("end", "end", "end_relief_angle", "axial", fixed=math.pi / 2),
    )
}
"""All surfaces by their word."""


GROUND_BACK = ("lip", "end", "bevel")
"""Surfaces at the end of a tool, whose grinding takes length along the axis and leaves its lands as they are."""


def surface_of_relief(key: str) -> Surface | None:
    """The surface to which a relief belongs, by the key of its first or second facet; nothing for others.

    Example:
        >>> surface_of_relief("second_land_relief_angle").key
        'land'
    """
    first = key.removeprefix(SECOND)
    return _BY_RELIEF.get(first)


_BY_RELIEF = {one.relief_key: one for one in SURFACES.values()}
