"""Plain text on standard output, safe whatever a book holds."""

from __future__ import annotations

import json
import shutil
import sys
import textwrap
from collections.abc import Iterable, Sequence
from typing import Any

from library.pages.as_text import as_text
from library.pages.page import Page
from library.pages.reader import Reader
from library.sanitize import sanitize


def line(text: str = "") -> None:
    """Print one line; characters that could steer the terminal or cannot be encoded are replaced."""
    encoding = sys.stdout.encoding or "ascii"
    print(sanitize(text).encode(encoding, "replace").decode(encoding))


def error(text: str) -> None:
    """Print a sentence on standard error, made safe in the same way: on a terminal as wide as that is, else on one line."""
    encoding = sys.stderr.encoding or "ascii"
    safe = sanitize(text).encode(encoding, "replace").decode(encoding)
    # A name of a file or what was typed is not parted, so that it can be copied.
    parts = textwrap.wrap(safe, _width(), break_long_words=False, break_on_hyphens=False)
    print("\n".join(parts or [safe]) if sys.stderr.isatty() else safe, file=sys.stderr)


def page(told: Page) -> None:
    """Print a page as wide as the terminal is."""
    for text in as_text(told, reader()).splitlines():
        line(text)


def part(told: Page) -> None:
    """Print a page that has no title, without an empty line before or behind it."""
    for text in as_text(told, reader()).strip("\n").splitlines():
        line(text)


def reader() -> Reader:
    """The terminal, by its width."""
    return Reader(_width())


def _width() -> int:
    return max(40, min(shutil.get_terminal_size((80, 24)).columns, 100))


def paragraph(text: str, indent: str = "") -> None:
    """Print text wrapped to the terminal, later lines indented like the first."""
    width = _width()
    for part in text.splitlines() or [""]:
        for wrapped in textwrap.wrap(part, width - len(indent)) or [""]:
            line(f"{indent}{wrapped}".rstrip())


def explained(rows: Sequence[tuple[str, str]]) -> None:
    """Print names with a text behind each, the text wrapped to the terminal under its own beginning."""
    column = max(len(name) for name, _ in rows) + 2
    for name, text in rows:
        first, *rest = textwrap.wrap(sanitize(text), max(_width() - column, 20)) or [""]
        line(f"{sanitize(name).ljust(column)}{first}".rstrip())
        for one in rest:
            line(" " * column + one)


def table(rows: Iterable[Sequence[str]], indent: str = "  ", right: Sequence[int] = ()) -> None:
    """Print rows in columns as wide as their widest cell; columns in ``right`` are aligned right."""
    cells = [[sanitize(cell) for cell in row] for row in rows]
    if not cells:
        return
    widths = [max(len(row[i]) for row in cells) for i in range(len(cells[0]))]
    for row in cells:
        padded = [
            c.rjust(w) if i in right else c.ljust(w) for i, (c, w) in enumerate(zip(row, widths, strict=True))
        ]
        line((indent + "  ".join(padded)).rstrip())


def data(value: Any) -> None:
    """Print JSON; it escapes whatever is not plain ASCII, so it is safe anywhere."""
    print(json.dumps(value, indent=2, allow_nan=False))
