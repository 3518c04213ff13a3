"""A setup sheet as plain text: eighty columns, ASCII only, so that any printer prints it."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Callable, Sequence

from library.book.harmless import harmless
from library.setup_sheet.page import (
    Block,
    Boxes,
    Cautions,
    Checks,
    Drawing,
    Facts,
    Item,
    Items,
    Page,
    Said,
    Table,
)

COLUMNS = 80

_TWINS = str.maketrans(
    {
        "\u00b0": " deg",
        "\u00b1": "+/-",
        "\u00d7": "x",
        "\u2013": "-",
        "\u2014": "-",
        "\u2018": "'",
        "\u2019": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u2026": "...",
        "\u00b5": "u",
        "\u00df": "ss",
        "\u00f8": "o",
        "\u00e6": "ae",
    }
)
"""What common signs become; letters with accents lose them, and what is left becomes a question mark."""

_BOX = "[________]"


def in_ascii(text: str) -> str:
    r"""Text that any printer prints.

    Example:
        >>> in_ascii("Gro\u00dfe M\u00fchle \u00b1 0.02 mm")
        'Grosse Muhle +/- 0.02 mm'
    """
    plain = harmless(text)
    if plain.isascii():
        return plain
    parts = unicodedata.normalize("NFKD", plain.translate(_TWINS))
    return (
        "".join(sign for sign in parts if not unicodedata.combining(sign)).encode("ascii", "replace").decode()
    )


def as_text(page: Page) -> str:
    """The page as text, no line longer than eighty columns."""
    title = in_ascii(page.title)
    lines = [*_wrapped(title), "=" * min(COLUMNS, len(title))]
    for section in page.sections:
        heading = in_ascii(section.heading)
        if heading:
            lines.append(f"{heading} ".ljust(COLUMNS, "-")[:COLUMNS])
        for block in section.blocks:
            lines += _block(block)
    return "\n".join(line.rstrip() for line in lines) + "\n"


def _block(block: Block) -> list[str]:
    lines: list[str] = []
    match block:
        case Facts():
            lines = _facts(block)
        case Said():
            lines = [line for text in block.texts for line in _wrapped(in_ascii(text))]
        case Items():
            lines = _items(block.items)
        case Table():
            lines = _table(block)
        case Checks():
            lines = [line for state, text in block.checks for line in _check(state, text)]
        case Boxes():
            lines = [line for row in block.rows for line in _box_row(row.title, row.wanted, row.boxes)]
        case Cautions():
            lines = _cautions(block)
        case Drawing():
            pass
    return lines


def _wrapped(text: str, first: str = "", later: str = "") -> list[str]:
    return textwrap.wrap(text, COLUMNS, initial_indent=first, subsequent_indent=later) or [first.rstrip()]


def _facts(block: Facts) -> list[str]:
    """Facts one behind the other; a fact is only broken when it is longer than a line."""
    lines, line = [], ""
    for title, text in block.pairs:
        fact = f"{in_ascii(title)}: {in_ascii(text)}"
        longer = f"{line} | {fact}" if line else fact
        if len(longer) <= COLUMNS:
            line = longer
            continue
        lines += _wrapped(line, later="  ") if line else []
        line = fact
    return lines + (_wrapped(line, later="  ") if line else [])


def _items(items: Sequence[Item]) -> list[str]:
    titles = [in_ascii(item.title) for item in items]
    width = min(28, max(map(len, titles), default=0))
    values = min(14, max((len(in_ascii(item.value)) for item in items), default=0))
    lines = []
    for number, (title, item) in enumerate(zip(titles, items, strict=True), 1):
        head = f"[ ] {number:2} {title.ljust(width)} {in_ascii(item.value).rjust(values)}"
        more = in_ascii(item.more)
        if not more:
            lines += _wrapped(head, later=" " * 7)
            continue
        lines += _wrapped(more, f"{head}  ", " " * 11)
    return lines


def _table(block: Table) -> list[str]:
    heading = [in_ascii(cell) for cell in block.heading]
    rows = [[in_ascii(cell) for cell in row] for row in block.rows]
    above: list[str] = []
    if len(heading[0]) > max((len(row[0]) for row in rows), default=0):
        # What names the table is longer than what names a row, so it stands above.
        above, heading[0] = _wrapped(f"{heading[0]}:"), ""
    # The headings in one line where there is room, else word under word, else no table at all.
    widths = next((one for one in (_widths(heading, rows, len), _widths(heading, rows, _longest_word))
                   if sum(one) + 2 * (len(one) - 1) <= COLUMNS), None)  # fmt: skip
    if widths is None:
        return above + _as_facts(heading, rows)
    tops = [textwrap.wrap(cell, width) or [""] for cell, width in zip(heading, widths, strict=True)]
    deep = max(map(len, tops))
    columns = [[*[""] * (deep - len(top)), *top] for top in tops]
    heads = [[column[place] for column in columns] for place in range(deep)]
    return above + [_row(cells, widths) for cells in (*heads, *rows)]


def _widths(
    heading: Sequence[str], rows: Sequence[Sequence[str]], of_heading: Callable[[str], int]
) -> list[int]:
    return [max([of_heading(name), *(len(row[i]) for row in rows)]) for i, name in enumerate(heading)]


def _longest_word(text: str) -> int:
    return max(map(len, text.split()), default=0)


def _row(cells: Sequence[str], widths: Sequence[int]) -> str:
    first, *others = [
        cell.rjust(width) if place else cell.ljust(width)
        for place, (cell, width) in enumerate(zip(cells, widths, strict=True))
    ]
    return "  ".join((first, *others))


def _as_facts(heading: Sequence[str], rows: Sequence[Sequence[str]]) -> list[str]:
    """A table too wide for the paper, row by row."""
    lines = _wrapped(f"{heading[0]}:") if heading[0] else []
    for row in rows:
        said = "; ".join(f"{name} {cell}" for name, cell in zip(heading[1:], row[1:], strict=True) if cell)
        lines += _wrapped(f"{row[0]}: {said}", "  ", "    ")
    return lines


def _check(state: str, text: str) -> list[str]:
    verdict = "" if state == "note" else state.upper()
    return _wrapped(in_ascii(text), f"{verdict:5} ", " " * 6)


def _box_row(title: str, wanted: str, boxes: Sequence[str]) -> list[str]:
    head = in_ascii(f"{title}  {wanted}".rstrip())
    cells = [
        f"{number} {in_ascii(text)}" if text else f"{number} {_BOX}" for number, text in enumerate(boxes, 1)
    ]
    if len(cells) == 1:
        cells = [cells[0][2:]]
    lines, line = [], f"{head}:"
    for cell in cells:
        if len(line) + 2 + len(cell) > COLUMNS and line.strip():
            lines += _wrapped(line, later="    ")
            line = "    " + cell
        else:
            line += f"  {cell}"
    return [*lines, *_wrapped(line, later="    ")]


def _cautions(block: Cautions) -> list[str]:
    said = " ".join(in_ascii(one.clause) for one in block.cautions)
    return [*(_wrapped(said) if said else []), *_wrapped(in_ascii(block.last))]
