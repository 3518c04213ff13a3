"""Load one object on demand: its table is read again from the file, where the index says that it stands."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Sequence
from pathlib import Path

from library.book.diagnostics import Diagnostics
from library.book.fetching import Signature, Unreadable, fetch
from library.book.index import FileNote
from library.book.layers import Part, build, read_part
from library.book.parsing import decoded, parse
from library.book.raw_table import RawTable
from library.book.rows import Extent, Row, extents_of
from library.book.shapes import Shape, shapes
from library.toml.limits import loads

MOST_TEXTS = 16
"""Files whose text is kept at hand."""


class Gone(KeyError):
    """A table that was in the book when it was read, and is not in its file any more."""


class Loader:
    """Reads tables where an index says they stand.

    When a file has changed since, its table is looked for by its id.
    """

    def __init__(self, notes: Sequence[FileNote]) -> None:
        self._notes = notes
        self._texts: OrderedDict[Path, tuple[bytes, str, Signature]] = OrderedDict()

    def make(self, row: Row) -> object:
        """The object of a row's table, its layers laid over each other.

        Raises:
            Gone: when it is not there any more.
        """
        shape = shapes()[row.array]
        try:
            extents = extents_of(row)
        except (TypeError, ValueError) as error:
            raise Gone(row.id) from error
        return build([self.part(row, extent, shape) for extent in extents], shape)

    def part(self, row: Row, extent: Extent, shape: Shape) -> Part:
        """What one layer says of a row's table; problems are not told again."""
        if not 0 <= extent.file < len(self._notes):
            raise Gone(row.id)
        return read_part(self._table(row, extent), shape, Diagnostics(is_deaf=True))

    def _table(self, row: Row, extent: Extent) -> RawTable:
        note = self._notes[extent.file]
        raw, text, signature = self._text(note.path, row)
        if extent.end and signature == note.signature:
            own = text[extent.start : extent.end]
            content = _alone(own, row.array)
            if content is not None:
                table = RawTable(row.array, content, note.layer, note.path, own, extent.line)
                if table.id == row.id:
                    return table
        for table in parse(raw, note.path, note.layer).tables:
            if (table.array, table.id) == (row.array, row.id):
                return table
        raise Gone(row.id)

    def _text(self, path: Path, row: Row) -> tuple[bytes, str, Signature]:
        try:
            found = self._texts.get(path)
            if found is None or found[2] != Signature.of(path.stat()):
                raw, signature = fetch(path)
                found = (raw, decoded(raw), signature)
                self._texts[path] = found
                while len(self._texts) > MOST_TEXTS:
                    self._texts.popitem(last=False)
        except (Unreadable, OSError) as error:
            raise Gone(row.id) from error
        return found


def _alone(text: str, array: str) -> dict[str, object] | None:
    tables = (loads(text) or {}).get(array)
    if isinstance(tables, list) and len(tables) == 1 and isinstance(tables[0], dict):
        return tables[0]
    return None
