"""A wheel whose line of contact is inclined to the axis, ground along a helical land.

While the tool is led along its helix past a straight line that sinks by ``tan(tilt)``, the place ground on
the land wanders round by ``tan(helix)`` for each millimetre along the wheel. So the land falls evenly with the
turn, as under a cam, and

    tan(tilt) = tan(relief) tan(helix)

Derived; no published form of it was met. A straight flute cannot be relieved in this way.
"""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_angle, require_not_negative, require_relief

SMALLEST_HELIX = math.radians(0.001)
"""Less helix than this is a straight flute: its land would need a wheel metres wide; no source."""


def wheel_tilt(relief_angle: float, helix_angle: float) -> float:
    """The inclination of the line of contact that grinds a relief on a helical land.

    Args:
        relief_angle: at the edge, square to the axis, in radians, from zero to under a right angle.
        helix_angle: of the land on its outside, from the axis, in radians, from zero to under a right angle.

    Returns:
        The angle in radians, in the plane through axis and contact; deeper toward the heel.

    Example:
        >>> round(math.degrees(wheel_tilt(math.radians(8), math.radians(30))), 4)
        4.6389
    """
    require_relief("relief_angle", relief_angle)
    require_angle("helix_angle", helix_angle, -1e-12, math.pi / 2)
    return math.atan(math.tan(relief_angle) * math.tan(max(helix_angle, 0.0)))


def relief_of_tilt(tilt: float, helix_angle: float) -> float:
    """The relief that a tilt gives: ``tan(relief) = tan(tilt) / tan(helix)``, the inverse of ``wheel_tilt``.

    Args:
        tilt: of the line of contact, in radians, from zero to under a right angle.
        helix_angle: of the land on its outside, from the axis, in radians, above zero.

    Returns:
        The relief angle at the edge in radians.

    Raises:
        GeometryError: for a straight flute, which a tilt does not relieve.

    Example:
        >>> round(math.degrees(relief_of_tilt(wheel_tilt(0.14, 0.5), 0.5)), 6) == round(math.degrees(0.14), 6)
        True
    """
    require_relief("wheel_tilt", tilt)
    return math.atan2(math.tan(tilt), math.tan(require_helix(helix_angle)))


def require_helix(helix_angle: float) -> float:
    """Return the helix angle (radians), or raise for a straight flute."""
    if require_angle("helix_angle", helix_angle, -1e-12, math.pi / 2) < SMALLEST_HELIX:
        raise refuse(
            "helix_angle",
            "A straight flute cannot be relieved by inclining the wheel, as its land does not wander along it. Offset the "
            "wheel or the tooth rest instead.",
        )
    return helix_angle


def contact_length(land_arc: float, helix_angle: float) -> float:
    """How far the contact wanders along the wheel over a land: ``w / tan(helix)``.

    Args:
        land_arc: the land round the circle, square to the axis, in mm, from zero.
        helix_angle: of the land on its outside, from the axis, in radians, above zero.

    Returns:
        The length along the axis in mm; a narrower wheel leaves the heel unground.

    Example:
        >>> round(contact_length(2.0, math.radians(45)), 9)
        2.0
    """
    return require_not_negative("land_width", land_arc) / math.tan(require_helix(helix_angle))


def land_reached(contact: float, helix_angle: float) -> float:
    """How much land a contact of that length grinds: ``x tan(helix)``, the inverse of ``contact_length``.

    Args:
        contact: along the wheel, in mm, from zero.
        helix_angle: of the land on its outside, from the axis, in radians, above zero.

    Returns:
        The arc round the circle in mm.

    Example:
        >>> round(land_reached(2.0, math.radians(45)), 9)
        2.0
    """
    return require_not_negative("wheel_width", contact) * math.tan(require_helix(helix_angle))


def fall_along_wheel(contact: float, tilt: float) -> float:
    """How far the contact sinks toward the axis along the wheel: ``x tan(tilt)``.

    Args:
        contact: along the wheel from the edge, in mm, from zero.
        tilt: of the line of contact, in radians, from zero to under a right angle.

    Returns:
        The fall in mm.

    Example:
        >>> round(fall_along_wheel(10.0, math.radians(45)), 9)
        10.0
    """
    return require_not_negative("wheel_width", contact) * math.tan(require_relief("wheel_tilt", tilt))
