"""The limits of a reamer for the limits of its hole."""

from __future__ import annotations

import math

from geometry.fit.hole import MICRON, Limits
from geometry.preconditions import refuse
from geometry.sentences import length

CUTS_OVER = 0.15
"""What is kept of a hole's tolerance for what a reamer cuts over its own size."""

MADE_WITHIN = 0.35
"""What of a hole's tolerance a reamer is made within."""

READ = 0.0005
"""What a micrometer does not tell apart, in mm: half a micrometre. Common practice, no source."""

CLOSEST = 4 * MICRON
"""Limits of a hole, in mm apart, below which the rule leaves nothing to wear. Derived: 1 and 2 of 4 micrometres are taken."""


def reamer_limits(hole: Limits) -> Limits:
    """The limits of a new reamer.

    Relation: its upper limit lies 0.15 of the tolerance under the largest hole, its lower one 0.35 under that, each share
    rounded up to a whole micrometre. The rule of ISO 522 and DIN 1420, as two makers print it; the standard itself
    was not read.

    Args:
        hole: its limits in mm, 0.004 mm apart or more.

    Returns:
        The limits in mm.

    Raises:
        GeometryError: for a hole whose limits lie closer together, or the wrong way round.

    Example:
        >>> found = reamer_limits(Limits(10.04, 10.062))
        >>> round(found.low, 3), round(found.high, 3)
        (10.05, 10.058)
    """
    if not hole.width > 0:
        raise refuse("hole_upper_limit", "The largest hole must be larger than the smallest one.")
    if hole.width < CLOSEST - MICRON / 10:
        raise refuse(
            "hole_upper_limit",
            "Limits closer together than {least} leave a reamer nothing to wear; such a hole is honed.",
            {"least": length(CLOSEST)},
        )
    high = hole.high - _rounded_up(CUTS_OVER * hole.width)
    return Limits(high - _rounded_up(MADE_WITHIN * hole.width), high)


def _rounded_up(share: float) -> float:
    return math.ceil(share / MICRON - 1e-6) * MICRON
