"""How wide a land is, beside the diameter of its tool: where a slip of the unit or of the decimal point is likely."""

from __future__ import annotations

NARROWEST = 0.015
"""A land from edge to heel is hardly less of the diameter than this. Common practice, no source."""

NARROWEST_MARGIN = 0.1
"""In mm: a margin, or a first facet that is measured for a land, is hardly narrower. Common practice, no source."""

MARGINS = frozenset({"land", "bevel", "end"})
"""Surfaces of which the land may be as narrow as a margin or as a first facet."""

USUAL = (0.03, 0.5)
"""The shares of the diameter that lands from edge to heel lie in. Common practice, no source."""


def is_hardly_a_land(width: float, diameter: float, surface: str = "") -> bool:
    """Whether a land is so narrow that it is hardly one.

    Args:
        width: from edge to heel, in mm, from zero.
        diameter: over the edges, in mm, above zero.
        surface: the word of the surface that it is the land of; empty where nobody knows.

    Example:
        >>> is_hardly_a_land(0.14, 19.05, "cone"), is_hardly_a_land(0.14, 19.05, "land")
        (True, False)
    """
    least = NARROWEST_MARGIN if surface in MARGINS or not surface else NARROWEST * diameter
    return width < min(least, NARROWEST * diameter)


def is_usual(width: float, diameter: float) -> bool:
    """Whether a land is as wide as lands are, from edge to heel.

    Args:
        width: in mm.
        diameter: over the edges, in mm, above zero.

    Example:
        >>> is_usual(0.14 * 25.4, 19.05), is_usual(0.14, 19.05)
        (True, False)
    """
    least, most = USUAL
    return least * diameter <= width <= most * diameter
