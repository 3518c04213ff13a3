"""The plan of a change: a file as it is and as it would be, with the diff that is shown before it is saved."""

from __future__ import annotations

import difflib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from library.editing.document import Data, Document, open_document
from library.editing.in_place import Splice, spliced, splices_for, splices_for_table
from library.editing.proof import prove
from library.editing.steps import Step, applied
from library.errors import named
from library.sanitize import sanitize

NEW_FILE = b"schema = 1\n"
"""What a new file begins with."""


@dataclass(frozen=True)
class Plan:
    """One file as it is, and as it would be.

    Attributes:
        path: the file.
        root: the shop's folder.
        before: its bytes as they were read; nothing when it does not exist yet.
        after: its bytes after saving; nothing when it is to be removed.
        sentence: what changes, and in which file, for the person and for the record of changes.
        renamed: the old and the new id, where an entry gets another one.
    """

    path: Path
    root: Path
    before: bytes | None
    after: bytes | None
    sentence: str
    renamed: tuple[str, str] | None = None

    def diff(self) -> tuple[str, ...]:
        """The lines that change, as a unified diff, safe to show."""
        name = named(self.path.relative_to(self.root))
        old, new = _shown_lines(self.before), _shown_lines(self.after)
        return tuple(difflib.unified_diff(old, new, name, name, "as it is", "as it would be", lineterm=""))


def _shown_lines(raw: bytes | None) -> list[str]:
    text = (raw or b"").decode("utf-8", "replace")
    lines = [sanitize(line.removesuffix("\r")) for line in text.split("\n")]
    return lines[:-1] if lines[-1] == "" else lines


def replanned(path: Path, raw: bytes | None, steps: Sequence[Step]) -> bytes:
    """The bytes of a file after several steps, each of them proved."""
    document = open_document(path, NEW_FILE if raw is None else raw)
    for step in steps:
        document = _proved(document, splices_for(document, step), applied(document.data, step))
    return document.bytes_with(document.text)


def with_table(path: Path, raw: bytes, array: str, table: Mapping[str, object]) -> bytes:
    """The bytes of a file after the one table of its kind got exactly these keys, proved as steps are.

    Raises:
        EditRefused: when the change cannot be made without losing what else stands there.
    """
    document = open_document(path, raw)
    expected = document.data | {array: [dict(table)]}
    changed = _proved(document, splices_for_table(document, (array, 0), table, expected), expected)
    return changed.bytes_with(changed.text)


def _proved(document: Document, splices: list[Splice], expected: Data) -> Document:
    text = spliced(document.text, splices)
    prove(document, text, expected, splices)
    return Document(document.path, document.mark, text, expected)
