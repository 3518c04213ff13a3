"""Flat facets of a drill point ground by roll and swivel of a work head, and what comes of them at lip and centre.

The axis of the drill is z, its tip up; the lip runs outward along x, behind it lies y. The flank is the plane through the
lip that falls by ``tan(a)`` along y: with ``c = cot(point / 2)`` and ``t = tan(a)`` its normal is ``(c, t, 1)``. The work
head turns the drill about z until that normal lies level, and swivels it until it points square at the wheel. All derived
from this one vector; the tests find the same by turning a drill with rotation matrices.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.drill.point import slope_of_point
from geometry.preconditions import (
    GeometryError,
    refuse,
    require_angle,
    require_finite,
    require_not_negative,
    require_positive,
)
from geometry.sentences import Rounding, angle

QUARTER = math.pi / 2

HAIR = 1e-9
"""What a fall or a roll may be below none by its last digit."""

LEAST_AXIS = math.radians(0.1)
"""The least angle (rad) of the axis to the wheel that is a point at all; far less than any drill has."""


@dataclass(frozen=True)
class Facet:
    """One flat flank of a two-lipped drill.

    Attributes:
        slope: how far the lip rises for each millimetre toward the axis: ``cot(point / 2)``.
        fall: how far the flank falls behind the lip for each millimetre: the tangent of the lip relief.

    Example:
        >>> flank = facet(math.radians(118), math.radians(12))
        >>> round(math.degrees(flank.roll), 2), round(math.degrees(flank.axis_to_wheel), 2)
        (19.48, 57.49)
    """

    slope: float
    fall: float

    @property
    def roll(self) -> float:
        """How far the drill is turned about its axis, from the lip level: ``atan(tan(k) tan(a))``, in radians."""
        return math.atan2(self.fall, self.slope)

    @property
    def axis_to_wheel(self) -> float:
        """The angle of the axis to the face of the wheel: ``atan(1 / sqrt(c^2 + t^2))``, in radians."""
        return math.atan2(1.0, math.hypot(self.slope, self.fall))

    @property
    def point_angle(self) -> float:
        """The whole point angle, in radians."""
        return 2 * math.atan2(1.0, self.slope)

    @property
    def square_fall(self) -> float:
        """How far the flank falls for each millimetre square to the lip: the tangent of the relief there, ``fall / hypot(1, slope)``."""
        return self.fall / math.hypot(1.0, self.slope)

    @property
    def lip_relief(self) -> float:
        """The relief behind a lip in line with the axis, on the cylinder, in radians."""
        return math.atan(self.fall)


def _relief(lip_relief: float) -> float:
    return math.tan(require_angle("lip_relief_angle", lip_relief, -1e-12, QUARTER))


def _roll(roll: float) -> float:
    return require_angle("roll_angle", roll, -1e-12, QUARTER)


def facet(point_angle: float, lip_relief: float, ahead: float = 0.0) -> Facet:
    """The facet of a point and of the lip relief that it shows on the cylinder at the corner.

    A lip ahead of the axis by an angle ``d`` shows ``tan(a) = t cos(d) + c sin(d)`` there, so that the facet falls by
    ``t = (tan(a) - c sin(d)) / cos(d)``. Derived.

    Args:
        point_angle: the whole angle, in radians, above zero to half a turn.
        lip_relief: on the cylinder at the corner, in radians, from zero to under a right angle.
        ahead: of the lip, from ``lip_ahead``, in radians; zero for a lip in line with the axis.

    Raises:
        GeometryError: when even a facet that is not rolled at all shows more than that.

    Example:
        >>> found = facet(math.radians(118), math.radians(12), lip_ahead(1.5, 10.0))
        >>> round(math.degrees(found.lip_relief), 2), round(math.degrees(found.roll), 2)
        (7.06, 11.64)
    """
    slope, wanted = slope_of_point(point_angle), _relief(lip_relief)
    fall = (wanted - slope * math.sin(ahead)) / math.cos(ahead)
    if fall < -HAIR:
        raise _too_little(math.atan(slope * math.sin(ahead)))
    return Facet(slope, max(fall, 0.0))


def _too_little(least: float) -> GeometryError:
    return refuse(
        "lip_relief_angle",
        "The lip lies so far ahead of the axis that a facet without any roll shows {least} of lip relief at the corner; give "
        "more than that, or measure the web again.",
        {"least": angle(least, Rounding.UP)},
    )


def facet_of_roll(point_angle: float, roll: float) -> Facet:
    """The facet that a roll gives on a point: ``tan(a) = cot(point / 2) tan(roll)``.

    Example:
        >>> round(math.degrees(facet_of_roll(math.radians(118), math.radians(19.482)).lip_relief), 2)
        12.0
    """
    slope = slope_of_point(point_angle)
    if slope == 0:
        raise refuse(
            "roll_angle",
            "A flat end is rolled a quarter turn whatever its relief is. Give the lip relief instead.",
        )
    return Facet(slope, slope * math.tan(_roll(roll)))


def facet_of_setting(axis_to_wheel: float, roll: float) -> Facet:
    """The facet that a roll and a swivel give: ``c = cos(roll) / tan(axis)``, ``t = sin(roll) / tan(axis)``.

    Example:
        >>> found = facet_of_setting(math.radians(57.4875), math.radians(19.482))
        >>> round(math.degrees(found.point_angle), 1), round(math.degrees(found.lip_relief), 1)
        (118.0, 12.0)
    """
    steep = _cotangent(axis_to_wheel)
    return Facet(steep * math.cos(_roll(roll)), steep * math.sin(roll))


def facet_of_axis(axis_to_wheel: float, lip_relief: float, ahead: float = 0.0) -> Facet:
    """The facet of a swivel and of the lip relief at the corner: ``sin(roll + d) = tan(a) tan(axis)``. Derived.

    Two facets answer that where the point is nearly flat and the lip ahead of the axis; the sharper point is taken.

    Args:
        axis_to_wheel: the angle of the axis to the face of the wheel, in radians.
        lip_relief: on the cylinder at the corner, in radians.
        ahead: of the lip, from ``lip_ahead``, in radians.

    Raises:
        GeometryError: when no point has that relief so square to the wheel, or none so little with the lip so far ahead.
    """
    steep, fall = _cotangent(axis_to_wheel), _relief(lip_relief)
    if fall > steep:
        raise refuse(
            "axis_to_wheel_angle",
            "So square to the wheel no facet has a lip relief of {relief}; the axis may stand up to {most} to it.",
            {"relief": angle(lip_relief), "most": angle(QUARTER - lip_relief, Rounding.DOWN)},
        )
    if ahead == 0:
        return Facet(math.sqrt((steep - fall) * (steep + fall)), fall)
    roll = math.asin(fall / steep) - ahead
    if roll < -HAIR:
        raise _too_little(math.atan(steep * math.sin(ahead)))
    return facet_of_setting(axis_to_wheel, max(roll, 0.0))


def _cotangent(axis_to_wheel: float) -> float:
    if not LEAST_AXIS <= require_finite("axis_to_wheel_angle", axis_to_wheel) <= QUARTER + 1e-12:
        raise refuse(
            "axis_to_wheel_angle",
            "The axis of the drill stands from {low} to {high} to the face of the wheel.",
            {"low": angle(LEAST_AXIS, Rounding.UP), "high": angle(QUARTER)},
        )
    return math.tan(max(QUARTER - axis_to_wheel, 0.0))


def chisel_angle(first: Facet, second: Facet | None = None) -> float | None:
    """The chisel edge angle, counted the sharp way, where the flanks meet at the centre.

    Two facets meet where ``c x + t y = 0``: at ``atan(c / t)`` to the lip. With second facets that begin on the line
    through the axis each half of the edge lies between the first facet of one side and the second of the other, at
    ``atan(2 c / (t + t2))``, and the four meet in a tip. Derived.

    Args:
        first: the facet at the lip.
        second: the steeper one behind it, where there is one.

    Returns:
        The angle in radians; nothing for a flat end without relief, where nothing meets.

    Example:
        >>> round(math.degrees(chisel_angle(facet(math.radians(118), math.radians(12)))), 2)
        70.52
    """
    fall = first.fall if second is None else (first.fall + second.fall) / 2
    return None if fall == first.slope == 0 else math.atan2(first.slope, fall)


def second_for_chisel(first: Facet, chisel_edge_angle: float) -> float:
    """The lip relief (rad) of a second facet that makes a chisel edge angle (rad, the sharp way); below zero for none."""
    return math.atan(2 * first.slope / math.tan(chisel_edge_angle) - first.fall)


def corner_relief(flank: Facet, web_thickness: float, diameter: float) -> float:
    """The lip relief at the corner, on the cylinder, of a lip that lies half a web ahead of the axis.

    There the way round the drill goes outward as well, where the flank falls by the slope of the point:
    ``tan = (x t + h c) / R`` with ``h`` half the web and ``x = sqrt(R^2 - h^2)``. Derived.

    Args:
        flank: the facet at the lip.
        web_thickness: at the point, in mm, from zero to under the diameter.
        diameter: of the drill, in mm, above zero.

    Example:
        >>> round(math.degrees(corner_relief(facet(math.radians(118), math.radians(12)), 0.0, 10.0)), 9)
        12.0
    """
    half, radius = require_web(web_thickness, diameter) / 2, diameter / 2
    out = math.sqrt((radius - half) * (radius + half))
    return math.atan((out * flank.fall + half * flank.slope) / radius)


def for_corner_relief(wanted: float, point_angle: float, web_thickness: float, diameter: float) -> float:
    """The lip relief (rad) to set for one at the corner: the inverse of ``corner_relief``; below zero for none."""
    half, radius = require_web(web_thickness, diameter) / 2, diameter / 2
    out = math.sqrt((radius - half) * (radius + half))
    return math.atan((radius * _relief(wanted) - half * slope_of_point(point_angle)) / out)


def lip_ahead(web_thickness: float, diameter: float) -> float:
    """How far a lip lies ahead of the axis, as an angle at the corner: ``asin(web / D)``, in radians. Derived.

    Example:
        >>> round(math.degrees(lip_ahead(1.5, 10.0)), 4)
        8.6269
    """
    return math.asin(require_web(web_thickness, diameter) / diameter)


def require_web(web_thickness: float, diameter: float) -> float:
    """Return the web (mm), or raise unless it is from zero to under the diameter (mm)."""
    if require_not_negative("web_thickness", web_thickness) >= require_positive("diameter", diameter):
        raise refuse("web_thickness", "The web must be thinner than the drill. Measure both again.")
    return web_thickness


def first_facet_width(flank: Facet, web_thickness: float) -> float:
    """How wide the first facet is, square to the lip, where the second begins on the line through the axis.

    Seen along the axis it is half the web; the facet is inclined, and so wider: ``h / cos(a_n)``. Derived.

    Example:
        >>> round(first_facet_width(facet(math.radians(118), 0.0), 2.0), 9)
        1.0
    """
    return require_not_negative("web_thickness", web_thickness) / 2 * math.hypot(1.0, flank.square_fall)
