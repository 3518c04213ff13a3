"""What is left of an edge after its face, or the end of its tool, has been ground back."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from geometry.preconditions import (
    GeometryError,
    require_finite,
    require_not_negative,
    require_relief,
)
from geometry.tooth import eccentric, flat

MOST = 2_000_000
"""More sharpenings than this are not counted; a tool of 1 m ground back a thousandth at a time has fewer."""


@dataclass(frozen=True)
class Edge:
    """An edge after its face has been ground back.

    Attributes:
        diameter: of the circle it now runs on, in mm.
        land_angle: from the edge to the heel, in radians.
        relief_angle: right at the edge, in radians; below zero where the surface behind it rises.
    """

    diameter: float
    land_angle: float
    relief_angle: float


def stock_along(stock: float, rake_angle: float, relief_angle: float) -> float:
    """How far round the tool the edge goes back, for a stock taken square to the face.

    Relation: ``s / (cos(g) - sin(g) tan(a))``. Derived: the face leans by the rake ``g`` and the surface behind
    the edge sinks by the relief ``a``, so the new edge lies where the face, moved by ``s``, meets that surface.

    Args:
        stock: square to the face, in mm, from zero.
        rake_angle: of the face at the edge, in radians; positive where it undercuts the edge.
        relief_angle: at the edge, square to the axis, in radians, from zero to under a right angle.

    Returns:
        The way in mm along the circle of the edges.

    Raises:
        GeometryError: when face and surface fall away so steeply that no edge is between them.

    Example:
        >>> round(stock_along(0.1, math.radians(15), 0.0), 5)
        0.10353
    """
    share = math.cos(require_finite("rake_angle", rake_angle)) - math.sin(rake_angle) * math.tan(
        require_relief("relief_angle", relief_angle)
    )
    if share <= 0:
        raise GeometryError(
            "Rake and relief together leave no metal at the edge; measure both again.", "rake_angle"
        )
    return require_not_negative("stock_per_sharpening", stock) / share


def radius_lost(stock: float, relief_angle: float) -> float:
    """What grinding the face of an eccentrically relieved tooth takes off the radius: ``t tan(a)``.

    The edge goes back along the cam, which falls ``k theta`` while the circle runs ``R theta``. Derived.

    Args:
        stock: how far the edge goes back along the circle, in mm, from zero.
        relief_angle: at the edge, in radians, from zero to under a right angle.

    Returns:
        The loss in mm; the diameter loses twice as much.

    Raises:
        GeometryError: outside those ranges.

    Example:
        >>> radius_lost(0.5, math.atan(0.25))
        0.125
    """
    return require_not_negative("stock_per_sharpening", stock) * math.tan(
        require_relief("relief_angle", relief_angle)
    )


def ground_back(angle: float, diameter: float, relief_angle: float, land_angle: float, form: str) -> Edge:
    """The edge after its face has been ground back by ``angle``.

    An eccentric relief grows a little toward the heel, ``tan(a') = k / r``. A flat one shrinks by just the
    angle ground away, ``a' = a - theta``, because one straight facet keeps its direction while the tangent
    of the circle turns. Derived.

    Args:
        angle: how far the edge goes back round the tool, in radians, from zero to the land angle.
        diameter: of the circle of the edges before, in mm, above zero.
        relief_angle: at the edge before, in radians, from zero to under a right angle.
        land_angle: from edge to heel before, in radians.
        form: ``"eccentric"`` or ``"flat"``.

    Returns:
        The edge that is left.

    Raises:
        GeometryError: when nothing of the land is left, or the surface passes the centre.

    Example:
        >>> round(math.degrees(ground_back(0.1, 12.0, math.radians(8), 0.4, "flat").relief_angle), 3)
        2.27
    """
    if require_not_negative("stock_per_sharpening", angle) > require_finite("land_angle", land_angle):
        raise GeometryError("So much off the face leaves no land; take less.", "stock_per_sharpening")
    if form == "eccentric":
        fallen = eccentric.drop(angle, relief_angle, diameter)
        relief = eccentric.local_relief(angle, relief_angle, diameter)
    elif form == "flat":
        fallen, relief = flat.drop(angle, relief_angle, diameter), relief_angle - angle
    else:
        raise GeometryError("A relief is eccentric or flat.", "relief_form")
    return Edge(diameter - 2 * fallen, land_angle - angle, relief)


def size_lost_on_end(stock: float, taper_ratio: float) -> float:
    """What grinding the end takes off the diameter of a back-tapered tool: stock times taper.

    Derived from the meaning of taper.

    Args:
        stock: ground off along the axis, in mm, from zero.
        taper_ratio: how much the diameter falls for each unit of length, from zero.

    Returns:
        The loss of diameter in mm.

    Raises:
        GeometryError: when either is below zero.

    Example:
        >>> round(size_lost_on_end(2.0, 0.001), 9)
        0.002
    """
    return require_not_negative("stock_per_sharpening", stock) * require_not_negative(
        "taper_ratio", taper_ratio
    )


def most(allowed: Callable[[int], bool]) -> int:
    """The greatest count that is still allowed, when every smaller one is too.

    Args:
        allowed: whether so many sharpenings keep within every limit.

    Returns:
        The count, from zero to ``MOST``; zero also when not even none is allowed.

    Example:
        >>> most(lambda count: 0.75 * count <= 3.0)
        4
    """
    low, high = 0, 1
    while high < MOST and allowed(high):
        low, high = high, high * 2
    high = min(high, MOST)
    while low < high - 1:
        middle = (low + high) // 2
        low, high = (middle, high) if allowed(middle) else (low, middle)
    return high if high == MOST and allowed(MOST) else low


def taper_from_book(back_taper: float) -> float:
    """A back taper given as millimetres over 100 mm, as a ratio.

    Args:
        back_taper: how much smaller the diameter is 100 mm behind the point, in mm, from zero.

    Returns:
        The ratio.

    Example:
        >>> taper_from_book(0.05)
        0.0005
    """
    return require_not_negative("back_taper", back_taper) / 100
