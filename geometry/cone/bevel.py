"""The bevel lead of a reamer: its length, where it starts, and what a worn corner takes off it.

The lead is a cone at the bevel angle to the axis, between the diameter at its start and the circle of the lands. All
relations are derived from its section through the axis.
"""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_angle, require_not_negative, require_positive
from geometry.sentences import Rounding, length

LEAST_BEVEL = math.radians(0.01)
"""A lead flatter than this (rad) is no bevel but a taper of the body; far flatter than any reamer's."""


def require_bevel(bevel_angle: float) -> float:
    """Return the bevel angle (radians), or raise unless it lies between a hundredth of a degree and a right angle."""
    return require_angle("bevel_angle", bevel_angle, LEAST_BEVEL, math.pi / 2)


def bevel_length(start_diameter: float, diameter: float, bevel_angle: float) -> float:
    """How long the lead is along the axis: ``(D - d) / (2 tan(bevel))``.

    Args:
        start_diameter: at the front of the lead, in mm, above zero and under the diameter.
        diameter: of the circle of the lands, in mm, above zero.
        bevel_angle: of one side to the axis, in radians, between zero and a right angle.

    Returns:
        The length in mm.

    Example:
        >>> round(bevel_length(10.0, 12.0, math.radians(45)), 9)
        1.0
    """
    require_positive("diameter", diameter)
    if not 0 < start_diameter < diameter:
        raise refuse(
            "bevel_start_diameter",
            "The lead must start below the diameter of the reamer, {diameter}, and not on the axis. Measure it again.",
            {"diameter": length(diameter)},
        )
    return (diameter - start_diameter) / 2 / math.tan(require_bevel(bevel_angle))


def start_diameter(lead_length: float, diameter: float, bevel_angle: float) -> float:
    """The diameter at the front of a lead: ``D - 2 L tan(bevel)``, the inverse of ``bevel_length``.

    Args:
        lead_length: along the axis, in mm, above zero.
        diameter: of the circle of the lands, in mm, above zero.
        bevel_angle: of one side to the axis, in radians, between zero and a right angle.

    Returns:
        The diameter in mm.

    Raises:
        GeometryError: when so long a lead would end in a point.

    Example:
        >>> round(start_diameter(1.0, 12.0, math.radians(45)), 9)
        10.0
    """
    require_positive("diameter", diameter)
    require_positive("bevel_length", lead_length)
    slope = math.tan(require_bevel(bevel_angle))
    found = diameter - 2 * lead_length * slope
    if found > 0:
        return found
    raise refuse(
        "bevel_length",
        "A lead of that length would run the reamer out to a point; it can be up to {most} long at that angle.",
        {"most": length(diameter / 2 / slope, Rounding.DOWN)},
    )


def stock_for_wear(wear: float, bevel_angle: float) -> float:
    """How far back along the axis a worn lead is ground until its corner is sharp again: ``w / tan(bevel)``.

    Where the corner was, the worn tooth lies ``w`` inside the circle. The lead moved back by ``s`` lies there
    ``s tan(bevel)`` inside it; the wear is gone when that is ``w``. Derived.

    Args:
        wear: at the corner, on the radius, in mm, from zero.
        bevel_angle: of one side to the axis, in radians, between zero and a right angle.

    Returns:
        The stock along the axis, in mm.

    Example:
        >>> round(stock_for_wear(0.1, math.radians(45)), 9)
        0.1
    """
    return require_not_negative("corner_wear", wear) / math.tan(require_bevel(bevel_angle))


def square_stock(axial_stock: float, bevel_angle: float) -> float:
    """The same stock square to the lead, as a wheel takes it that is fed so: ``s sin(bevel)``.

    Args:
        axial_stock: along the axis, in mm, from zero.
        bevel_angle: of one side to the axis, in radians, between zero and a right angle.

    Example:
        >>> round(square_stock(1.0, math.radians(30)), 9)
        0.5
    """
    return require_not_negative("axial_stock", axial_stock) * math.sin(require_bevel(bevel_angle))
