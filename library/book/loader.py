"""Load one object on demand: its table is read again from the file, where the index says that it stands."""

from __future__ import annotations

from collections import OrderedDict
from collections.abc import Mapping, Sequence
from pathlib import Path

from library.book.diagnostics import Diagnostics, shown
from library.book.fetching import Signature, Unreadable, fetch, refused
from library.book.index import FileNote
from library.book.layers import Part, build, read_part
from library.book.parsing import decoded, parse
from library.book.raw_table import RawTable
from library.book.rows import Extent, Row, extents_of
from library.book.shapes import Shape, shapes
from library.sanitize import sanitize
from library.toml.limits import loads

MOST_TEXTS = 16
"""Files whose text is kept at hand."""


class Gone(KeyError):
    """A table that was in the book when it was read, and is not in its file any more.

    Attributes:
        sentence: what happened to its file, and what to do; a whole sentence or two.
    """

    def __init__(self, name: str, sentence: str = "") -> None:
        self.sentence = sentence or f"{shown(name)} is not in the book any more."
        super().__init__(name)


class Loader:
    """Reads tables where an index says they stand.

    When a file has changed since, its table is looked for by its id.
    """

    def __init__(self, notes: Sequence[FileNote]) -> None:
        self._notes = notes
        self._texts: OrderedDict[Path, tuple[bytes, str, Signature]] = OrderedDict()
        self._changed: OrderedDict[Path, tuple[Signature, Mapping[tuple[str, str], RawTable]]] = OrderedDict()

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
        changed = self._parsed(note, raw, signature).get((row.array, row.id))
        if changed is not None:
            return changed
        file = sanitize(note.path.name)
        wrong = f"{file} was changed by somebody else and does not hold {shown(row.id)} any more."
        raise Gone(row.id, wrong)

    def _parsed(self, note: FileNote, raw: bytes, signature: Signature) -> Mapping[tuple[str, str], RawTable]:
        """The tables of a file that has changed since, parsed once as long as it stays as it is now."""
        kept = self._changed.get(note.path)
        if kept is None or kept[0] != signature:
            tables: dict[tuple[str, str], RawTable] = {}
            for table in parse(raw, note.path, note.layer).tables:
                tables.setdefault((table.array, table.id), table)
            kept = self._changed[note.path] = (signature, tables)
            while len(self._changed) > MOST_TEXTS:
                self._changed.popitem(last=False)
        return kept[1]

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
            raise Gone(row.id, _without_its_file(row.id, path, error)) from error
        return found


def _without_its_file(name: str, path: Path, error: Unreadable | OSError) -> str:
    """What to say of a table whose file cannot be had."""
    file = sanitize(path.name)
    if isinstance(error, FileNotFoundError) or isinstance(error.__cause__, FileNotFoundError):
        return (
            f"{shown(name)} stood in {file}, which is not there any more: somebody else removed or renamed it. "
            "Put the file back, or go on without it."
        )
    why = error if isinstance(error, Unreadable) else refused(error)
    return f"{shown(name)} stands in {file}, which cannot be read any more. {why}"


def _alone(text: str, array: str) -> dict[str, object] | None:
    tables = (loads(text) or {}).get(array)
    if isinstance(tables, list) and len(tables) == 1 and isinstance(tables[0], dict):
        return tables[0]
    return None
