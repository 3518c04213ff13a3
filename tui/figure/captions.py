"""What stands under a drawing: the exaggeration, and what each kind of line is."""

from __future__ import annotations

from collections.abc import Iterable

from tui.view.lines import Line, Piece, line

GAP = "  "
LETTERS = "ox*="
"""What the profiles after the chosen one are drawn with."""


def exaggeration(times: int, width: int, *, nothing: bool = False) -> str:
    """How the relief is drawn, in words.

    Args:
        times: how many times as large as it is.
        width: cells that the words may take, where there is a shorter way to say it.
        nothing: whether there is none.

    Example:
        >>> exaggeration(8, 60), exaggeration(8, 24)
        ('relief drawn 8 times as deep, the circle too', 'relief drawn 8 times')
    """
    if nothing:
        return "no relief to draw"
    if times == 1:
        return "relief drawn true to size"
    short = f"relief drawn {times} times"
    longer = (f"{short} as deep, the circle too", f"{short} as deep")
    return next((said for said in longer if len(said) <= width), short)


def sample(mark: str, name: str) -> Line:
    """A kind of line with its name."""
    return line(Piece(mark, "quiet"), f" {name}")


def wrapped(items: Iterable[Line], width: int) -> list[Line]:
    """Items one after the other, none of them broken, as many to a line as it takes; one too long is cut."""
    lines: list[Line] = []
    for item in items:
        text = sum(len(piece.text) for piece in item)
        taken = sum(len(piece.text) for piece in lines[-1]) if lines else width
        if taken + len(GAP) + text <= width:
            lines[-1] = (*lines[-1], Piece(GAP), *item)
        else:
            lines.append(item if text <= width else line("".join(p.text for p in item)[:width]))
    return lines
