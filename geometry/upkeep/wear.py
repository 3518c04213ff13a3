"""A worn edge: how much has to come off its face or its flank until the wear is gone.

Wear on the flank leaves a strip that runs on the circle of the cut and has no relief any more. It reaches from the worn
edge, on the face, to where the sound flank begins, ``v`` behind it. In the section square to the axis, with the relief
``a`` and the rake ``g`` there, the sharp edge stood ``v / (cot(a) - tan(g))`` further out. All of it is derived.
"""

from __future__ import annotations

import math

from geometry.preconditions import (
    refuse,
    require_finite,
    require_not_negative,
    require_positive,
    require_relief,
)
from geometry.sentences import length

ROUNDING = 1e-9
"""The share of an infeed that is no pass of its own, but a rounding."""

MOST_PASSES = 1_000_000
"""More passes than this are a slip in the infeed."""


def face_stock(wear: float, rake_angle: float) -> float:
    """What comes off the face, square to it, until the wear is gone: ``v cos(g)``.

    Args:
        wear: width of the worn strip, in mm, from zero.
        rake_angle: of the face in the plane square to the axis, in radians, under a right angle either way.

    Returns:
        The stock in mm.

    Example:
        >>> round(face_stock(0.3, math.radians(10)), 5)
        0.29544
    """
    return require_not_negative("wear_land", wear) * math.cos(_rake(rake_angle))


def flank_stock(wear: float, relief_angle: float) -> float:
    """What comes off the flank, square to it, until it passes through the worn edge: ``v sin(a)``.

    Args:
        wear: width of the worn strip, in mm, from zero.
        relief_angle: of the flank square to the edge, in radians, from zero to under a right angle.

    Returns:
        The stock in mm.

    Example:
        >>> round(flank_stock(0.3, math.radians(10)), 5)
        0.05209
    """
    return require_not_negative("wear_land", wear) * math.sin(require_relief("relief_angle", relief_angle))


def depth_of_wear(wear: float, relief_angle: float, rake_angle: float) -> float:
    """How far the edge has gone back from the circle it cut on: ``v tan(a) / (1 - tan(a) tan(g))``.

    Args:
        wear: width of the worn strip, in mm, from zero.
        relief_angle: in the section that is looked at, in radians, from zero to under a right angle.
        rake_angle: in the same section, in radians.

    Returns:
        The depth in mm in that section.

    Raises:
        GeometryError: when relief and rake leave no metal between them.

    Example:
        >>> round(depth_of_wear(0.3, math.radians(10), 0.0), 5)
        0.0529
    """
    slope = math.tan(require_relief("relief_angle", relief_angle))
    wedge = 1 - slope * math.tan(_rake(rake_angle))
    if wedge <= 1e-9:
        raise refuse("rake_angle", "Rake and relief together leave no metal at the edge; measure both again.")
    return require_not_negative("wear_land", wear) * slope / wedge


def flank_stock_for(depth: float, relief_angle: float, rake_angle: float) -> float:
    """What comes off the flank until the edge lies so much deeper: ``h cos(a + g) / cos(g)``.

    The edge slides down the face, which leans by the rake; a flank that moves by ``s`` takes it along the face by
    ``s / cos(a + g)``, of which ``cos(g)`` goes square to the cut.

    Args:
        depth: square to the cut, in mm, from zero.
        relief_angle: in the section square to the edge, in radians, from zero to under a right angle.
        rake_angle: in the same section, in radians.

    Returns:
        The stock square to the flank, in mm.

    Example:
        >>> round(flank_stock_for(0.1, 0.0, math.radians(20)), 9)
        0.1
    """
    lean = _rake(rake_angle)
    share = math.cos(require_relief("relief_angle", relief_angle) + lean) / math.cos(lean)
    if share <= 1e-9:
        raise refuse("rake_angle", "Rake and relief together leave no metal at the edge; measure both again.")
    return require_not_negative("depth", depth) * share


def passes_for(stock: float, infeed: float) -> tuple[int, float]:
    """How many passes take a stock off, and what is left for the last of them.

    Args:
        stock: in mm, from zero.
        infeed: of each pass but the last, in mm, above zero.

    Returns:
        The passes, and the infeed of the last one; zero of both where there is nothing to take off.

    Raises:
        GeometryError: when the infeed is so fine that nobody would live to see the end.

    Example:
        >>> passes_for(0.25, 0.1)[0], round(passes_for(0.25, 0.1)[1], 9), passes_for(0.3, 0.1)[0]
        (3, 0.05, 3)
    """
    shares = require_not_negative("stock", stock) / require_positive("infeed", infeed)
    if shares > MOST_PASSES:
        raise refuse(
            "infeed",
            "With an infeed of {infeed} the stock of {stock} would take more than a million passes; look at the unit.",
            {"infeed": length(infeed), "stock": length(stock)},
        )
    count = math.ceil(shares * (1 - ROUNDING))
    return count, stock - (count - 1) * infeed if count else 0.0


def _rake(rake_angle: float) -> float:
    if not abs(require_finite("rake_angle", rake_angle)) < math.pi / 2:
        raise refuse("rake_angle", "A rake is less than square either way.")
    return rake_angle
