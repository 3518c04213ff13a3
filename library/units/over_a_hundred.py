"""The title of what is told over a length in millimetres, for who works in inches."""

from __future__ import annotations

from library.units.system import Display

HUNDRED = 100.0
"""Millimetres over which the book tells a taper."""


def title_over(title: str, display: Display) -> str:
    """A title, with the length over which its quantity is told in inches too, for who works in them.

    Args:
        title: of any quantity.
        display: the units of lengths.

    Example:
        >>> title_over("Back taper over 100 mm", Display("in")), title_over("Diameter", Display("in"))
        ('Back taper over 100 mm (3.94 in)', 'Diameter')
    """
    over = f"{HUNDRED:g} mm"
    return title if display.lengths == "mm" else title.replace(over, f"{over} ({HUNDRED / 25.4:.2f} in)")
