"""The first and the last line of every screen: where you are, and which keys help."""

from __future__ import annotations

from tui.actions import Where, actions_of
from tui.keys import Keymap
from tui.view.lines import Line, Piece, fit, line, padded, spread_out, width_of


def banner(title: str, state: str, width: int) -> Line:
    """The first line: what is shown at the left, its state at the right."""
    right = line(Piece(f"  {state}", "quiet"))
    return spread_out(line(Piece(fit(title, max(width - width_of(right), 1)).rstrip(), "head")), right, width)


def key_bar(where: Where, keymap: Keymap, width: int) -> Line:
    """The last line: each key with what it does, as many as fit whole."""
    pieces: list[Piece] = []
    taken = 0
    for action in (one for one in actions_of(where) if one.in_bar):
        key = keymap.first_key(action)
        wanted = len(key) + len(action.title) + 1 + (2 if pieces else 0)
        if taken + wanted > width:
            continue
        pieces += [Piece(("  " if pieces else "") + key, "key"), Piece(f" {action.title}")]
        taken += wanted
    return padded(tuple(pieces), width)
