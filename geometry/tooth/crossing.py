"""Where a second facet dips under an eccentric relief."""

from __future__ import annotations

import math

from geometry.preconditions import require_not_negative, require_positive
from geometry.tooth.facets import Facet

_NOTHING = 1e-12
"""The share of the diameter by which one profile has to lie under the other to count as under it."""

_STEPS = 60
"""Newton's steps double the digits; where the profiles barely cross each step still halves what is left."""


def crossing_angle(second: Facet, fall_per_radian: float, diameter: float) -> float | None:
    """How far behind the edge a facet begins to lie deeper than an eccentric relief.

    Derived: the drop of the facet less ``k theta`` is greatest where ``p sin(u) = k cos^2(u)`` with
    ``u = facet_angle - theta`` and ``p`` its height. Up to there it only grows, ever more slowly, so that
    Newton's steps from the beginning of the facet come up to the root and never pass it.

    Args:
        second: a facet that begins no deeper than the eccentric relief.
        fall_per_radian: of the eccentric relief, in mm, from zero.
        diameter: of the circle of the edges, in mm, above zero.

    Returns:
        The angle in radians; nothing where the facet ends before it lies deeper.

    Example:
        >>> from geometry.tooth.facets import facet_to
        >>> second = facet_to(0.1, 0.07, math.radians(25), 0.6, 12.0)
        >>> round(math.degrees(crossing_angle(second, 6 * math.tan(math.radians(8)), 12.0) or 0.0), 3)
        6.422
    """
    fall = require_not_negative("cam_throw", fall_per_radian)

    def under(turned: float) -> float:
        return second.drop(turned) - fall * turned

    steepness = fall / second.height
    sine = 2 * steepness / (1 + math.sqrt(1 + 4 * steepness * steepness))
    highest = min(max(second.angle - math.asin(sine), second.start), second.end)
    if under(highest) <= _NOTHING * require_positive("diameter", diameter):
        return None
    at = second.start
    if under(at) >= 0:
        return at
    for _ in range(_STEPS):
        leans = second.angle - at
        step = -under(at) / (second.height * math.sin(leans) / math.cos(leans) ** 2 - fall)
        if step <= _NOTHING:
            break
        at += step
    return at
