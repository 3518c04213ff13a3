"""The types of grinding wheels that a tool room sharpens with, named as ISO 525 numbers them."""

from __future__ import annotations

STRAIGHT = "type-1-straight"
"""ISO 525 type 1, straight wheel: it grinds on its rim, and its own diameter counts."""

STRAIGHT_CUP = "type-6-straight-cup"
"""ISO 525 type 6, straight cup wheel: it grinds on the flat end of its rim."""

FLARING_CUP = "type-11-flaring-cup"
"""ISO 525 type 11, flaring (taper) cup wheel: it grinds on the flat end of its rim."""

DISH = "type-12-dish"
"""ISO 525 type 12, dish wheel: flat like a saucer, with a thin rim that goes into a flute."""

ON_THE_END = (STRAIGHT_CUP, FLARING_CUP, DISH)
"""Types that grind on the flat end of the rim, where the height of the tooth rest gives the relief."""

TYPES = (STRAIGHT, *ON_THE_END)
"""Every type, by number."""


def title(wheel_type: str) -> str:
    """The type as it is spoken.

    Example:
        >>> title(STRAIGHT_CUP)
        'Straight cup wheel'
    """
    return wheel_type.split("-", 2)[2].replace("-", " ").capitalize() + " wheel"
