"""Retired names that older books and cards may still have, and what each is called now.

The one place that knows them: nothing reads a value under an old name, but the check of the files says the new one.
"""

from __future__ import annotations

from geometry.surfaces import SURFACES

_HEIGHTS = "wheel_head_height, or tooth_rest_height for a cup or dish wheel"

RETIRED = {
    "relief_style": "relief_form",
    "progressive": "eccentric",
    "relief-styles": "relief-forms",
    "tap-axial-relief": "lead-over-land",
    "axial_travel": "lead_over_land",
    "clearance-offset": "setting-height",
    "offset": _HEIGHTS,
    "shop_rule_offset": "rule_height",
    "radial_cam": "radial_throw",
    "axial_cam": "axial_throw",
    "square_cam": "square_throw",
    "needed_radial_cam": "needed_radial_throw",
    "needed_axial_cam": "needed_axial_throw",
    "cam_per": "throw_per",
    "cam_fall_per_turn": "throw_per_turn",
    "cam_lifts": "cam_throws",
    "dials": "graduations",
    "dial_fall": "indicator_fall",
    "progressive_relief_angle": "eccentric_relief_angle",
    "progressive_drop": "eccentric_drop",
    "progressive_misfit": "eccentric_misfit",
    "straight": "type-1-straight",
    "cup": "type-6-straight-cup or type-11-flaring-cup",
}
"""The new name of each old key, calculation or word."""


OF_NO_SURFACE = {
    "relief_angle": tuple(one.relief_key for one in SURFACES.values()),
    "secondary_relief_angle": tuple(one.second_key for one in SURFACES.values()),
}
"""Reliefs that belong to no surface, and under which keys a book writes them now."""


def no_surface(key: str) -> tuple[str, str]:
    """What is wrong with a relief of no surface, and what to do.

    Example:
        >>> no_surface("secondary_relief_angle")[0]
        'secondary_relief_angle does not say of which surface; no calculation is filled with it.'
    """
    *most, last = OF_NO_SURFACE[key]
    return (
        f"{key} does not say of which surface; no calculation is filled with it.",
        f"Write it as the relief of its surface: {', '.join(most)} or {last}.",
    )


def fix_for(name: str, near: str, otherwise: str) -> str:
    """What to do about a name that is not known.

    Args:
        name: as it stands in the file.
        near: a known name that is much like it; empty where there is none.
        otherwise: the advice where neither helps.

    Returns:
        A sentence.

    Example:
        >>> fix_for("axial_travel", "", "Remove it."), fix_for("pich", "pitch", "Remove it.")
        ('It is called lead_over_land now.', 'Did you mean pitch?')
    """
    if name in RETIRED:
        return f"It is called {RETIRED[name]} now."
    return f"Did you mean {near}?" if near else otherwise
