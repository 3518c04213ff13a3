"""Things side by side as lines: as many columns as have room, each wrapped; the others come in turns."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from library.pages.page import Role, SideBySide
from library.pages.reader import EMPTY, Line, Reader, Run, text_of

NARROWEST = 16
"""Characters of a column below which fewer of them are shown at a time."""

_GAP = "  "


@dataclass(frozen=True)
class Columns:
    """Which columns are in sight, and how wide each stands.

    Attributes:
        first: the first one in sight.
        count: how many are.
        name: room for the name of a line, with its sign.
        width: room for each.
    """

    first: int
    count: int
    name: int
    width: int


def columns(width: int, entries: int, first: int) -> Columns:
    """The columns that a width has room for.

    Args:
        width: of a line.
        entries: how many there are.
        first: the one to begin with, where not all find room.

    Example:
        >>> columns(80, 3, 0).count, columns(60, 3, 5)
        (3, Columns(first=1, count=2, name=18, width=18))
    """
    name = 24 if width >= 76 else 18
    most = max((width - name - 1) // (NARROWEST + len(_GAP)), 1)
    count = min(entries, most)
    each = (width - name - 1) // count - len(_GAP)
    return Columns(max(0, min(first, entries - count)), count, name, each)


def in_turns(block: SideBySide, reader: Reader) -> list[Line]:
    """All columns, as many at a time as have room, each time under their names."""
    lines: list[Line] = []
    count, first = len(block.heading), 0
    fitting = columns(reader.width, count, 0)
    while first < count:
        shown = replace(fitting, first=first, count=min(fitting.count, count - first))
        lines += [EMPTY] if lines else []
        lines += [*heading_lines(block, shown, reader), *body_lines(block, shown, reader)]
        first += shown.count
    return lines


def heading_lines(block: SideBySide, shown: Columns, reader: Reader) -> list[Line]:
    """The names of the columns in sight."""
    return _row("", "", block.heading, shown, reader, "head")


def body_lines(block: SideBySide, shown: Columns, reader: Reader) -> list[Line]:
    """The rows, each as high as its highest cell, and what belongs to its cells over the whole width below it."""
    lines: list[Line] = []
    for row in block.rows:
        lines += _row(row.mark, row.title, row.cells, shown, reader, "strong" if row.mark == "*" else "plain")
        for number, told in enumerate(row.below, 1):
            if not shown.first < number <= shown.first + shown.count:
                continue
            for place, text in enumerate(told):
                head = "      " if place else f"    {number} "
                lines += reader.lines(text, "quiet", head, "      ")
    return lines


def _row(
    mark: str, name: str, cells: Sequence[str], shown: Columns, reader: Reader, role: Role
) -> list[Line]:
    names = replace(reader, width=shown.name - 2).lines(name)
    each = replace(reader, width=shown.width)
    in_sight = [each.lines(cell) for cell in cells[shown.first : shown.first + shown.count]]
    lines: list[Line] = []
    for place in range(max(map(len, (names, *in_sight)))):
        name_part = reader.padded(_at(names, place), shown.name - 2)
        told = _GAP.join(reader.padded(_at(cell, place), shown.width) for cell in in_sight).rstrip()
        head = f"{mark if place == 0 else '':<2}"
        lines.append((Run(head, "strong"), Run(name_part + _GAP), Run(told, role)) if told
                     else (Run(head, "strong"), Run(name_part.rstrip())))  # fmt: skip
    return lines


def _at(lines: Sequence[Line], place: int) -> str:
    return text_of(lines[place]) if place < len(lines) else ""
