"""Tables of numbers in lines."""

from __future__ import annotations

from collections.abc import Sequence

from rich.cells import cell_len

from tui.view.lines import Line, Piece, fit, line


def table(heading: Sequence[str], rows: Sequence[Sequence[str]], gap: str = "  ") -> list[Line]:
    """A heading and rows; the first column stands at the left, all others at the right.

    Args:
        heading: a word over each column.
        rows: as many cells each.
        gap: between columns.

    Example:
        >>> from tui.view.lines import text_of
        >>> [text_of(one) for one in table(("", "drop"), [("edge", "0.000 mm")])]
        ['          drop', 'edge  0.000 mm']
    """
    widths = [max(cell_len(row[i]) for row in (heading, *rows)) for i in range(len(heading))]
    return [
        line(Piece(_row(heading, widths, gap), "quiet")),
        *(line(_row(row, widths, gap)) for row in rows),
    ]


def _row(cells: Sequence[str], widths: Sequence[int], gap: str) -> str:
    return gap.join(
        fit(cell, width, right=place > 0)
        for place, (cell, width) in enumerate(zip(cells, widths, strict=True))
    )
