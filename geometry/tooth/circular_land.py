"""The end of a circular land as an indicator shows it, and the stock that narrows the land.

An indicator that was set to zero on the land stands still as long as the land runs on the circle. It shows the
end only where the relief behind it has fallen by one division, a little further round. All derived.
"""

from __future__ import annotations

import math

from geometry.preconditions import require_not_negative, require_positive, require_relief


def first_fall(division: float, relief_angle: float, diameter: float, form: str) -> float | None:
    """How far behind the end of a circular land the relief has fallen by one division.

    Relation: ``d / (R tan a)`` for an eccentric relief; ``a - acos(R cos a / (R - d))`` for a flat, from
    ``R - d = R cos a / cos(t - a)``. Derived.

    Args:
        division: that the indicator shows, in mm, above zero.
        relief_angle: where the circular land ends, in radians, from zero to under a right angle.
        diameter: of the circle, in mm, above zero.
        form: ``eccentric`` or ``flat``.

    Returns:
        The angle in radians; nothing where the relief does not fall so far in one turn.

    Example:
        >>> round(math.degrees(first_fall(0.01, math.radians(6), 10.0, "eccentric")), 4)
        1.0903
        >>> first_fall(0.1, math.radians(6), 10.0, "flat") is None
        True
    """
    radius = require_positive("diameter", diameter) / 2
    fall, relief = (
        require_positive("indicator_division", division),
        require_relief("relief_angle", relief_angle),
    )
    if relief == 0 or fall >= radius:
        return None
    if form == "eccentric":
        once_round = 2 * math.pi * radius * math.tan(relief)
        return 2 * math.pi * fall / once_round if once_round > fall else None
    deepest = 2 * radius * math.sin(relief / 2) ** 2
    if fall > deepest:
        return None
    # sin^2 of half the angle from the deepest place: (1 - R cos a / (R - d)) / 2, without losing its digits.
    sunk = math.sqrt(max(0.0, deepest - fall) / (2 * (radius - fall)))
    return relief - 2 * math.asin(sunk)


def narrowing_stock(now: float, wanted: float, relief_angle: float, diameter: float, form: str) -> float:
    """How much is ground off the relief to move the end of the circular land toward the edge.

    Relation: the infeed after the wheel, as it is set for the wanted land, first touches: square to the facet
    ``R (cos(max(a - turn, 0)) - cos a)`` for a flat, on the radius ``R turn tan a`` for an eccentric relief. Derived.

    Args:
        now: where the circular land ends now, in radians behind the edge.
        wanted: where it shall end, in radians behind the edge, from zero to ``now``.
        relief_angle: wanted where it then ends, in radians, from zero to under a right angle.
        diameter: of the circle, in mm, above zero.
        form: ``eccentric`` or ``flat``.

    Returns:
        The stock in mm.

    Example:
        >>> round(narrowing_stock(0.08, 0.04, math.radians(6), 10.0, "eccentric"), 5)
        0.02102
    """
    radius = require_positive("diameter", diameter) / 2
    turn = require_not_negative("margin_now", now - wanted)
    relief = require_relief("relief_angle", relief_angle)
    if form == "eccentric":
        return radius * turn * math.tan(relief)
    begins = max(relief - turn, 0.0)
    return 2 * radius * math.sin((relief + begins) / 2) * math.sin((relief - begins) / 2)
