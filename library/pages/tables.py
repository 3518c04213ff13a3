"""Tables as lines: whole in any width, never cut, their columns told apart."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Sequence
from dataclasses import replace

from library.pages.page import Table
from library.pages.reader import EMPTY, Line, Reader, Run

LOW = 2
"""Lines of a heading that are not worth the loss of a column."""


def table_lines(table: Table, reader: Reader) -> list[Line]:
    """A table within the width of its reader.

    Where it needs more, its headings are wrapped, to two lines while a spare column could go instead, then its columns stand closer, then its spare columns go one by one;
    then its columns come in several tables, the first column in each.

    Example:
        >>> drop = Table(("", "facet angle"), (("facet 1", "8.00 deg"),))
        >>> ["".join(run.text for run in line) for line in table_lines(drop, Reader(18))]
        ['            facet', '            angle', 'facet 1  8.00 deg']
    """
    table = _cleaned(table, reader)
    above: list[Line] = []
    names = reader.widest(row[0] for row in table.rows)
    if reader.measure(table.heading[0]) > names:
        # What names the table is longer than what names a row, so it stands above.
        above = reader.lines(f"{table.heading[0]}:", "quiet")
        table = replace(table, heading=("", *table.heading[1:]))
    fewer = [
        [place for place in range(len(table.heading)) if place not in table.spare[:gone]]
        for gone in range(len(table.spare) + 1)
    ]
    one_line, wrapped = _widths(table, reader.measure, reader), _widths(table, _longest_word(reader), reader)
    for columns in fewer:
        for widths, gap in ((one_line, "  "), (wrapped, "  "), (wrapped, " ")):
            low = columns is fewer[-1] or _height(table, columns, widths) <= LOW
            if low and _total([widths[place] for place in columns], gap) <= reader.width:
                return above + _drawn(
                    table, columns, _spread(table, columns, widths, gap, reader), gap, reader
                )
    turns = _turns(fewer[-1], wrapped, "  ", reader.width)
    drawn = [_drawn(table, columns, wrapped, "  ", reader) for columns in turns]
    return above + [line for part in drawn for line in ([EMPTY, *part] if part is not drawn[0] else part)]


def _cleaned(table: Table, reader: Reader) -> Table:
    rows = tuple(tuple(map(reader.clean, row)) for row in table.rows)
    return replace(table, heading=tuple(map(reader.clean, table.heading)), rows=rows)


def _widths(table: Table, of_heading: Callable[[str], int], reader: Reader) -> list[int]:
    """What each column takes when its heading takes as much as ``of_heading`` says."""
    return [
        max(of_heading(name), reader.widest(row[place] for row in table.rows))
        for place, name in enumerate(table.heading)
    ]


def _longest_word(reader: Reader) -> Callable[[str], int]:
    return lambda text: reader.widest(text.split())


def _total(widths: Sequence[int], gap: str) -> int:
    return sum(widths) + len(gap) * (len(widths) - 1)


def _turns(columns: Sequence[int], widths: Sequence[int], gap: str, width: int) -> list[list[int]]:
    """The columns of each table: the first one, and as many of the others as fit, but one at least."""
    turns = [[columns[0]]]
    for column in columns[1:]:
        wanted = [*turns[-1], column]
        if len(wanted) > 2 and _total([widths[place] for place in wanted], gap) > width:
            turns.append([columns[0], column])
        else:
            turns[-1] = wanted
    return turns


def _spread(
    table: Table, columns: Sequence[int], widths: Sequence[int], gap: str, reader: Reader
) -> list[int]:
    """What is left of the width goes to the columns with the tallest headings, where it makes them lower."""
    found = list(widths)
    left = reader.width - _total([found[place] for place in columns], gap)
    while (height := _height(table, columns, found)) > 1:
        tall = [place for place in columns if _height(table, [place], found) == height]
        wider = {place: _lower(table.heading[place], found[place]) for place in tall}
        left -= sum(wider[place] - found[place] for place in tall)
        if left < 0:
            break
        for place in tall:
            found[place] = wider[place]
    return found


def _lower(heading: str, width: int) -> int:
    """The width at which a heading takes one line less."""
    height = len(textwrap.wrap(heading, width))
    return next(more for more in range(width, len(heading) + 1) if len(textwrap.wrap(heading, more)) < height)


def _height(table: Table, columns: Sequence[int], widths: Sequence[int]) -> int:
    """Lines of the tallest heading."""
    return max(len(textwrap.wrap(table.heading[place], max(widths[place], 1))) for place in columns)


def _drawn(
    table: Table, columns: Sequence[int], widths: Sequence[int], gap: str, reader: Reader
) -> list[Line]:
    """The lines of one table; the lines of each heading stand at its foot."""

    def row(cells: Sequence[str]) -> str:
        filled = (
            reader.padded(cell, widths[column], right=place > 0)
            for place, (column, cell) in enumerate(zip(columns, cells, strict=True))
        )
        return gap.join(filled).rstrip()

    heads = [textwrap.wrap(table.heading[place], max(widths[place], 1)) for place in columns]
    height = max(map(len, heads))
    above = [["", *[""] * (height - 1 - len(head)), *head][-height:] for head in heads] if height else []
    return [
        *((Run(row(cells), "quiet"),) for cells in zip(*above, strict=True)),
        *((Run(row([cells[place] for place in columns])),) for cells in table.rows),
    ]
