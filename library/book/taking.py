"""Take one table out of its file again, and make of it what the model knows."""

from __future__ import annotations

import tomllib
from collections import OrderedDict
from collections.abc import Sequence
from pathlib import Path

from library.book.desk import Desk
from library.book.fetching import Signature, Unreadable, fetch
from library.book.index import FileNote
from library.book.layers import Part, build, read_part
from library.book.mending import is_too_much
from library.book.parsing import decoded, parse
from library.book.rows import Location, Row, locations_of
from library.book.shapes import Shape, shapes
from library.book.sheet import Sheet

MOST_TEXTS = 16
"""Files whose text is kept at hand."""


class Gone(KeyError):
    """A table that was in the book when it was read, and is not in its file any more."""


class Taker:
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
            locations = locations_of(row)
        except (TypeError, ValueError) as error:
            raise Gone(row.id) from error
        return build([self.part(row, location, shape) for location in locations], shape)

    def part(self, row: Row, location: Location, shape: Shape) -> Part:
        """What one layer says of a row's table; problems are not told again."""
        if not 0 <= location.file < len(self._notes):
            raise Gone(row.id)
        return read_part(self._sheet(row, location), shape, Desk(is_deaf=True))

    def _sheet(self, row: Row, location: Location) -> Sheet:
        note = self._notes[location.file]
        raw, text, signature = self._text(note.path, row)
        if location.end and signature == note.signature:
            own = text[location.start : location.end]
            table = _alone(own, row.array)
            if table is not None:
                sheet = Sheet(row.array, table, note.layer, note.path, own, location.line)
                if sheet.id == row.id:
                    return sheet
        for sheet in parse(raw, note.path, note.layer).sheets:
            if (sheet.array, sheet.id) == (row.array, row.id):
                return sheet
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
    if is_too_much(text):
        return None
    try:
        tables = tomllib.loads(text).get(array)
    except (ValueError, RecursionError):
        return None
    if isinstance(tables, list) and len(tables) == 1 and isinstance(tables[0], dict):
        return tables[0]
    return None
