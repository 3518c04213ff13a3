"""The first steps: a line for each thing that a new hand has not done yet."""

from __future__ import annotations

from collections.abc import Sequence

from tui.keys import Keymap
from tui.view.lines import Line, Piece, fit, line

LEAST_ROWS = 16
"""Rows of a page below which the list needs them all."""


def welcome(keymap: Keymap, width: int, left: Sequence[str]) -> list[Line]:
    """The steps that are left under their heading; nothing where none is.

    Args:
        keymap: the keys in force.
        width: in cells.
        left: the steps, by name.
    """
    if not left:
        return []
    key = keymap.told
    said = {
        "open": f"Type a part of tool or material; {key('go-on')} opens the entry.",
        "calculate": f"{key('calculate')} gives settings and readings for what you measured.",
        "card": f"{key('begin-card')} begins a job card with it; {key('cards')} lists all cards.",
        "menu": f"{key('menu')} is all that can be done; {key('change')} your own values; {key('help')} help.",
        "demo": "heelclear demo, at the shell, opens a shop to try it on.",
    }
    head = f"── First steps; {key('menu')} puts them away " + "─" * width
    return [
        line(Piece(fit(head, width).replace("…", "─"), "rule")),
        *(line(Piece(" - ", "key"), fit(said[one], width - 3)) for one in left),
    ]
