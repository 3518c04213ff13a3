"""The height between centres that puts a relief angle on a tooth."""

from __future__ import annotations

import math

from geometry.preconditions import refuse, require_positive, require_relief
from geometry.sentences import length

FROM_THE_AXIS = (
    ("wheel_head_height", "above the tool axis"),
    ("tooth_rest_height", "below the tool axis"),
)
"""Where each height stands on a right-hand tool: the land lies above the edge then. Derived; the other way its heel stands proud."""

SHOP_RULE = 0.0087
"""Inches of height for each inch of diameter and degree of relief in the US Navy's rule.

NAVEDTRA Machinery Repairman, chapter 10, setting the clearance angle. The exact factor at small angles is
pi / 360 = 0.0087266; the US Army's TC 9-524, chapter 5, prints the same rule with 0.0088.
"""


def setting_height(relief_angle: float, diameter: float) -> float:
    """The exact height ``(D / 2) sin(a)``.

    For a straight wheel ``diameter`` is the WHEEL's, because the touching point wanders round the
    wheel's rim; for a cup wheel with the tooth rest moved it is the TOOL's. Derived.

    Args:
        relief_angle: wanted at the edge, in radians, from zero to under a right angle.
        diameter: of the straight wheel, or of the tool under a cup wheel, in mm, above zero.

    Returns:
        The height in mm.

    Example:
        >>> round(setting_height(math.radians(7), 150.0), 4)
        9.1402
    """
    require_relief("relief_angle", relief_angle)
    return require_positive("diameter", diameter) / 2 * math.sin(relief_angle)


def relief_of_height(height: float, diameter: float, key: str = "wheel_head_height") -> float:
    """The relief angle that a height gives: ``asin(2 h / D)``, the inverse of ``setting_height``.

    Args:
        height: the height in mm, from zero to under the radius.
        diameter: of the straight wheel, or of the tool under a cup wheel, in mm, above zero.
        key: the quantity that a refusal is about.

    Returns:
        The angle in radians.

    Raises:
        GeometryError: when the height reaches the radius.

    Example:
        >>> round(math.degrees(relief_of_height(setting_height(0.1, 150.0), 150.0)), 6) == round(math.degrees(0.1), 6)
        True
    """
    radius = require_positive("diameter", diameter) / 2
    if not 0 <= height < radius:
        raise refuse(key, "A height of {height} reaches past the radius of {radius}; keep it under that.", {
            "height": length(height), "radius": length(radius)})  # fmt: skip
    return math.asin(height / radius)


def rule_height(relief_angle: float, diameter: float) -> float:
    """The height by the handbook rule ``0.0087 x degrees x diameter``.

    Published: NAVEDTRA Machinery Repairman, chapter 10, with the wheel's diameter for a straight wheel
    and the cutter's for a cup wheel.

    Args:
        relief_angle: wanted at the edge, in radians, from zero to under a right angle.
        diameter: of the straight wheel, or of the tool under a cup wheel, in mm, above zero.

    Returns:
        The height in mm.

    Example:
        >>> round(rule_height(math.radians(7), 150.0), 4)
        9.135
    """
    require_relief("relief_angle", relief_angle)
    return SHOP_RULE * math.degrees(relief_angle) * require_positive("diameter", diameter)
