"""Several drawings of one result on one part of a screen: over one another, or beside each other."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import partial

from geometry.calculation import Result
from library.units.system import Display
from tui.figure.alphabet import Alphabet
from tui.figure.profile import profile_lines
from tui.figure.side import side_lines
from tui.figure.tooth import tooth_lines
from tui.view.lines import EMPTY, Line, beside, filled

Drawing = Callable[[int, int, Alphabet], list[Line]]
"""Draws itself on so many columns and rows."""

NARROWEST = 28
"""Columns of the narrowest drawing."""

LOWEST = 7
"""Rows of the lowest drawing."""

GAP = "  "


def drawings(result: Result, display: Display) -> list[Drawing]:
    """What can be drawn of a result, the most telling first.

    Args:
        result: what a calculation found.
        display: the units of the readings.
    """
    found: list[Drawing] = []
    if result.figure is not None:
        found.append(partial(tooth_lines, result.figure))
    if result.side is not None:
        found.append(partial(side_lines, result.side))
    if result.figure is not None and result.figure.curves:
        found.append(partial(profile_lines, result.figure, result.stations, display))
    return found


def stacked(wanted: Sequence[Drawing], columns: int, rows: int, alphabet: Alphabet) -> list[Line]:
    """Drawings over one another, as many as have room; at most ``rows`` lines.

    Each is about half as high as it is wide, which is square to the eye.
    """
    count = min(len(wanted), (rows + 1) // (LOWEST + 1))
    if not count or columns < NARROWEST:
        return []
    share = (rows + 1) // count - 1
    height = min(share, max(columns // 2, LOWEST + 2))
    lines: list[Line] = []
    for drawing in wanted[:count]:
        drawn = drawing(columns, height, alphabet)
        lines += [EMPTY, *drawn] if lines and drawn else drawn
    return lines[:rows]


def abreast(wanted: Sequence[Drawing], columns: int, rows: int, alphabet: Alphabet) -> list[Line]:
    """Drawings beside each other, as many as have room; at most ``rows`` lines."""
    count = min(len(wanted), (columns + len(GAP)) // (NARROWEST + len(GAP)))
    if not count or rows < LOWEST:
        return []
    width = (columns + len(GAP)) // count - len(GAP)
    height = min(rows, max(width // 2, LOWEST + 2))
    page: list[Line] = []
    for place, drawing in enumerate(wanted[:count]):
        drawn = filled(drawing(width, height, alphabet), height)
        page = beside(page, drawn, place * (width + len(GAP)) - len(GAP), GAP) if page else drawn
    return page
