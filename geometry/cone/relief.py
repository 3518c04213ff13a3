"""Relief on a cone, made by a cam that draws the land inward and back along the axis.

The half angle of the cone is counted from its axis: nought is a cylinder, a right angle a flat face.
A radial cam counts above zero inward, an axial cam above zero away from the point. Both cams fall
evenly, so the land behind a straight edge stays a straight line that sinks square to itself:

    square cam = radial cam cos(half) + axial cam sin(half)
    tan(relief at radius r) = square cam for each radian / r

The relief is therefore least at the largest diameter and grows toward the point. All of it is derived.
"""

from __future__ import annotations

import math

from geometry.checking import refuse, require_finite, require_positive, require_relief

NOTHING = 1e-15
"""A sine or cosine under this is that of a cylinder or a face whose angle came in rounded; no source."""

ROUNDING = 1e-15
"""What is left of two cams that undo each other, for its size, is the rounding of floating point."""


def half_angle_parts(included_angle: float) -> tuple[float, float]:
    """The cosine and the sine of the half angle, exactly nought for a face and for a cylinder.

    Args:
        included_angle: of the cone, in radians, from zero (cylinder) to half a turn (face).

    Returns:
        Cosine and sine of half of it: the share of a radial and of an axial move that goes square
        to the cone.

    Raises:
        GeometryError: outside that range.

    Example:
        >>> half_angle_parts(math.pi)
        (0.0, 1.0)
        >>> half_angle_parts(0.0)
        (1.0, 0.0)
    """
    if not -1e-9 <= require_finite("included_angle", included_angle) <= math.pi + 1e-9:
        raise refuse(
            "included_angle", "The included angle of a cone lies between that of a cylinder and a face."
        )
    radial, axial = math.sin((math.pi - included_angle) / 2), math.sin(included_angle / 2)
    return (radial if radial > NOTHING else 0.0), (axial if axial > NOTHING else 0.0)


def radians_of_cam(cam_per: str, flutes: float = 1) -> float:
    """The angle that the tool turns while the cam makes the travel that was given.

    Args:
        cam_per: ``"turn"`` or ``"tooth"``.
        flutes: how many teeth there are, from one; only a cam counted per tooth needs it.

    Returns:
        A whole turn, or the pitch of the teeth, in radians.

    Example:
        >>> round(radians_of_cam("tooth", 4) / math.pi, 6)
        0.5
    """
    if cam_per == "turn":
        return 2 * math.pi
    if cam_per == "tooth":
        return 2 * math.pi / require_positive("flutes", flutes)
    raise refuse("cam_per", "A cam is counted per turn or per tooth.")


def square_cam(radial_cam: float, axial_cam: float, included_angle: float) -> float:
    """How far a cam moves square to the surface of the cone.

    Relation: ``radial cos(half) + axial sin(half)``. Derived.

    Args:
        radial_cam: inward, in mm over any turn; below zero it moves outward.
        axial_cam: away from the point, in mm over the same turn; below zero it moves toward the point.
        included_angle: of the cone, in radians, from zero to half a turn.

    Returns:
        The travel into the tool in mm, over the same turn; below zero the land rises behind the edge.

    Example:
        >>> round(square_cam(0.3, 0.4, math.radians(82)), 5)
        0.48884
    """
    radial_share, axial_share = half_angle_parts(included_angle)
    inward = require_finite("radial_cam", radial_cam) * radial_share
    away = require_finite("axial_cam", axial_cam) * axial_share
    # Two cams that undo each other leave a last digit that would pass for a relief.
    cancelled = abs(inward + away) <= ROUNDING * (abs(inward) + abs(away))
    return 0.0 if cancelled else inward + away


def relief_angle(square_cam_per_radian: float, diameter: float) -> float:
    """The relief square to the cone at one diameter: ``atan(square cam / r)``.

    Args:
        square_cam_per_radian: from ``square_cam``, in mm for each radian turned.
        diameter: of the place on the edge, in mm, above zero.

    Returns:
        The angle in radians, between the land and the cone that the edge sweeps; below zero the land
        stands proud.

    Example:
        >>> round(math.degrees(relief_angle(square_cam(0.3, 0.4, math.radians(82)), 20.0)), 4)
        2.7986
    """
    return math.atan2(
        require_finite("square_cam", square_cam_per_radian), require_positive("diameter", diameter) / 2
    )


def square_cam_for(wanted_relief: float, diameter: float) -> float:
    """The cam square to the cone that gives a relief at a diameter: the inverse of ``relief_angle``.

    Args:
        wanted_relief: square to the cone, in radians, from zero to under a right angle.
        diameter: of the place on the edge, in mm, above zero.

    Returns:
        The travel in mm for each radian turned.

    Example:
        >>> round(square_cam_for(math.atan(0.5), 20.0), 9)
        5.0
    """
    return (
        math.tan(require_relief("relief_angle", wanted_relief)) * require_positive("diameter", diameter) / 2
    )


def radial_cam_for(square: float, axial_cam: float, included_angle: float) -> float | None:
    """The radial cam that makes up a square cam beside a given axial cam.

    Args:
        square: the cam wanted square to the cone, in mm over any turn.
        axial_cam: already there, away from the point, in mm over the same turn.
        included_angle: of the cone, in radians, from zero to half a turn.

    Returns:
        The radial cam in mm over the same turn, or nothing on a face, where no radial cam gives relief.

    Example:
        >>> round(radial_cam_for(0.4888365, 0.4, math.radians(82)) or 0.0, 5)
        0.3
    """
    radial_share, axial_share = half_angle_parts(included_angle)
    return _share_of(square - axial_cam * axial_share, radial_share)


def axial_cam_for(square: float, radial_cam: float, included_angle: float) -> float | None:
    """The axial cam that makes up a square cam beside a given radial cam.

    Args:
        square: the cam wanted square to the cone, in mm over any turn.
        radial_cam: already there, inward, in mm over the same turn.
        included_angle: of the cone, in radians, from zero to half a turn.

    Returns:
        The axial cam in mm over the same turn, or nothing on a cylinder, where no axial cam gives relief.

    Example:
        >>> axial_cam_for(0.5, 0.0, 0.0) is None
        True
    """
    radial_share, axial_share = half_angle_parts(included_angle)
    return _share_of(square - radial_cam * radial_share, axial_share)


def axial_relief(square_cam_per_radian: float, included_angle: float, diameter: float) -> float:
    """The relief seen on the cylinder through a place of the edge, as the lip relief of a drill.

    On a cylinder of radius r the land falls back along the axis by ``square cam / sin(half)`` for each
    radian, so ``tan(relief along the axis) = square cam / (r sin(half))``. Derived.

    Args:
        square_cam_per_radian: from ``square_cam``, in mm for each radian turned.
        included_angle: of the cone, in radians, from zero (no such relief) to half a turn.
        diameter: of the place on the edge, in mm, above zero.

    Returns:
        The angle in radians, from the plane square to the axis. On a cylinder it is a right angle, as
        there the land falls clear of its whole length.

    Example:
        >>> round(math.degrees(axial_relief(0.5, math.pi, 10.0)), 4) == round(math.degrees(math.atan(0.1)), 4)
        True
    """
    _, axial_share = half_angle_parts(included_angle)
    radius = require_positive("diameter", diameter) / 2
    return math.atan2(require_finite("square_cam", square_cam_per_radian), radius * axial_share)


def _share_of(rest: float, share: float) -> float | None:
    if share == 0:
        return None
    found = rest / share
    return found if math.isfinite(found) else None
