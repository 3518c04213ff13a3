"""Relief on a cone, made by a cam that draws the land inward and back along the axis.

The half angle of the cone is counted from its axis: 0 is a cylinder, a right angle a flat face.
A radial throw counts above zero inward, an axial throw above zero away from the point. Both cams move
evenly, so the land behind a straight edge stays a straight line that sinks square to itself:

    square throw = radial throw cos(half) + axial throw sin(half)
    tan(relief at radius r) = square throw for each radian / r

The relief is therefore least at the largest diameter and grows toward the point. All of it is derived.
"""

from __future__ import annotations

import math
from functools import lru_cache

from geometry.preconditions import refuse, require_finite, require_positive, require_relief

NOTHING = 1e-15
"""A sine or cosine under this is that of a cylinder or a face whose angle came in rounded; no source."""

ROUNDING = 1e-15
"""What is left of two cams that undo each other, for its size, is the rounding of floating point."""


def half_angle_parts(included_angle: float) -> tuple[float, float]:
    """The cosine and the sine of the half angle, exactly 0 for a face and for a cylinder.

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
    return _parts(included_angle)


@lru_cache(maxsize=256)
def _parts(included_angle: float) -> tuple[float, float]:
    """Cosine and sine of the half angle; a tool has few cones and asks for each of them many times."""
    radial, axial = math.sin((math.pi - included_angle) / 2), math.sin(included_angle / 2)
    return (radial if radial > NOTHING else 0.0), (axial if axial > NOTHING else 0.0)


def radians_of_throw(throw_per: str, flutes: float = 1) -> float:
    """The angle that the tool turns while the cam makes the travel that was given.

    Args:
        throw_per: ``"turn"`` or ``"tooth"``.
        flutes: how many teeth there are, from one; only a cam counted per tooth needs it.

    Returns:
        A whole turn, or the pitch of the teeth, in radians.

    Example:
        >>> round(radians_of_throw("tooth", 4) / math.pi, 6)
        0.5
    """
    if throw_per == "turn":
        return 2 * math.pi
    if throw_per == "tooth":
        return 2 * math.pi / require_positive("flutes", flutes)
    raise refuse("throw_per", "A throw is counted per turn or per tooth.")


def square_throw(radial_throw: float, axial_throw: float, included_angle: float) -> float:
    """How far a cam moves square to the surface of the cone.

    Relation: ``radial cos(half) + axial sin(half)``. Derived.

    Args:
        radial_throw: inward, in mm over any turn; below zero it moves outward.
        axial_throw: away from the point, in mm over the same turn; below zero it moves toward the point.
        included_angle: of the cone, in radians, from zero to half a turn.

    Returns:
        The travel into the tool in mm, over the same turn; below zero the land rises behind the edge.

    Example:
        >>> round(square_throw(0.3, 0.4, math.radians(82)), 5)
        0.48884
    """
    radial_share, axial_share = half_angle_parts(included_angle)
    inward = require_finite("radial_throw", radial_throw) * radial_share
    away = require_finite("axial_throw", axial_throw) * axial_share
    # Two cams that undo each other leave a last digit that would pass for a relief.
    cancelled = abs(inward + away) <= ROUNDING * (abs(inward) + abs(away))
    return 0.0 if cancelled else inward + away


def relief_angle(square_throw_per_radian: float, diameter: float) -> float:
    """The relief square to the cone at one diameter: ``atan(square throw / r)``.

    Args:
        square_throw_per_radian: from ``square_throw``, in mm for each radian turned.
        diameter: of the place on the edge, in mm, above zero.

    Returns:
        The angle in radians, between the land and the cone that the edge sweeps; below zero the land
        stands proud.

    Example:
        >>> round(math.degrees(relief_angle(square_throw(0.3, 0.4, math.radians(82)), 20.0)), 4)
        2.7986
    """
    return math.atan2(
        require_finite("square_throw", square_throw_per_radian), require_positive("diameter", diameter) / 2
    )


def square_throw_for(wanted_relief: float, diameter: float) -> float:
    """The cam square to the cone that gives a relief at a diameter: the inverse of ``relief_angle``.

    Args:
        wanted_relief: square to the cone, in radians, from zero to under a right angle.
        diameter: of the place on the edge, in mm, above zero.

    Returns:
        The travel in mm for each radian turned.

    Example:
        >>> round(square_throw_for(math.atan(0.5), 20.0), 9)
        5.0
    """
    return (
        math.tan(require_relief("relief_angle", wanted_relief)) * require_positive("diameter", diameter) / 2
    )


def radial_throw_for(square: float, axial_throw: float, included_angle: float) -> float | None:
    """The radial throw that makes up a square throw beside a given axial throw.

    Args:
        square: the cam wanted square to the cone, in mm over any turn.
        axial_throw: already there, away from the point, in mm over the same turn.
        included_angle: of the cone, in radians, from zero to half a turn.

    Returns:
        The radial throw in mm over the same turn, or nothing on a face, where no radial throw gives relief.

    Example:
        >>> round(radial_throw_for(0.4888365, 0.4, math.radians(82)) or 0.0, 5)
        0.3
    """
    radial_share, axial_share = half_angle_parts(included_angle)
    return _share_of(square - axial_throw * axial_share, radial_share)


def axial_throw_for(square: float, radial_throw: float, included_angle: float) -> float | None:
    """The axial throw that makes up a square throw beside a given radial throw.

    Args:
        square: the cam wanted square to the cone, in mm over any turn.
        radial_throw: already there, inward, in mm over the same turn.
        included_angle: of the cone, in radians, from zero to half a turn.

    Returns:
        The axial throw in mm over the same turn, or nothing on a cylinder, where no axial throw gives relief.

    Example:
        >>> axial_throw_for(0.5, 0.0, 0.0) is None
        True
    """
    radial_share, axial_share = half_angle_parts(included_angle)
    return _share_of(square - radial_throw * radial_share, axial_share)


def axial_relief(square_throw_per_radian: float, included_angle: float, diameter: float) -> float:
    """The relief seen on the cylinder through a place of the edge, as the lip relief of a drill.

    On a cylinder of radius r the land falls back along the axis by ``square throw / sin(half)`` for each
    radian, so ``tan(relief along the axis) = square throw / (r sin(half))``. Derived.

    Args:
        square_throw_per_radian: from ``square_throw``, in mm for each radian turned.
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
    return math.atan2(require_finite("square_throw", square_throw_per_radian), radius * axial_share)


def _share_of(rest: float, share: float) -> float | None:
    if share == 0:
        return None
    found = rest / share
    return found if math.isfinite(found) else None
