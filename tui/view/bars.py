"""The title line and the key bar of every screen."""

from __future__ import annotations

from tui.actions import Where, action, actions_of
from tui.keys import Keymap
from tui.view.lines import Line, Piece, fit, line, padded, spread_out, width_of

GAP = "  "


def banner(title: str, state: str, width: int) -> Line:
    """The first line: what is shown at the left, its state at the right."""
    right = line(Piece(f"  {state}", "quiet"))
    return spread_out(line(Piece(fit(title, max(width - width_of(right), 1)).rstrip(), "head")), right, width)


def book_title(keymap: Keymap, problems: int, drafts: int) -> str:
    """The program's name, and what wants to be looked at, if anything.

    Args:
        keymap: the keys in force.
        problems: of the files of the book.
        drafts: left unsaved by an earlier run.
    """
    said = [
        f"{count} {what}{'s' if count > 1 else ''} ({keymap.first_key(action(key))})"
        for count, what, key in ((problems, "problem", "findings"), (drafts, "unsaved draft", "drafts"))
        if count
    ]
    return ": ".join(["Heelclear: the book", " and ".join(said)]) if said else "Heelclear: the book"


ALWAYS = ("help", "back", "back-out", "take")
"""Actions that the key bar shows first of all, however narrow it is: without them one is lost."""


def key_bar(where: Where, keymap: Keymap, width: int) -> Line:
    """The last line: each key with what it does, as many as fit whole."""
    offered = [one for one in actions_of(where) if one.in_bar]
    taken, room = set(), width + len(GAP)
    for act in sorted(offered, key=lambda one: one.id not in ALWAYS):
        wanted = len(keymap.first_key(act)) + len(act.title) + 1 + len(GAP)
        if wanted <= room:
            taken.add(act.id)
            room -= wanted
    pieces: list[Piece] = []
    for act in offered:
        if act.id in taken:
            pieces += [
                Piece((GAP if pieces else "") + keymap.first_key(act), "key"),
                Piece(f" {act.title}"),
            ]
    return padded(tuple(pieces), width)
