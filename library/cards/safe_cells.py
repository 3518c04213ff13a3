"""Cells of comma-separated text that no spreadsheet takes for a formula, however it parts the text, and back again.

A spreadsheet may part at commas, semicolons, tabs or line ends, with or without heed of the quotes, by its own settings
and the locale. So a cell is guarded at its beginning, and at every place within it where another cell could begin.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

FORMULA = "=+\\-@\uff1d\uff0b\uff0d\uff20\ufe66\ufe62\ufe63\ufe6b\u2212"
"""What a spreadsheet may take for the beginning of a formula, in widths of every locale, as the inside of a set."""

_PASSED_OVER = "(?:[^\\S\\t\\r\\n]|[\"'\ufeff\u200b])*"
"""What may stand before such a sign and be dropped: blanks, quotes, and the apostrophes that guard."""

_BEGINS = f"{_PASSED_OVER}[{FORMULA}\\t\\r]"
# At the end of a cell whatever follows would begin there, the line end of the row too.
_WITHIN = f"{_PASSED_OVER}(?:[{FORMULA}\\t\\r]|\\Z)"
_FIRST = re.compile(f" *(?={_BEGINS})")
_INNER = re.compile(f"([,;\\t\\r\\n] *)(?={_WITHIN})")
_GUARDED_FIRST = re.compile(f"( *)'(?={_BEGINS})")
_GUARDED_INNER = re.compile(f"([,;\\t\\r\\n] *)'(?={_WITHIN})")
_NUMBER = re.compile(r"-[0-9]+(?:\.[0-9]+)?")


def guarded(text: str) -> str:
    """A cell of which no part is taken for a formula: an apostrophe stands before each beginning that could be.

    A plain negative number stays one, where the cell is nothing else.

    Example:
        >>> guarded("=1+1"), guarded("-0.05 mm"), guarded("-0.05"), guarded("8 deg; =1")
        ("'=1+1", "'-0.05 mm", '-0.05', "8 deg; '=1")
    """
    return text if _NUMBER.fullmatch(text) else always_guarded(text)


def always_guarded(text: str) -> str:
    """A cell as ``guarded`` makes it, a number too: of the first cell of a row, with which a whole line may begin.

    Example:
        >>> always_guarded("-0.05")
        "'-0.05"
    """
    safe = _INNER.sub(r"\1'", text)
    first = _FIRST.match(safe)
    return f"{first[0]}'{safe[first.end() :]}" if first else safe


def unguarded(text: str) -> str:
    """The cell as it was before ``guarded`` or ``always_guarded``.

    Example:
        >>> unguarded("8 deg; '=1"), unguarded("'quoted'")
        ('8 deg; =1', "'quoted'")
    """
    plain = _GUARDED_INNER.sub(r"\1", text)
    first = _GUARDED_FIRST.match(plain)
    return f"{first[1]}{plain[first.end() :]}" if first else plain


def guarded_row(cells: Sequence[str]) -> list[str]:
    """The cells of a row, guarded.

    Example:
        >>> guarded_row(["-1", "-1", "@x"])
        ["'-1", '-1', "'@x"]
    """
    return [always_guarded(cell) if place == 0 else guarded(cell) for place, cell in enumerate(cells)]
