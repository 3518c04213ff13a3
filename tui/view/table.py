"""Tables of numbers in lines."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from rich.cells import cell_len

from tui.view.lines import EMPTY, Line, Piece, fit, line


def table(
    heading: Sequence[str], rows: Sequence[Sequence[str]], gap: str = "  ", width: int | None = None
) -> list[Line]:
    """A heading and rows; the first column stands at the left, all others at the right.

    Args:
        heading: a word over each column.
        rows: as many cells each.
        gap: between columns.
        width: cells that the table may take. Where it needs more, its headings are wrapped; where that
            is not enough, its columns come in several tables, the first column in each.

    Example:
        >>> from tui.view.lines import text_of
        >>> [text_of(one) for one in table(("", "drop"), [("edge", "0.000 mm")])]
        ['          drop', 'edge  0.000 mm']
        >>> [text_of(one) for one in table(("", "facet angle"), [("facet 1", "8.00 deg")], width=18)]
        ['            facet', '            angle', 'facet 1  8.00 deg']
    """
    widths = [max(cell_len(row[i]) for row in (heading, *rows)) for i in range(len(heading))]
    if width is None or _total(widths, gap) <= width:
        return _drawn([[one] for one in heading], rows, widths, gap)
    narrow = [
        max(_longest_word(heading[i]), *(cell_len(row[i]) for row in rows)) for i in range(len(heading))
    ]
    lines: list[Line] = []
    for columns in _groups(narrow, gap, width):
        heads = [textwrap.wrap(heading[i], max(narrow[i], 1)) for i in columns]
        part = _drawn(heads, [[row[i] for i in columns] for row in rows], [narrow[i] for i in columns], gap)
        lines += [EMPTY, *part] if lines else part
    return lines


def _groups(widths: Sequence[int], gap: str, width: int) -> list[list[int]]:
    """The columns of each table: the first one, and as many of the others as fit, but one at least."""
    groups = [[0]]
    for column in range(1, len(widths)):
        wanted = [*groups[-1], column]
        if len(wanted) > 2 and _total([widths[i] for i in wanted], gap) > width:
            groups.append([0, column])
        else:
            groups[-1] = wanted
    return groups


def _drawn(
    heads: Sequence[Sequence[str]], rows: Sequence[Sequence[str]], widths: Sequence[int], gap: str
) -> list[Line]:
    """The lines of one table; the lines of each head stand at the foot of the heading."""
    height = max(map(len, heads))
    above = [["", *[""] * (height - 1 - len(head)), *head][-height:] for head in heads]
    return [
        *(line(Piece(_row(cells, widths, gap), "quiet")) for cells in zip(*above, strict=True)),
        *(line(_row(row, widths, gap)) for row in rows),
    ]


def _total(widths: Sequence[int], gap: str) -> int:
    return sum(widths) + cell_len(gap) * (len(widths) - 1)


def _longest_word(text: str) -> int:
    return max((cell_len(word) for word in text.split()), default=0)


def _row(cells: Sequence[str], widths: Sequence[int], gap: str) -> str:
    return gap.join(
        fit(cell, width, right=place > 0)
        for place, (cell, width) in enumerate(zip(cells, widths, strict=True))
    )
