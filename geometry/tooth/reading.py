"""What relief an indicator reading behind the edge tells of, and which form of relief two readings tell of."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from geometry.checking import GeometryError, refuse, require_finite, require_positive
from geometry.tooth import eccentric, flat


@dataclass(frozen=True, slots=True)
class Explanation:
    """One form of relief that explains a reading.

    Attributes:
        form: ``eccentric`` or ``flat``.
        relief_angle: at the edge, in radians.
        read_at: how far behind the edge the reading was taken, in radians.
        profile: the drop in mm at an angle in radians behind the edge.
    """

    form: str
    relief_angle: float
    read_at: float
    profile: Callable[[float], float]

    def reaches(self, turned: float) -> bool:
        """Whether this form has a drop at all so far behind the edge."""
        return self.form == "eccentric" or turned < self.relief_angle + math.pi / 2

    def lever(self, turned: float) -> float:
        """How much an error of the reading moves what is expected at another place.

        Derived from the profile: ``theta / theta1`` for an eccentric relief, and for a flat
        ``sin(theta) cos^2(theta1 - a) / (sin(theta1) cos^2(theta - a))``.
        """
        if self.form == "eccentric":
            return turned / self.read_at
        there, here = math.cos(turned - self.relief_angle), math.cos(self.read_at - self.relief_angle)
        return abs(math.sin(turned) / math.sin(self.read_at)) * (here / there) ** 2


def explanations(drop: float, turned: float, diameter: float) -> dict[str, Explanation]:
    """The forms of relief that can explain one reading, by their names.

    A place that stands proud of the circle cannot be eccentric, and beyond half a turn no flat reaches.

    Args:
        drop: read inside the circle, in mm; below zero where it stands proud.
        turned: from the edge to where it was read, in radians, above zero.
        diameter: of the circle of the edges, in mm, above zero.

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
        relief = eccentric.relief_angle_from_drop(drop, turned, diameter)
        found["eccentric"] = Explanation("eccentric", relief, turned, eccentric.profile(relief, diameter))
    if turned < math.pi:
        relief = flat.relief_angle_from_drop(drop, turned, diameter)
        if relief < math.pi / 2:
            found["flat"] = Explanation("flat", relief, turned, flat.profile(relief, diameter))
    if not found:
        raise nothing_explains()
    return found


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
