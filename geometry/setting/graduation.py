"""A graduation has divisions: what a wanted setting becomes on it, and what the rounding costs."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from geometry.preconditions import require_finite, require_positive

CLOSE_ENOUGH = 1e-12
"""The share of a step at which the search for the angle that a graduation really gives is over."""


@dataclass(frozen=True)
class GraduationSetting:
    """A wanted setting on a graduation.

    Attributes:
        divisions: whole divisions to turn from zero; below zero the other way.
        set_value: what those divisions give, in mm or radians.
        error: ``set_value`` less what was wanted, in mm or radians.
    """

    divisions: int
    set_value: float
    error: float


def on_graduation(wanted: float, division: float) -> GraduationSetting:
    """The whole number of divisions nearest to a wanted setting.

    Args:
        wanted: in mm or radians.
        division: of the graduation, in the same unit, above zero.

    Returns:
        The divisions, what they give, and the error, at most half a division.

    Example:
        >>> on_graduation(0.173, 0.01).divisions
        17
    """
    require_positive("division", division)
    divisions = math.floor(require_finite("setting", wanted) / division + 0.5)
    return GraduationSetting(divisions, divisions * division, divisions * division - wanted)


def cost_in_angle(
    setting_of: Callable[[float], float], angle: float, set_value: float, step: float = 1e-4
) -> float | None:
    """How far an angle is off because the graduation gives ``set_value`` and not the exact setting.

    Solves ``setting_of(angle + error) = set_value`` by the secant method.

    Args:
        setting_of: the setting (mm or rad) that an angle (rad) asks for.
        angle: the angle wanted, in radians.
        set_value: what the graduation really gives.
        step: how far from ``angle`` the search begins, in radians.

    Returns:
        The error in radians, or nothing when the setting does not depend on the angle.

    Example:
        >>> offset = lambda a: 75 * math.sin(a)
        >>> round(math.degrees(cost_in_angle(offset, math.radians(7), 9.14)), 5)
        -0.00015
    """
    here, there = angle, angle + step
    miss_here, miss_there = setting_of(here) - set_value, setting_of(there) - set_value
    for _ in range(50):
        slope = miss_there - miss_here
        if slope == 0:
            return 0.0 if miss_there == 0 else None
        here, there = there, there - miss_there * (there - here) / slope
        if abs(there - here) <= CLOSE_ENOUGH:
            return there - angle
        miss_here, miss_there = miss_there, setting_of(there) - set_value
    return None
