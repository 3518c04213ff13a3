"""The menu as lines: its parts one under the other, or in two columns where the screen is wide enough."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from tui.actions import Group
from tui.view.lines import EMPTY, Line, Piece, beside, fit, line

KEY_WIDTH = 8
"""Cells of the column of keys."""

TWO_FROM = 76
"""From this width on there are two columns, as on a terminal of usual width."""

COLUMNS: tuple[tuple[Group, ...], ...] = (("here", "keep", "program"), ("go", "book"))
"""What stands in each of two columns; in one, in this order."""

ORDER: tuple[Group, ...] = tuple(group for column in COLUMNS for group in column)
"""The parts in their order."""


class MenuLine(NamedTuple):
    """One thing that can be done.

    Attributes:
        key: of the reader; empty where it has none.
        title: what it is called.
        group: the part in which it stands.
    """

    key: str
    title: str
    group: Group


def in_columns(width: int) -> bool:
    """Whether the menu stands in two columns on a screen so wide."""
    return width >= TWO_FROM


def menu_lines(
    found: Sequence[MenuLine], chosen: int, headings: Mapping[Group, str], width: int
) -> tuple[list[Line], int]:
    """All of the menu under its headings, and the number of the line that the chosen one stands in.

    Args:
        found: in the order of ``ORDER``.
        chosen: which of them is chosen.
        headings: of each part.
        width: in cells.
    """
    if not in_columns(width):
        return _column(found, chosen, headings, ORDER, width)
    half = (width - 3) // 2
    (left, at_left), (right, at_right) = (
        _column(found, chosen, headings, groups, half if groups is COLUMNS[0] else width - half - 3)
        for groups in COLUMNS
    )
    return beside(left, right, half, " │ "), max(at_left, at_right)


def across(found: Sequence[MenuLine], chosen: int) -> int:
    """The one that stands beside the chosen one in the other column, or the nearest to that; the same where there is none.

    Args:
        found: in the order of ``ORDER``.
        chosen: which of them is chosen.

    Example:
        >>> lines = [MenuLine("", name, group) for name, group in (("a", "here"), ("b", "keep"), ("c", "go"), ("d", "book"))]
        >>> across(lines, 0), across(lines, 3)
        (2, 1)
    """
    sides = [list(_places(found, groups)) for groups in COLUMNS]
    own = next((side for side in sides if any(at == chosen for _, at in side)), [])
    row = next((row for row, at in own if at == chosen), 0)
    others = [one for side in sides if side is not own for one in side]
    return min(others, key=lambda one: abs(one[0] - row), default=(0, chosen))[1]


def _places(found: Sequence[MenuLine], groups: Sequence[Group]) -> Iterator[tuple[int, int]]:
    """The lines of a column in which something can be chosen, each with its number in the menu."""
    row = -1
    for group in groups:
        own = [number for number, one in enumerate(found) if one.group == group]
        # A heading stands over each part, and an empty line over each but the first.
        row += (1 if row < 0 else 2) if own else 0
        for number in own:
            row += 1
            yield row, number


def _column(
    found: Sequence[MenuLine], chosen: int, headings: Mapping[Group, str], groups: Sequence[Group], width: int
) -> tuple[list[Line], int]:
    """Some parts under each other; the number is -1 where the chosen one is in none of them."""
    lines: list[Line] = []
    place = -1
    for group in groups:
        rows = [(number, one) for number, one in enumerate(found) if one.group == group]
        if rows:
            lines += [EMPTY] if lines else []
            lines.append(line(Piece(fit(headings[group], width).rstrip(), "head")))
        for number, one in rows:
            place = len(lines) if number == chosen else place
            lines.append(menu_line(one, width, chosen=number == chosen))
    return lines, place


def menu_line(one: MenuLine, width: int, *, chosen: bool) -> Line:
    """One thing that can be done, its key before it."""
    title = fit(one.title, max(width - KEY_WIDTH - 2, 1))
    words = title.rstrip()
    return line(
        Piece("> " if chosen else "  ", "strong"),
        Piece(fit(one.key, KEY_WIDTH), "key"),
        Piece(words, "chosen" if chosen else "plain"),
        title[len(words) :],
    )
