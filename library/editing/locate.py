"""Locate the file of a layer that holds a table, without reading the whole book."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from library.book.fetching import Unreadable, fetch
from library.book.walking import walk
from library.editing.document import EditRefused, open_document, read_data
from library.editing.steps import tables
from library.errors import named


@dataclass(frozen=True)
class Found:
    """A table where it stands.

    Attributes:
        path: the file.
        raw: the file's bytes, as read.
        table: its keys.
    """

    path: Path
    raw: bytes
    table: dict[str, object]


def find(folder: Path, array: str, name: str) -> Found | None:
    """The table of that kind and id in a layer.

    Only files whose bytes hold the id somewhere are read any further, which makes this fast enough to be
    asked before each save.

    Args:
        folder: the layer's folder; one that is not there holds nothing.
        array: the kind of table, such as ``entry``.
        name: its id.

    Raises:
        EditRefused: when two tables have that id, or when it stands where it cannot be read.
    """
    found: list[Found] = []
    for path, raw in _files_with(folder, _in_quotes(name)):
        data = read_data(raw)
        if data is not None:
            found += [Found(path, raw, table) for table in tables(data, array) if table.get("id") == name]
        elif _may_be_hidden_in(raw, name):
            open_document(path, raw)  # Raises, saying what is wrong with the file.
    if len(found) > 1:
        places = " and in ".join(named(one.path.relative_to(folder)) for one in found)
        raise EditRefused(
            f"The {array} '{name}' stands in {places}. Give one of them another id in your editor, then try again."
        )
    return found[0] if found else None


def last_of_family(folder: Path, family: str) -> Path | None:
    """The file of the shop that holds entries of a family, the last one if there are several."""
    holding = [
        path
        for path, raw in _files_with(folder, _in_quotes(family))
        if any(table.get("family") == family for table in tables(read_data(raw) or {}, "entry"))
    ]
    return holding[-1] if holding else None


def first_with(folder: Path, array: str) -> Path | None:
    """The first file of the shop that holds a table of that kind."""
    return next(
        (path for path, raw in _files_with(folder, re.escape(array)) if tables(read_data(raw) or {}, array)),
        None,
    )


def _may_be_hidden_in(raw: bytes, name: str) -> bool:
    pattern = rf"""^[ \t]*id[ \t]*=[ \t]*["']{re.escape(name)}["']"""
    return re.search(pattern.encode("utf-8", "surrogateescape"), raw, re.MULTILINE) is not None


def _in_quotes(text: str) -> str:
    return f"[\"']{re.escape(text)}[\"']"


def _files_with(folder: Path, pattern: str) -> Iterator[tuple[Path, bytes]]:
    wanted = re.compile(pattern.encode("utf-8", "surrogateescape"))
    for path, _ in walk(folder).files:
        try:
            raw, _ = fetch(path)
        except Unreadable:
            continue
        if wanted.search(raw):
            yield path, raw


def of_rule(rule: str, key: str, shop: Path, shipped: Path | None) -> object:
    """The value of a rule as it stands in its file, the shop's before the shipped one; nothing where it is gone.

    Args:
        rule: its id.
        key: the quantity.
        shop: the shop's folder.
        shipped: the folder of the shipped data, if there is any.
    """
    parts = [find(folder, "rule", rule) for folder in (shop, shipped) if folder is not None]
    return next((part.table[key] for part in parts if part is not None and key in part.table), None)
