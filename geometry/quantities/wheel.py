"""Words for the grinding wheel and how fast it runs."""

from __future__ import annotations

import math

from geometry.quantities.quantity import Quantity, length
from geometry.sentences import Kind, Rounding

_RPM = 2 * math.pi / 60
_METRES_PER_SECOND = 1000.0

ROWS = (
    length(
        "wheel_diameter",
        "Wheel diameter",
        "The diameter of the grinding wheel as it is now, worn and dressed.",
        "Across the rim of the stopped wheel; for a cup wheel across its outside.",
        1.0,
        1000.0,
    ),
    length(
        "wheel_new_diameter",
        "Wheel diameter when new",
        "The diameter that the grinding wheel had when new, at which its rating in turns is marked.",
        "Read it off the wheel's blotter or marking; a worn wheel is turned no faster than it was when new.",
        1.0,
        1000.0,
    ),
    Quantity(
        "rotational_speed",
        "Rotational speed",
        Kind.ROTATION,
        "How many turns the spindle makes in a minute.",
        "With a tachometer, or from the spindle plate for the pulley step in use.",
        0.0,
        200_000 * _RPM,
    ),
    Quantity(
        "surface_speed",
        "Surface speed",
        Kind.SPEED,
        "How fast the rim of the wheel passes the work.",
        "Worked out from wheel diameter and spindle speed, rounded up, so that it is never told slower than it is.",
        0.0,
        300 * _METRES_PER_SECOND,
        rounding=Rounding.UP,
    ),
    Quantity(
        "rated_speed",
        "Rated surface speed",
        Kind.SPEED,
        "The greatest surface speed that the maker of the wheel allows.",
        "Read it off the wheel's blotter or marking; never guess it.",
        0.0,
        300 * _METRES_PER_SECOND,
        other_kinds=("rated_rotational_speed",),
    ),
    Quantity(
        "rated_rotational_speed",
        "Rated rotational speed",
        Kind.ROTATION,
        "The greatest spindle speed that the maker of the wheel allows.",
        "Read it off the wheel's blotter or marking; never guess it.",
        0.0,
        200_000 * _RPM,
        other_kinds=("rated_speed",),
    ),
    Quantity(
        "highest_rotational_speed",
        "Highest spindle speed",
        Kind.ROTATION,
        "The fastest that the spindle may turn with this wheel at its rating.",
        "Worked out from the rating and the wheel's diameter, rounded down.",
        0.0,
        1_000_000 * _RPM,
        rounding=Rounding.DOWN,
    ),
)
