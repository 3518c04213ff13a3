"""Entries side by side as lines: a column for each, a sign for each line that differs, sources when asked for."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from geometry.quantities import quantity
from library.book.model import Book, Entry, Family, Material, Value
from library.pages.words import remarks, span
from library.search.comparing import compare
from tui.view.lines import EMPTY, Line, Piece, Role, padded, wrap

SAME, DIFFERENT = "=", "*"
"""Stand before a line on which all entries say the same, or not."""

NARROWEST = 16
"""Cells of a column below which fewer of them are shown at a time."""

_GAP = "  "


@dataclass(frozen=True)
class Columns:
    """Which entries are in sight, and how wide each stands.

    Attributes:
        first: the first one in sight.
        count: how many are.
        name: cells for the name of a line, with its sign.
        width: cells for each.
    """

    first: int
    count: int
    name: int
    width: int


def columns(width: int, entries: int, first: int) -> Columns:
    """The columns that a screen of a width has room for.

    Args:
        width: in cells.
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


def heading(entries: Sequence[Entry], shown: Columns) -> list[Line]:
    """The numbers and titles of the entries in sight."""
    numbered = [f"{number} {entry.title}" for number, entry in enumerate(entries, 1)]
    return _row("", "", numbered, shown, "head")


def compared_lines(
    book: Book, entries: Sequence[Entry], width: int, first: int = 0, *, sources: bool = False
) -> list[Line]:
    """Everything in which entries can be set side by side.

    Args:
        book: gives families, materials and sources.
        entries: two or more.
        width: in cells.
        first: the first entry in sight, where not all find room.
        sources: whether the source of every value stands below it.
    """
    shown = columns(width, len(entries), first)
    lines: list[Line] = []
    for name, texts in (
        ("Family", [_title(book.families.get(one.family), one.family) for one in entries]),
        (
            "Work material",
            [_title(book.materials.get(one.work_material), one.work_material) for one in entries],
        ),
    ):
        lines += _row(_sign(len(set(texts)) == 1), name, texts, shown)
    for one in compare(entries):
        texts = [span(value) if value is not None else "-" for value in one.values]
        lines += _row(_sign(one.same), quantity(one.key).title, texts, shown)
        lines += _sources(book, one.values, shown, width) if sources else []
    legend = f"{SAME} all say the same   {DIFFERENT} they differ   - says nothing of it"
    return [*lines, EMPTY, *wrap(legend, width, "quiet")]


def _sign(same: bool) -> str:
    return SAME if same else DIFFERENT


def _title(found: Family | Material | None, name: str) -> str:
    return found.title if found is not None else name or "-"


def _row(sign: str, name: str, texts: Sequence[str], shown: Columns, role: Role = "plain") -> list[Line]:
    """One line of the comparison, as high as its highest cell."""
    cell_role: Role = "strong" if sign == DIFFERENT else role
    in_sight = texts[shown.first : shown.first + shown.count]
    names = wrap(name, shown.name - 2)
    cells = [wrap(text, shown.width, cell_role) for text in in_sight]
    lines = []
    for at in range(max(map(len, (names, *cells)))):
        parts = [Piece(f"{sign if at == 0 else '':<2}", "strong"), *padded(_at(names, at), shown.name - 2)]
        for cell in cells:
            parts += [Piece(_GAP), *padded(_at(cell, at), shown.width)]
        lines.append(_trimmed(tuple(parts)))
    return lines


def _at(lines: Sequence[Line], at: int) -> Line:
    return lines[at] if at < len(lines) else EMPTY


def _trimmed(one: Line) -> Line:
    """A line without blanks at its end."""
    while one and not one[-1].text.strip():
        one = one[:-1]
    return one


def _sources(book: Book, values: Sequence[Value | None], shown: Columns, width: int) -> list[Line]:
    """What belongs to each value in sight, over the whole width, each with the number of its entry."""
    lines: list[Line] = []
    for number, value in enumerate(values, 1):
        if value is None or not shown.first < number <= shown.first + shown.count:
            continue
        for at, remark in enumerate(remarks(book, value)):
            head = f"    {number} " if at == 0 else "      "
            lines += wrap(remark, width, "quiet", first=head, rest="      ")
    return lines
