"""A first scan of files that no cache knows: which entries there are, without parsing them."""

from __future__ import annotations

import re
from collections.abc import Sequence
from pathlib import Path

from library.book.fetching import Signature, Unreadable, fetch
from library.book.model import Layer
from library.book.natural import natural
from library.book.parsing import decoded
from library.book.rows import Row, Rows
from library.book.search_text import search_text
from library.sanitize import sanitize
from library.toml.pieces import split

_LINE = re.compile(r'^[ \t]*+(id|title|family|work_material)[ \t]*+=[ \t]*+"([^"\\\n]*+)"', re.MULTILINE)


def quick_scan(files: Sequence[tuple[Path, Layer, Signature]]) -> Rows:
    """The rows of the entries, by those of their lines that are plain to see.

    It serves for the moment until the book is read. An entry whose id is written in an unusual way is
    missing until then.
    """
    found: dict[str, Row] = {}
    for path, layer, _ in files:
        try:
            text = decoded(fetch(path)[0])
        except Unreadable:
            continue
        for piece in split(text):
            if piece.array == "entry":
                lines = {
                    key: sanitize(value)
                    for key, value in reversed(_LINE.findall(text, piece.start, piece.end))
                }
                if "id" in lines:
                    below = found.get(lines["id"], Row("entry", lines["id"], lines["id"]))
                    found[below.id] = below._replace(layer=layer, **lines)
    rows = [row._replace(search=search_text((row.title, row.id, row.family, row.work_material)))
            for row in found.values()]  # fmt: skip
    rows.sort(key=lambda row: (row.family, natural(row.title), row.id))
    return Rows.of(rows, fresh=False)
