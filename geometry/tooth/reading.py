"""What relief an indicator reading behind the edge tells of, and which form of relief two readings tell of."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from geometry.edge.readings import eccentric_from_reading, eccentric_reading, flat_from_reading, flat_reading
from geometry.edge.surface_input import Edge
from geometry.edge.views import View, seen
from geometry.preconditions import GeometryError, refuse, require_finite, require_positive
from geometry.surfaces import SURFACES

LAND = Edge(SURFACES["land"], 0.0)
"""The edge of a cylinder's land, which most readings are of."""

STEEPEST_READ = math.pi / 2 - 1e-6
"""A relief (rad) from here on is none: the surface would stand square to the circle."""

A_LITTLE = 1e-5
"""How much steeper and shallower (rad) a relief is taken to see how fast its readings grow."""


@dataclass(frozen=True, slots=True)
class Explanation:
    """One form of relief that explains a reading.

    Attributes:
        form: ``eccentric`` or ``flat``.
        relief_angle: at the edge, in radians, in the surface's own view.
        read_at: how far behind the edge the reading was taken, in radians.
        profile: the reading in mm at an angle in radians behind the edge.
        reach: how far behind the edge (rad) the form has a reading at all.
        growth: how fast the reading at an angle (rad) grows with the relief, to any one scale, for ``lever``.
    """

    form: str
    relief_angle: float
    read_at: float
    profile: Callable[[float], float]
    reach: float
    growth: Callable[[float], float]

    def reaches(self, turned: float) -> bool:
        """Whether this form has a reading at all so far behind the edge."""
        return turned < self.reach

    def lever(self, turned: float) -> float:
        """How much an error of the reading moves what is expected at another place.

        Derived: both readings hang on the one relief, so it is the ratio of how fast they grow with it.
        """
        return abs(self.growth(turned) / self.growth(self.read_at))


def explanations(
    drop: float, turned: float, diameter: float, edge: Edge = LAND, view: View = "radial"
) -> dict[str, Explanation]:
    """The forms of relief that can explain one reading, by their names.

    A place that stands proud of the circle cannot be eccentric, and beyond half a turn no flat reaches.

    Args:
        drop: read inside the circle, in mm; below zero where it stands proud.
        turned: from the edge to where it was read, in radians, above zero.
        diameter: of the circle of the edges, in mm, above zero.
        edge: the surface and how its edge lies; without one the land of a cylinder.
        view: in which the indicator points.

    Returns:
        One or both of ``eccentric`` and ``flat``.

    Raises:
        GeometryError: when no form can explain the reading.

    Example:
        >>> found = explanations(0.28108, 1 / 3, 12.0)
        >>> [round(math.degrees(found[form].relief_angle), 2) for form in ("eccentric", "flat")]
        [8.0, 17.66]
    """
    require_positive("diameter", diameter)
    require_finite("drop", drop)
    found: dict[str, Explanation] = {}
    if drop >= 0:
        if not edge.is_end and drop >= diameter / 2:
            raise GeometryError("The drop is more than the radius of the tool; read it again.", "drop")
        square = eccentric_from_reading(drop, turned, edge.kappa, diameter, view)
        found["eccentric"] = _explained("eccentric", square, turned, diameter, edge, view)
    if turned < math.pi:
        square = flat_from_reading(drop, turned, edge.kappa, diameter, view)
        if square < STEEPEST_READ:
            found["flat"] = _explained("flat", square, turned, diameter, edge, view)
    if not found:
        raise nothing_explains()
    return found


def _explained(
    form: str, square: float, turned: float, diameter: float, edge: Edge, view: View
) -> Explanation:
    reading = eccentric_reading if form == "eccentric" else flat_reading
    radial = seen(square, edge.kappa, "radial")
    flat_end = math.pi if radial is None else radial + math.pi / 2
    shown = seen(square, edge.kappa, edge.surface.view)
    assert shown is not None, "a surface is given in a view that shows it"
    return Explanation(
        form,
        shown,
        turned,
        reading(square, edge.kappa, diameter, view),
        math.inf if form == "eccentric" else flat_end,
        (lambda angle: angle) if form == "eccentric" else _growth(square, edge.kappa, diameter, view),
    )


def _growth(square: float, kappa: float, diameter: float, view: View) -> Callable[[float], float]:
    """How fast the readings of a flat grow with its relief, from two that are a little apart."""
    steeper, shallower = (flat_reading(square + by, kappa, diameter, view) for by in (A_LITTLE, -A_LITTLE))
    return lambda angle: steeper(angle) - shallower(angle)


def nothing_explains() -> GeometryError:
    """The error for a place that no relief leaves so proud; the caller raises it."""
    return refuse(
        "drop",
        "No relief leaves a place proud of the circle so far behind the edge. Read the drop again, "
        "with the sign plus where it lies inside the circle.",
    )


def misfit(explanation: Explanation, drop: float, turned: float) -> float | None:
    """How much deeper a second reading lies than a form through the first one gives.

    Args:
        explanation: of the first reading.
        drop: the second reading, in mm.
        turned: from the edge to where it was taken, in radians, from zero.

    Returns:
        The misfit in mm, below zero where the reading is shallower; nothing where the form does not
        reach so far.

    Example:
        >>> first = explanations(0.28108, 1 / 3, 12.0)
        >>> round(misfit(first["eccentric"], 0.14054, 1 / 6), 6) == 0.0
        True
    """
    return drop - explanation.profile(turned) if explanation.reaches(turned) else None
