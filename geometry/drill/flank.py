"""The flank of a drill point from lip to heel, as one flat facet or two, on the cylinder of the corner.

An indicator along the axis, set to zero at the corner, reads there how far the flank falls. All derived; the tests find
the same by turning a drill with rotation matrices.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.drill.facet import Facet


@dataclass(frozen=True)
class Flank:
    """The flank on the cylinder of the corner, from the lip to the heel.

    Attributes:
        first: the facet at the lip.
        second: the facet behind it, from the line through the axis on; nothing where there is none.
        half_web: how far the lip lies ahead of that line, in mm.
        radius: of the drill, in mm, above the half web.
    """

    first: Facet
    second: Facet | None
    half_web: float
    radius: float

    def place(self, turned: float) -> tuple[float, float]:
        """Where the corner's circle is behind the lip, along and behind it, in mm."""
        at = turned - math.asin(self.half_web / self.radius)
        return self.radius * math.cos(at), self.radius * math.sin(at)

    def drop(self, turned: float) -> float:
        """What an indicator along the axis reads after a turn (rad) from the corner, in mm; below zero it stands proud."""
        x, y = self.place(turned)
        inward = self.place(0.0)[0] - x
        behind = min(y, 0.0) if self.second else y
        further = max(y, 0.0) * self.second.fall if self.second else 0.0
        return self.first.fall * (behind + self.half_web) + further - self.first.slope * inward

    @property
    def ahead_of_corner(self) -> float:
        """How far the point on the axis stands ahead of the corner, in mm; below zero it stands behind.

        The lip rises by ``c`` for each millimetre inward, to ``c sqrt(R^2 - h^2)`` beside the axis, which lies half a web
        ``h`` behind it, where the facet has fallen by ``t h``. All facets meet there: a second one begins on that line, and
        the flanks of two flats are turned into each other about it. Derived.

        Example:
            >>> from geometry.drill.facet import facet
            >>> round(Flank(facet(math.radians(90), 0.0), None, 3.0, 5.0).ahead_of_corner, 9)
            4.0
        """
        return self.first.slope * self.place(0.0)[0] - self.first.fall * self.half_web

    @property
    def deepest(self) -> float:
        """After which turn (rad) from the corner an indicator along the axis reads most, and rises again behind it.

        The facet falls by ``t`` for each millimetre behind the lip and rises by ``c`` for each one inward, so that
        the drop changes by ``t cos(at) - c sin(at)``, which is none at the roll of the last facet. Derived.

        Example:
            >>> from geometry.drill.facet import facet
            >>> flank = Flank(facet(math.radians(118), math.radians(12)), None, 0.0, 5.0)
            >>> round(math.degrees(flank.deepest), 2)
            19.48
        """
        return (self.second or self.first).roll + math.asin(self.half_web / self.radius)

    def second_to_clear(self, turned: float) -> float | None:
        """The lip relief (rad) of a second facet that brings the heel level with the corner; nothing where none does."""
        x, y = self.place(turned)
        if y <= 1e-9 * self.radius:
            return None
        inward = self.place(0.0)[0] - x
        return math.atan((self.first.slope * inward - self.first.fall * self.half_web) / y)
