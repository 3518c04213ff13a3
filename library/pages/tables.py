"""Tables as lines: whole in any width, never cut, their columns told apart."""

from __future__ import annotations

import textwrap
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import chain

from library.pages.page import Table
from library.pages.reader import EMPTY, Line, Reader, Run
from library.pages.unit_in_head import unit_in_head

LOW = 2
"""Lines of a heading that are not worth the loss of a column."""


def table_lines(table: Table, reader: Reader) -> list[Line]:
    """A table within the width of its reader.

    Where it needs more, its headings are wrapped into as few lines as will do, and into two at most while a spare column
    could go instead; then its columns stand closer, then its spare columns go one by one; then its units go into the
    headings; then its columns come in several tables, the first column in each.

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
    for shown in (table, unit_in_head(table)):
        if (fitting := _fitting(shown, reader)) is not None:
            return above + _drawn(shown, *fitting, reader)
    widths, columns = _widths(table, _longest_word(reader), reader), _kept(table, len(table.spare))
    turns = _turns(columns, widths, "  ", reader.width)
    drawn = [_drawn(table, columns, widths, "  ", reader) for columns in turns]
    return above + [line for part in drawn for line in ([EMPTY, *part] if part is not drawn[0] else part)]


def _kept(table: Table, gone: int) -> list[int]:
    """The columns that are left where so many of the spare ones go."""
    return [place for place in range(len(table.heading)) if place not in table.spare[:gone]]


def _fitting(table: Table, reader: Reader) -> tuple[list[int], list[int], str] | None:
    """The columns of a table that fit beside each other, how wide each of all is, and the gap; nothing where none do."""
    fewer = [_kept(table, gone) for gone in range(len(table.spare) + 1)]
    tallest = max((len(name.split()) for name in table.heading), default=1)
    by_height = [_wrapped_into(lines, reader) for lines in range(1, tallest)]
    wrapped = _widths(table, _longest_word(reader), reader)
    for columns in fewer:
        widened = ((_widths(table, of_heading, reader), "  ") for of_heading in by_height)
        for widths, gap in chain(widened, ((wrapped, "  "), (wrapped, " "))):
            low = columns is fewer[-1] or _height(table, columns, widths) <= LOW
            if low and _total([widths[place] for place in columns], gap) <= reader.width:
                return columns, widths, gap
    return None


def _cleaned(table: Table, reader: Reader) -> Table:
    rows = tuple(tuple(map(reader.clean, row)) for row in table.rows)
    return replace(table, heading=tuple(map(reader.clean, table.heading)), rows=rows)


def _widths(table: Table, of_heading: Callable[[str], int], reader: Reader) -> list[int]:
    """What each column takes when its heading takes as much as ``of_heading`` says."""
    return [
        max(of_heading(name), reader.widest(row[place] for row in table.rows))
        for place, name in enumerate(table.heading)
    ]


def _wrapped_into(lines: int, reader: Reader) -> Callable[[str], int]:
    """The least width in which a heading takes no more than so many lines, or that of its longest word."""
    if lines == 1:
        return reader.measure
    # Signs of double width are in no heading of this program; one of a person's own is only wrapped sooner.
    return lambda text: max(_narrowest(text, lines), _longest_word(reader)(text))


@lru_cache(maxsize=512)
def _narrowest(text: str, lines: int) -> int:
    """A table is laid out anew at every key, with the same headings: their widths are remembered.

    Example:
        >>> _narrowest("relief square to the axis", 2)
        13
    """
    least = max(map(len, text.split()), default=0)
    return next(
        (one for one in range(max(least, 1), len(text)) if len(textwrap.wrap(text, one)) <= lines), len(text)
    )


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
