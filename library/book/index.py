"""The cache of a parsed book in the cache folder, so that a start need not parse what has not changed.

Nothing depends on it: it may be deleted, spoilt or impossible to write at any time. No number that a person works with
comes from it, only rows to choose from, places in files, and problems that were found.
"""

from __future__ import annotations

import json
import os
import zlib
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from library.book.fetching import Signature
from library.book.model import Layer
from library.book.rows import FIELDS, Row, Rows, extents_of
from library.issue import Issue, Place

FORMAT = 4


@dataclass(frozen=True)
class FileNote:
    """A file of the book, as it was when it was read.

    Attributes:
        path: of the file.
        layer: that it belongs to.
        signature: that it had.
    """

    path: Path
    layer: Layer
    signature: Signature


@dataclass(frozen=True)
class FileRead:
    """What one file gave.

    Attributes:
        note: of the file.
        rows: of its tables; the number of the file in their places is 0.
        findings: its problems.
    """

    note: FileNote
    rows: tuple[Row, ...] = ()
    findings: tuple[Issue, ...] = ()


@dataclass(frozen=True)
class Index:
    """What is known of a book without reading its files.

    Attributes:
        notes: its files.
        entries: one row for each entry.
        others: the rows of other tables, by kind.
        findings: every problem.
    """

    notes: Sequence[FileNote]
    entries: Rows
    others: Mapping[str, Sequence[Row]] = field(default_factory=dict)
    findings: tuple[Issue, ...] = ()

    def is_of(self, files: Iterable[tuple[Path, Layer, Signature]]) -> bool:
        """Whether these are the files, unchanged, that it was made from."""
        return [(note.path, note.layer, note.signature) for note in self.notes] == list(files)


def code_stamp() -> int:
    """A number that changes with the program, so that another version's cache is not trusted."""
    library = Path(__file__).parent.parent
    folders = (
        library,
        library / "book",
        library / "toml",
        library / "units",
        library / "equipment",
        library.parent / "geometry" / "quantities",
    )
    stamp = FORMAT
    for folder in folders:
        with suppress(OSError):
            for found in sorted(os.scandir(folder), key=lambda one: one.name):
                if found.name.endswith(".py"):
                    status = found.stat()
                    stamp = zlib.crc32(f"{found.name} {status.st_mtime_ns} {status.st_size}".encode(), stamp)
    return stamp


def load_index(file: Path) -> Index | None:
    """The index kept in a file; nothing when there is none that can be used."""
    with suppress(*_UNUSABLE):
        head, lines = _taken(file)
        return Index(
            [_note(one) for one in head["notes"]],
            Rows(lines),
            {str(kind): [_row(one) for one in rows] for kind, rows in head["others"].items()},
            tuple(_issue(one) for one in head["findings"]),
        )
    return None


def save_index(index: Index, file: Path) -> None:
    """Keep an index in a file; where that cannot be done, nothing happens."""
    head = {
        "notes": [_plain_note(note) for note in index.notes],
        "others": index.others,
        "findings": [_plain_issue(finding) for finding in index.findings],
    }
    _put(file, head, index.entries.lines)


def load_reads(file: Path) -> dict[Path, tuple[FileRead, int]]:
    """What each file gave when it was read last, and the context it was read in."""
    with suppress(*_UNUSABLE):
        head, _ = _taken(file)
        reads = (
            FileRead(_note(note), tuple(map(_row, rows)), tuple(map(_issue, findings)))
            for note, rows, findings in head["reads"]
        )
        return {read.note.path: (read, int(head["context"])) for read in reads}
    return {}


def save_reads(reads: Iterable[FileRead], context: int, file: Path) -> None:
    """Keep what each file gave; where that cannot be done, nothing happens."""
    plain = [
        [_plain_note(read.note), read.rows, [_plain_issue(one) for one in read.findings]] for read in reads
    ]
    _put(file, {"context": context, "reads": plain})


_UNUSABLE = (
    OSError,
    ValueError,
    TypeError,
    KeyError,
    IndexError,
    AttributeError,
    RecursionError,
    OverflowError,
)
"""What a cache file may be to blame for that is spoilt, or was written by something else."""


def _taken(file: Path) -> tuple[dict[str, Any], list[str]]:
    """What a cache file holds: a head, and the lines of the list.

    Raises:
        ValueError: for a spoilt one, and for one of another version of the program.
    """
    # A file that is a pipe by now does not hold the program.
    flags = os.O_RDONLY | getattr(os, "O_NONBLOCK", 0) | getattr(os, "O_CLOEXEC", 0)
    with open(os.open(file, flags), "rb") as stream:
        beginning, held = stream.readline(200), stream.read()
    if beginning != _beginning(held):
        raise ValueError("not what was written")
    first, *lines = held.decode().split("\n")
    head = json.loads(first)
    if head["stamp"] != code_stamp() or {line.count("\t") for line in lines} - {FIELDS - 1}:
        raise ValueError("another version's")
    return head, lines


def _beginning(held: bytes) -> bytes:
    """The first line of a cache file, by which a spoilt one is known: a check and the length of the rest."""
    return b"heelclear %d:%d\n" % (zlib.crc32(held), len(held))


def _put(file: Path, head: Mapping[str, object], lines: Sequence[str] = ()) -> None:
    import tempfile

    first = json.dumps({"stamp": code_stamp(), **head})
    held = "\n".join([first, *lines]).encode("utf-8", "replace")
    beside = ""
    try:
        file.parent.mkdir(parents=True, exist_ok=True)
        handle, beside = tempfile.mkstemp(dir=file.parent, prefix=".unfinished-")
        with open(handle, "wb") as stream:
            stream.writelines([_beginning(held), held])
        os.replace(beside, file)
    except OSError:
        with suppress(OSError):
            os.unlink(beside)


def _plain_note(note: FileNote) -> list[object]:
    signature = note.signature
    return [str(note.path), note.layer, signature.mtime_ns, signature.ctime_ns, signature.size]


def _note(plain: Sequence[Any]) -> FileNote:
    path, layer, *numbers = _checked(plain, str, str, int, int, int)
    if layer not in {"shipped", "shop"}:
        raise ValueError("no such layer")
    return FileNote(Path(path), layer, Signature(*numbers))


def _plain_issue(issue: Issue) -> list[object]:
    place = issue.place
    texts = (issue.where, issue.key, issue.severity, issue.wrong, issue.fix)
    return [*texts, str(place.file), place.line, place.column]


def _issue(plain: Sequence[Any]) -> Issue:
    where, key, severity, wrong, fix, file, line, column = _checked(plain, *[str] * 6, int, int)
    place = Place(Path(file), line, column)
    return Issue(where, key, "warning" if severity == "warning" else "error", wrong, fix, place)


def _row(plain: Sequence[Any]) -> Row:
    row = Row(*_checked(plain, *[str] * FIELDS))
    extents_of(row)
    return row


def _checked(plain: Sequence[Any], *kinds: type) -> Sequence[Any]:
    if [type(one) for one in plain] != list(kinds):
        raise TypeError("not what was written")
    return plain
