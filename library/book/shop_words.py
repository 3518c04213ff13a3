"""A mistake in the writing of a file, told in words for a shop instead of a parser's."""

from __future__ import annotations

import re
from dataclasses import dataclass


@dataclass(frozen=True)
class Trouble:
    """Something in the text of one table that keeps it from being read.

    Attributes:
        line: counted from 1 at the table's first.
        column: counted from 1.
        wrong: what is wrong, a sentence.
        mend: what to do, a sentence.
        key: the key on that line, where the rest of the table can be read without it.
    """

    line: int
    column: int
    wrong: str
    mend: str
    key: str = ""


_SPOT = re.compile(r"\(at line (?P<line>\d+), column (?P<column>\d+)\)$")
_PAIR = re.compile(r"""^[ \t]*(?P<key>[A-Za-z0-9_-]+)[ \t]*=(?P<value>.*)$""")


def explain(lines: list[str], message: str) -> Trouble:
    """Say what is wrong with a table that ``tomllib`` refused.

    Args:
        lines: of the table.
        message: what ``tomllib`` said, with its line and column.
    """
    found = _SPOT.search(message)
    line = int(found["line"]) if found else len(lines)
    column = int(found["column"]) if found else 1
    pair = _PAIR.match(lines[line - 1]) if line <= len(lines) else None
    return Trouble(
        line,
        column,
        "This line cannot be read.",
        'Check its quotes, brackets and commas, and write it as: key = "text".',
        pair["key"] if pair else "",
    )
