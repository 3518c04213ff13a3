"""What a round wheel grinds on a helical land, when its lowest line is inclined to the axis of the tool.

The relation of ``geometry.setting.tilt`` holds for a straight line of contact in the plane of the axis. A
wheel is a cylinder, and led along the helix it touches a little beside that line. The plane through both axes
taken as ``x`` (out) and ``z`` (along), a point of the wheel lies at

    A - Rw cos(phi) cos(t)  out,      -Rw sin(phi)  to the side,

with ``A`` the distance of the wheel's axis there. It touches where the wheel's normal is square to the helical
motion of lead ``2 pi p``, ``p = R / tan(helix)``:

    tan(phi) = p sin(t) / A

There the surface left on the tool has the wheel's own normal; the relief is the angle, square to the axis,
between it and the radius of the tool. For a wheel without end ``sin(relief) = tan(t) / tan(helix)``; for one
without width it is the straight line's. Derived; a search of the least distance repeats it in the tests.
"""

from __future__ import annotations

import math

from geometry.preconditions import require_positive, require_relief
from geometry.setting.tilt import require_helix

_HALVINGS = 80
"""As often as it takes to find a distance to the last digit of a float."""


def round_wheel_relief(
    tilt: float, helix_angle: float, diameter: float, wheel_diameter: float
) -> float | None:
    """The relief at the edge that a round wheel really grinds.

    Args:
        tilt: of the wheel's axis to that of the tool, in radians, from zero to under a right angle.
        helix_angle: of the land on its outside, from the axis, in radians, above zero.
        diameter: of the circle of the edges, in mm, above zero.
        wheel_diameter: of the wheel, in mm, above zero.

    Returns:
        The angle in radians, square to the axis; nothing where the wheel touches beside the tool and grinds none.

    Example:
        >>> from geometry.setting.tilt import wheel_tilt
        >>> lean = wheel_tilt(math.radians(20), math.radians(30))
        >>> round(math.degrees(round_wheel_relief(lean, math.radians(30), 12.0, 150.0) or 0.0), 2)
        21.34
    """
    radius, wheel = (
        require_positive("diameter", diameter) / 2,
        require_positive("wheel_diameter", wheel_diameter) / 2,
    )
    lean = require_relief("wheel_tilt", tilt)
    lead = radius / math.tan(require_helix(helix_angle)) * math.sin(lean)

    def touches(beyond: float) -> tuple[float, float, float]:
        """The angle round the wheel, and the place on the tool, where the wheel's axis is ``beyond`` away."""
        distance = wheel * math.cos(lean) + beyond
        phi = math.atan2(lead, distance)
        # A - Rw cos(phi) cos(t), without the difference of two large numbers.
        return phi, beyond + 2 * wheel * math.cos(lean) * math.sin(phi / 2) ** 2, -wheel * math.sin(phi)

    low, high = 0.0, radius
    if math.hypot(*touches(low)[1:]) > radius:
        return None
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        low, high = (middle, high) if math.hypot(*touches(middle)[1:]) < radius else (low, middle)
    phi, out, aside = touches(low)
    return math.atan2(math.tan(phi), math.cos(lean)) - math.atan2(aside, out)


def round_wheel_tilt(
    relief_angle: float, helix_angle: float, diameter: float, wheel_diameter: float
) -> float:
    """The tilt at which a round wheel grinds a relief: the inverse of ``round_wheel_relief``.

    Args:
        relief_angle: at the edge, square to the axis, in radians, from zero to under a right angle.
        helix_angle: of the land on its outside, from the axis, in radians, above zero.
        diameter: of the circle of the edges, in mm, above zero.
        wheel_diameter: of the wheel, in mm, above zero.

    Returns:
        The angle in radians, never more than a straight line of contact would need.

    Example:
        >>> lean = round_wheel_tilt(math.radians(20), math.radians(30), 12.0, 150.0)
        >>> round(math.degrees(round_wheel_relief(lean, math.radians(30), 12.0, 150.0) or 0.0), 6)
        20.0
    """
    slope = math.tan(require_relief("relief_angle", relief_angle)) * math.tan(require_helix(helix_angle))
    low, high = 0.0, math.atan(slope)
    for _ in range(_HALVINGS):
        middle = (low + high) / 2
        found = round_wheel_relief(middle, helix_angle, diameter, wheel_diameter)
        low, high = (middle, high) if found is not None and found < relief_angle else (low, middle)
    return low
