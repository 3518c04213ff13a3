"""One relief of an edge, in the three views in which the trade gives it and an indicator reads it.

An edge lies at ``kappa`` to the axis: 0 is the land of a cylinder, a right angle is an end tooth.
Behind it the surface moves inward square to itself by ``k`` for each radian turned, and so by
``k / cos(kappa)`` toward the axis and by ``k / sin(kappa)`` along it:

    normal   square to the edge, what cuts             tan(a_n) = k / r
    radial   square to the axis                        tan(a_r) = tan(a_n) / cos(kappa)
    axial    on the cylinder through the point         tan(a_x) = tan(a_n) / sin(kappa)

ISO 3002-1 calls kappa the tool cutting edge angle, and the three the normal, side and back clearance.
The relations hold at the edge of an eccentric relief and of a flat. Derived; a numeric surface repeats
them in the tests.
"""

from __future__ import annotations

import math
from typing import Literal

from geometry.preconditions import refuse, require_finite, require_relief

View = Literal["normal", "radial", "axial"]

VIEWS: tuple[View, ...] = ("normal", "radial", "axial")
"""The three views: square to the edge, square to the axis, on the cylinder through the point."""

PLANES: dict[View, str] = {
    "normal": "square to the edge",
    "radial": "square to the axis",
    "axial": "along the axis",
}
"""Each view in words."""

FLAT_ANGLE = 1e-12
"""A kappa this near (rad) to a cylinder's or an end's is taken as one: far finer than any tool."""


def require_kappa(kappa: float) -> float:
    """Return the angle of an edge to the axis (radians), or raise unless it is from zero to a right angle."""
    if not -FLAT_ANGLE <= require_finite("kappa", kappa) <= math.pi / 2 + FLAT_ANGLE:
        raise refuse("kappa", "An edge lies between along the axis and square to it.")
    return min(max(kappa, 0.0), math.pi / 2)


def share(kappa: float, view: View) -> float:
    """How much of a move in a view goes square to the surface: 1, ``cos(kappa)`` or ``sin(kappa)``.

    Args:
        kappa: of the edge to the axis, in radians, from zero to a right angle.
        view: the move lies square to the edge (normal), toward the axis (radial) or along it (axial).

    Returns:
        The share from zero to one; exactly zero where the view shows nothing of that edge.

    Example:
        >>> share(math.pi / 2, "radial"), share(0.0, "axial"), share(0.3, "normal")
        (0.0, 0.0, 1.0)
    """
    angle = require_kappa(kappa)
    if view == "normal":
        return 1.0
    if view == "radial":
        return 0.0 if angle >= math.pi / 2 - FLAT_ANGLE else math.cos(angle)
    return 0.0 if angle <= FLAT_ANGLE else math.sin(angle)


def seen(normal_relief: float, kappa: float, view: View) -> float | None:
    """The relief of an edge as a view shows it.

    Args:
        normal_relief: square to the edge, in radians, from zero to under a right angle.
        kappa: of the edge to the axis, in radians, from zero to a right angle.
        view: normal, radial or axial.

    Returns:
        The angle in radians, or nothing where the view shows nothing of that edge: radial on an end
        tooth, axial on a cylinder.

    Example:
        >>> round(math.degrees(seen(math.radians(8), math.radians(41), "radial")), 3)
        10.549
    """
    along = share(kappa, view)
    slope = math.tan(require_relief("relief_angle", normal_relief))
    return math.atan(slope / along) if along > 0 else None


def normal_of(relief: float, kappa: float, view: View) -> float:
    """The relief square to the edge from the one that a view shows: the inverse of ``seen``.

    Args:
        relief: as the view shows it, in radians, from zero to under a right angle.
        kappa: of the edge to the axis, in radians, from zero to a right angle.
        view: normal, radial or axial.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: where the view shows nothing of that edge.

    Example:
        >>> round(math.degrees(normal_of(math.radians(10.5491), math.radians(41), "radial")), 3)
        8.0
    """
    along = share(kappa, view)
    if along == 0:
        raise refuse(
            "relief_angle",
            "This edge has no relief in that view: give it square to the edge.",
        )
    return math.atan(math.tan(require_relief("relief_angle", relief)) * along)


def turned_into(relief: float, kappa: float, given: View, wanted: View) -> float | None:
    """A relief given in one view, as another view shows it; nothing where that view shows nothing.

    Example:
        >>> round(math.degrees(turned_into(math.radians(12), math.radians(59), "axial", "normal")), 3)
        10.326
    """
    return relief if given == wanted else seen(normal_of(relief, kappa, given), kappa, wanted)


def on_helix(radial_relief: float, helix_angle: float) -> float:
    """The relief square to a helical land, from the one in the section square to the axis.

    Relation: ``tan = tan(a_r) / cos(psi)``, as ``cot(normal) = cot(orthogonal) cos(inclination)`` of
    ISO 3002-2. Derived: edge and heel are parallel, so the same fall comes over the land's width square to
    itself, which is the width round the tool times the cosine of the helix.

    Args:
        radial_relief: square to the axis, in radians, from zero to under a right angle.
        helix_angle: of the land from the axis, in radians, under a right angle either way.

    Returns:
        The angle in radians.

    Example:
        >>> round(math.degrees(on_helix(math.radians(8), math.radians(30))), 3)
        9.218
    """
    if not abs(require_finite("helix_angle", helix_angle)) < math.pi / 2:
        raise refuse("helix_angle", "A helix lies less than square to the axis.")
    return math.atan(math.tan(require_relief("relief_angle", radial_relief)) / math.cos(helix_angle))


def left_of_feed(axial_relief: float, feed: float, diameter: float) -> float:
    """What a feed leaves of a relief given on the cylinder through a point: ``a_x - atan(f / (pi D))``.

    Args:
        axial_relief: at that diameter, in radians, from zero to under a right angle.
        feed: along the axis, in mm for one turn, from zero.
        diameter: of the place on the edge, in mm, above zero.

    Returns:
        The angle in radians; below zero the surface rubs.

    Example:
        >>> round(math.degrees(left_of_feed(math.radians(12), 0.25, 6.0)), 4)
        11.2401
    """
    if require_finite("diameter", diameter) <= 0 or require_finite("feed", feed) < 0:
        raise refuse("feed", "A feed is zero or more, at a place that is off the axis.")
    return require_relief("relief_angle", axial_relief) - math.atan(feed / (math.pi * diameter))
