"""The welcome of the first start: five lines on what to do."""

from __future__ import annotations

from tui.keys import Keymap
from tui.view.lines import Line, Piece, fit, line

HEIGHT = 6
"""Lines, the heading among them."""

LEAST_ROWS = 16
"""Rows of a page below which the list needs them all."""


def welcome(keymap: Keymap, width: int) -> list[Line]:
    """The five lines under their heading.

    Args:
        keymap: the keys in force.
        width: in cells.
    """
    open_it, calculate, change, explain, back = (
        keymap.told(name) for name in ("go-on", "calculate", "change", "help", "back")
    )
    said = (
        "Type a part of the tool or material; the list follows.",
        f"Up, Down and {open_it}: what it should have, with sources.",
        f"{calculate} gives settings and readings for what you measured.",
        f"{change} writes your own shop's values over those of the book.",
        f"{explain} explains what you see, with small drawings; {back} leaves.",
    )
    head = line(Piece(fit("── Your first time here " + "─" * width, width).replace("…", "─"), "rule"))
    return [head, *(line(Piece(f" {n} ", "key"), fit(text, width - 3)) for n, text in enumerate(said, 1))]
