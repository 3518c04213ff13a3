"""Validate a value while it is typed, with the reader of the book, so that what it will say is known before saving."""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from typing import TYPE_CHECKING

from geometry.quantities import quantity
from geometry.sentences import Kind

if TYPE_CHECKING:
    from library.book.model import Book, Value

FIELDS = ("low", "usual", "high", "source", "place", "note")
"""What a person can type of one value."""

_NUMBERS = ("low", "usual", "high")
_WHOLE = re.compile(r"[+-]?[0-9]{1,15}")
_DECIMAL = re.compile(r"[+-]?[0-9]{1,15}\.[0-9]{1,15}")


def as_written(key: str, texts: Mapping[str, str]) -> dict[str, object]:
    """The fields of a value as they stand in a file: a count or a ratio as a number, all else as text.

    Args:
        key: the quantity.
        texts: what was typed, by field; blank texts are left out.

    Example:
        >>> as_written("flutes", {"usual": "4", "note": " "})
        {'usual': 4}
    """
    bare = quantity(key).kind in {Kind.COUNT, Kind.RATIO, Kind.PERCENT}
    return {
        field: _number(text.strip()) if bare and field in _NUMBERS else text.strip()
        for field, text in texts.items()
        if text.strip()
    }


def _number(text: str) -> object:
    if _WHOLE.fullmatch(text):
        return int(text)
    return float(text) if _DECIMAL.fullmatch(text) else text


def complaints(book: Book, entry: str, family: str, key: str, texts: Mapping[str, str]) -> dict[str, str]:
    """What is wrong with a value as it is typed, by field; the field is empty for the value as a whole.

    The very reader of the book looks at it, so that nothing is accepted here and refused there.

    Args:
        book: gives the ids that may be named.
        entry: the id of the entry.
        family: of the entry.
        key: the quantity.
        texts: what was typed, by field.
    """
    from library.book.diagnostics import Diagnostics
    from library.book.layers import read_part
    from library.book.parsing import parse
    from library.book.shapes import SHAPES
    from library.editing import writing

    typed = {"id": entry, "family": family, "title": "as typed", key: as_written(key, texts)}
    raw = f"schema = 1\n\n{writing.table('entry', typed)}".encode("utf-8", "replace")
    parsed = parse(raw, Path("as-typed.toml"), "shop")
    diagnostics = Diagnostics()
    diagnostics.known = {
        "entry": frozenset({entry}),
        "family": frozenset({family}),
        "source": frozenset(book.sources),
        "caution": frozenset(book.cautions),
        "material": frozenset(book.materials),
    }
    for table in parsed.tables:
        if table.array == "entry":
            read_part(table, SHAPES["entry"], diagnostics)
    found: dict[str, str] = {}
    for finding in (*parsed.findings, *diagnostics.findings):
        *_, last = finding.way.split(".")
        field = last if last in FIELDS and finding.way.count(".") >= 2 else ""
        found.setdefault(field, finding.text)
    return found


def as_it_stands(value: Value, entry: str) -> dict[str, str]:
    """The fields of a value as its file has them, be they right or wrong, so that a mistake can be seen and fixed.

    Args:
        value: says which file; the file is read again.
        entry: the id of the entry that the value belongs to.

    Returns:
        Text by field; empty where the file as a whole cannot be read.
    """
    from library.book.fetching import Unreadable, fetch
    from library.editing.document import read_data
    from library.editing.steps import tables
    from library.sanitize import sanitize

    try:
        data = read_data(fetch(value.place.file)[0]) or {}
    except Unreadable:
        return {}
    raw = next((one.get(value.key) for one in tables(data, "entry") if one.get("id") == entry), None)
    table = raw if isinstance(raw, Mapping) else {} if raw is None else {"usual": raw}
    return {field: sanitize(str(table[field])) for field in FIELDS if field in table}
