"""The index of all cards, the newest first, from a cache that may be deleted, damaged or forbidden at any time."""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from library.book.fetching import Unreadable, fetch
from library.book.file_slice import open_plainly
from library.cards.quick_row import quick_row
from library.cards.rows import CardRow, as_list, as_unreadable, from_list, row_of, unreadable
from library.cards.store import FOLDER, from_bytes
from library.files.bounds import Bounds
from library.files.own_file import put_whole
from library.files.watching import Stamp, is_fresh, stamps

VERSION = 4
"""Of the cache; another one is not read."""

Known = dict[str, tuple[Stamp, CardRow]]


def card_rows(book: Path, cache: Path | None = None) -> tuple[CardRow, ...]:
    """A row for every card of a book, the newest first.

    Args:
        book: the shop's folder; one without cards has none.
        cache: the folder for the cache; without one every card is read.

    Returns:
        The rows; a card that cannot be read has one too.
    """
    folder = book / FOLDER
    found = {str(path.relative_to(folder)): (path, stamp) for path, stamp in stamps(folder).items()}
    file = _cache_file(folder, cache)
    known = _read_cache(file)
    bounds = Bounds(book)
    rows = {name: _row(path, stamp, known.get(name), bounds) for name, (path, stamp) in found.items()}
    # A card that changed a moment ago may change once more under the same stamp, and is read again the next time.
    now = {name: (found[name][1], row) for name, row in rows.items() if not is_fresh(found[name][1])}
    if file is not None and now != known:
        _write_cache(file, now)
    return tuple(sorted(rows.values(), key=lambda row: row.id, reverse=True))


def _row(path: Path, stamp: Stamp, known: tuple[Stamp, CardRow] | None, bounds: Bounds) -> CardRow:
    if bounds.is_outside(path):
        return unreadable(path)
    if known is not None and known[0] == stamp:
        return known[1]
    try:
        raw, _ = fetch(path)
        if (quick := quick_row(raw, path)) is not None:
            return quick
        opened = from_bytes(raw, path)
        return as_unreadable(row_of(opened.card)) if opened.broken else row_of(opened.card)
    except Unreadable:
        return unreadable(path)


def _cache_file(folder: Path, cache: Path | None) -> Path | None:
    if cache is None:
        return None
    name = hashlib.sha256(os.fsencode(os.path.realpath(folder))).hexdigest()[:16]
    return cache / f"cards-{name}.json"


def _read_cache(file: Path | None) -> Known:
    if file is None:
        return {}
    try:
        with open_plainly(file) as stream:
            held = json.loads(stream.read())
        if held["version"] != VERSION:
            return {}
        known: Known = {}
        for name, (stamp, values) in held["rows"].items():
            row = from_list(values)
            if row is not None:
                known[name] = (_stamp(stamp), row)
    except (OSError, ValueError, KeyError, TypeError, AttributeError, IndexError, RecursionError):
        return {}
    return known


def _stamp(held: Sequence[object]) -> Stamp:
    text, file, size, inode = (one if isinstance(one, int) else -1 for one in held)
    return text, file, size, inode


def _write_cache(file: Path, now: Known) -> None:
    held = {"version": VERSION, "rows": {name: [stamp, as_list(row)] for name, (stamp, row) in now.items()}}
    # Without a cache everything works, only slower.
    with suppress(OSError):
        put_whole(file, [json.dumps(held).encode()], lasting=False)
