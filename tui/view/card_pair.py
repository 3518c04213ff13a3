"""A name and its value on one line, where there is room."""

from __future__ import annotations

from tui.view.lines import Line, Piece, line, spread_out, wrap


def pair(title: str, value: str, width: int) -> list[Line]:
    """A title with its value at the right edge; on two lines where one does not hold them."""
    if len(title) + 1 + len(value) <= width:
        return [spread_out(line(title), line(Piece(value, "strong")), width)]
    return [*wrap(title, width), *wrap(value, width, "strong", first="  ", rest="  ")]
