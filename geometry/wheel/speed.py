"""How fast the rim of a wheel runs."""

from __future__ import annotations

from geometry.preconditions import require_not_negative, require_positive


def surface_speed(wheel_diameter: float, rotational_speed: float) -> float:
    """The speed of the rim: ``v = omega D / 2``, which is ``pi D n`` with n in turns.

    Args:
        wheel_diameter: in mm, above zero.
        rotational_speed: in rad/s, from zero.

    Returns:
        The speed in mm/s.

    Example:
        >>> import math
        >>> round(surface_speed(150.0, 3000 * 2 * math.pi / 60) / 1000, 3)
        23.562
    """
    return (
        require_positive("wheel_diameter", wheel_diameter)
        / 2
        * require_not_negative("rotational_speed", rotational_speed)
    )


def rotational_speed(wheel_diameter: float, speed: float) -> float:
    """The spindle speed that gives a surface speed: ``omega = 2 v / D``, the inverse of ``surface_speed``.

    Args:
        wheel_diameter: in mm, above zero.
        speed: of the rim, in mm/s, from zero.

    Returns:
        The rotational speed in rad/s.

    Example:
        >>> rotational_speed(200.0, 1000.0)
        10.0
    """
    return (
        2 * require_not_negative("surface_speed", speed) / require_positive("wheel_diameter", wheel_diameter)
    )
