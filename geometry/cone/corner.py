"""The relief of a rounded corner that is ground as one form: the cam moves all of it alike.

On a corner of radius c between land and end, the place whose tangent lies at the profile angle p to the axis has the radius

    r(p) = R - c (1 - cos p)

and where the cam goes inward by kr and back along the axis by ka for each radian, the surface sinks square to itself by
kr cos p + ka sin p, so that

    tan(relief square to the profile) = (kr cos p + ka sin p) / r(p)

A throw at the axis alone leaves the end of the corner without any: its normal relief is the radial one times the cosine of the
profile angle. All derived; a numeric surface repeats it in the tests.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from geometry.preconditions import refuse, require_positive, require_relief
from geometry.sentences import length

END = math.pi / 2
"""The profile angle of an end."""


@dataclass(frozen=True)
class Corner:
    """A rounded corner with its cam; lengths in mm, throws in mm for each radian turned.

    Attributes:
        radius: of the circle of the land.
        corner_radius: of the profile.
        inward: what the cam goes toward the axis.
        back: what it goes back along the axis.
    """

    radius: float
    corner_radius: float
    inward: float
    back: float

    def radius_at(self, profile_angle: float) -> float:
        """How far the place of a profile angle (rad) lies from the axis, in mm."""
        return self.radius - self.corner_radius * (1 - math.cos(profile_angle))

    def sinks(self, profile_angle: float) -> float:
        """How far the profile sinks square to itself at a profile angle (rad), in mm for each radian turned."""
        back = self.back * math.sin(profile_angle)
        return back if profile_angle >= END else self.inward * math.cos(profile_angle) + back

    def relief(self, profile_angle: float) -> float:
        """The relief square to the profile at a profile angle (rad), in radians."""
        return math.atan2(self.sinks(profile_angle), self.radius_at(profile_angle))

    def least(self, up_to: float) -> float:
        """The profile angle of the least relief between the land and another profile angle (rad), in radians.

        Derived: the slope of the relief along the profile falls all the way, so that the relief is least at an end.
        """
        return min((0.0, up_to), key=self.relief)


def corner(diameter: float, corner_radius: float, land_relief: float, end_relief: float = 0.0) -> Corner:
    """A corner by the reliefs at its two ends.

    Args:
        diameter: of the circle of the land, in mm, above zero.
        corner_radius: of the profile, in mm, above zero, under half of the diameter.
        land_relief: square to the axis, where the corner meets the land, in radians, from zero to under a right angle.
        end_relief: along the axis, where the corner meets the end, in radians, in the same range.

    Raises:
        GeometryError: for a corner that reaches the axis.

    Example:
        >>> made = corner(20.0, 3.0, math.radians(8))
        >>> round(math.degrees(made.relief(math.radians(60))), 3)
        4.726
    """
    radius = require_positive("diameter", diameter) / 2
    if require_positive("corner_radius", corner_radius) >= radius:
        raise refuse(
            "corner_radius",
            "A corner of {corner} reaches the axis of a tool of {diameter}; it must be under half of the diameter.",
            {"corner": length(corner_radius), "diameter": length(diameter)},
        )
    return Corner(
        radius,
        corner_radius,
        radius * math.tan(require_relief("relief_angle", land_relief)),
        (radius - corner_radius) * math.tan(require_relief("end_relief_angle", end_relief)),
    )
