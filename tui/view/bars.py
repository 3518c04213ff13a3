"""The title line and the key bar of every screen."""

from __future__ import annotations

from tui.actions import Where, actions_of
from tui.keys import Keymap
from tui.view.lines import Line, Piece, fit, line, padded, spread_out, width_of

GAP = "  "


def banner(title: str, state: str, width: int) -> Line:
    """The first line: what is shown at the left, its state at the right."""
    right = line(Piece(f"  {state}", "quiet"))
    return spread_out(line(Piece(fit(title, max(width - width_of(right), 1)).rstrip(), "head")), right, width)


ALWAYS = ("help", "back", "back-out", "take")
"""Actions that the key bar shows first of all, however narrow it is: without them one is lost."""


def key_bar(where: Where, keymap: Keymap, width: int) -> Line:
    """The last line: each key with what it does, as many as fit whole."""
    offered = [action for action in actions_of(where) if action.in_bar]
    taken, room = set(), width + len(GAP)
    for action in sorted(offered, key=lambda one: one.id not in ALWAYS):
        wanted = len(keymap.first_key(action)) + len(action.title) + 1 + len(GAP)
        if wanted <= room:
            taken.add(action.id)
            room -= wanted
    pieces: list[Piece] = []
    for action in offered:
        if action.id in taken:
            pieces += [
                Piece((GAP if pieces else "") + keymap.first_key(action), "key"),
                Piece(f" {action.title}"),
            ]
    return padded(tuple(pieces), width)
