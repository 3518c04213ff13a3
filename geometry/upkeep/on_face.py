"""A tooth sharpened on its face: how far it can be ground back before a limit is passed."""

from __future__ import annotations

from dataclasses import dataclass

from geometry.tooth.land import land_width
from geometry.upkeep.sharpening import Edge, ground_back

SLACK = 1e-9
"""A limit counts as passed beyond this many millimetres or radians; less is the rounding of arithmetic."""


@dataclass(frozen=True)
class Face:
    """A tooth and the limits to which its face may be ground back.

    Attributes:
        diameter: of the circle of the edges now, in mm, above zero.
        relief_angle: at the edge now, in radians, from zero to under a right angle.
        form: ``"eccentric"`` or ``"flat"``.
        stock: how far one sharpening takes the edge back along that circle, in mm, above zero; see ``stock_along``.
        turned: from the edge to the heel, in radians.
        measured_as: how lands are measured, ``"arc"`` or ``"chord"``.
        least_land: the narrowest land allowed, in mm; at zero there must still be some.
        least_diameter: the smallest diameter allowed, in mm; zero for none.
        primary: from the edge to the end of the primary land, in radians, where facets follow it: the relief is that of this
            land alone, and the edge goes back along it. Nothing where one surface goes to the heel.
        heel_drop: how far the heel lies inside the circle now by the facets behind, in mm; nothing where they are not known.

    Example:
        >>> tooth = Face(10.0, 0.1, "eccentric", 0.5, 0.4, "arc", 0.0, 0.0)
        >>> tooth.limits_passed(3), tooth.limits_passed(4)
        ((), ('land',))
    """

    diameter: float
    relief_angle: float
    form: str
    stock: float
    turned: float
    measured_as: str
    least_land: float
    least_diameter: float
    primary: float | None = None
    heel_drop: float | None = None

    @property
    def step(self) -> float:
        """How far round the tool one sharpening goes, in radians."""
        return 2 * self.stock / self.diameter

    def edge(self, times: int) -> Edge:
        """The edge after so many sharpenings.

        Raises:
            GeometryError: when they take more than the land, or pass the centre of the tool.
        """
        return ground_back(times * self.step, self.diameter, self.relief_angle, self.turned, self.form)

    def land(self, edge: Edge) -> float:
        """The width of the land behind an edge, in mm."""
        return land_width(edge.land_angle, edge.diameter, self.measured_as)

    def limits_passed(self, times: int) -> tuple[str, ...]:
        """Which limits so many sharpenings pass: ``land``, ``size``, and for a flat ``heel``.

        With facets it is ``primary`` where the primary land is gone, ``primary heel`` where its back comes up to the circle,
        and ``behind`` where the heel does: the circle sinks by what the edge falls along the primary land, and the facets stay.
        """
        gone = times * self.step
        if gone >= self.turned - SLACK:
            return ("land",)
        if self.primary is not None and gone >= self.primary - SLACK:
            return ("primary",)
        edge = self.edge(times)
        flat_left = edge.land_angle if self.primary is None else self.primary - gone
        rises = self.form == "flat" and flat_left > 2 * edge.relief_angle + SLACK
        sunk = (self.diameter - edge.diameter) / 2
        passed = {
            "land": self.land(edge) < self.least_land - SLACK,
            "size": edge.diameter < self.least_diameter - SLACK,
            "heel" if self.primary is None else "primary heel": rises,
            "behind": self.heel_drop is not None and sunk > self.heel_drop + SLACK,
        }
        return tuple(limit for limit, so in passed.items() if so)
