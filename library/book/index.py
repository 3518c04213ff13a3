"""The cache of a parsed book in the cache folder, so that a start need not parse what has not changed.

Nothing depends on it: it may be deleted, spoilt or impossible to write at any time. No number that a person works with
comes from it, only rows to choose from, places in files, and problems that were found.
"""

from __future__ import annotations

import json
import os
import zlib
from array import array
from collections.abc import Iterable, Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from library.book.fetching import Signature
from library.book.file_slice import Kept, mark_of, open_plainly
from library.book.model import Layer
from library.book.rows import FIELDS, Row, Rows, extents_of
from library.book.search_text import Shared
from library.issue import Issue, Place, Severity

FORMAT = 6

STAMPED = (
    "library",
    "library/book",
    "library/calc",
    "library/files",
    "library/toml",
    "library/units",
    "library/equipment",
    "library/guidance",
    "library/shop_threads",
    "geometry",
    "geometry/cone",
    "geometry/edge",
    "geometry/fit",
    "geometry/quantities",
    "geometry/thread",
    "geometry/wheel",
)
"""The folders of the program whose source has a part in what is kept of a book."""


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


def shared_by(others: Mapping[str, Sequence[Row]]) -> Shared:
    """By what the entries of a family, or of a work material, are found together.

    Args:
        others: the rows of other tables, by kind.
    """
    families, materials = (
        {row.id: row.search for row in others.get(kind, ())} for kind in ("family", "material")
    )
    return Shared(families, materials, {row.id: row.ranges for row in others.get("family", ())})


def code_stamp() -> int:
    """A number that changes with the program, so that another version's cache is not trusted."""
    return zlib.crc32(str(FORMAT).encode(), _source_stamp())


@cache
def _source_stamp() -> int:
    """A number that changes with the source; of a program that runs it is taken once."""
    here = Path(__file__).parents[2]
    stamp = 0
    for folder in STAMPED:
        with suppress(OSError):
            for found in sorted(os.scandir(here / folder), key=lambda one: one.name):
                if found.name.endswith(".py"):
                    status = found.stat()
                    stamp = zlib.crc32(f"{found.name} {status.st_mtime_ns} {status.st_size}".encode(), stamp)
    return stamp


def load_index(file: Path, *, at_once: bool = False) -> Index | None:
    """The index kept in a file; nothing when there is none that can be used.

    Args:
        file: its path.
        at_once: whether the rows stay in the file until somebody looks at them. They are then not checked
            for being what was written, and are for a first look only.
    """
    with suppress(OSError, ValueError, TypeError, KeyError, IndexError, RecursionError, OverflowError):
        first, ends, lines, searches = _take(file, 4, asleep=2 if at_once else 0)
        if not isinstance(first, bytes) or not isinstance(ends, bytes):
            raise TypeError("these are always read")
        head = json.loads(first)
        if head["stamp"] != code_stamp():
            return None
        offsets = array("Q")
        offsets.frombytes(ends)
        others = {str(kind): [_row(one) for one in rows] for kind, rows in head["others"].items()}
        return Index(
            [_note(one) for one in head["notes"]],
            Rows(lines, offsets, searches, shared_by(others)),
            others,
            tuple(_issue(one) for one in head["findings"]),
        )
    return None


def save_index(index: Index, file: Path) -> None:
    """Keep an index in a file; where that cannot be done, nothing happens."""
    lines, ends, searches = index.entries.parts()
    head = {
        "stamp": code_stamp(),
        "notes": [_plain_note(note) for note in index.notes],
        "others": index.others,
        "findings": [_plain_issue(finding) for finding in index.findings],
    }
    _put(file, [json.dumps(head).encode(), ends, lines, searches])


def load_reads(file: Path) -> dict[Path, tuple[FileRead, int]]:
    """What each file gave when it was read last, and the context it was read in."""
    with suppress(OSError, ValueError, TypeError, KeyError, IndexError, RecursionError, OverflowError):
        head = json.loads(bytes(_take(file, 1)[0]))
        if head["stamp"] == code_stamp():
            reads = (
                FileRead(_note(note), tuple(map(_row, rows)), tuple(map(_issue, findings)))
                for note, rows, findings in head["reads"]
            )
            return {read.note.path: (read, int(head["context"])) for read in reads}
    return {}


def save_reads(reads: Iterable[FileRead], context: int, file: Path) -> None:
    """Keep what each file gave; where that cannot be done, nothing happens."""
    head = {
        "stamp": code_stamp(),
        "context": context,
        "reads": [
            [_plain_note(read.note), read.rows, [_plain_issue(one) for one in read.findings]]
            for read in reads
        ],
    }
    _put(file, [json.dumps(head).encode()])


def _take(file: Path, count: int, asleep: int = 0) -> list[bytes | Kept]:
    """The parts of a cache file, the last of them left asleep; raises ``ValueError`` for a spoilt one."""
    with open_plainly(file) as stream:
        beginning = stream.readline(200)
        checks = [tuple(map(int, word.split(b":"))) for word in beginning.split()[1:]]
        status = os.fstat(stream.fileno())
        sizes = [size for _, size in checks]
        if len(sizes) != count or min(sizes) < 0 or sum(sizes) != status.st_size - len(beginning):
            raise ValueError("not as long as it was")
        parts: list[bytes | Kept] = []
        for check, size in checks[: count - asleep]:
            part = stream.read(size)
            if zlib.crc32(part) != check:
                raise ValueError("not what was written")
            parts.append(part)
        start = stream.tell()
        for size in sizes[count - asleep :]:
            parts.append(Kept(file, mark_of(status), start, size))
            start += size
    return parts


def _beginning(parts: Iterable[bytes]) -> bytes:
    """The first line of a cache file, by which a spoilt one is known: a check and the length of each part."""
    return b"heelclear " + b" ".join(b"%d:%d" % (zlib.crc32(part), len(part)) for part in parts) + b"\n"


def _put(file: Path, parts: Sequence[bytes]) -> None:
    from library.files.own_file import put_whole

    with suppress(OSError):
        put_whole(file, [_beginning(parts), *parts], lasting=False)


def _plain_note(note: FileNote) -> list[object]:
    signature = note.signature
    return [str(note.path), note.layer, signature.mtime_ns, signature.ctime_ns, signature.size]


def _note(plain: Sequence[object]) -> FileNote:
    path, layer, mtime, ctime, size = plain
    if layer not in {"shipped", "shop"}:
        raise ValueError("no such layer")
    numbers = (_number(mtime), _number(ctime), _number(size))
    return FileNote(Path(_text(path)), layer, Signature(*numbers))


def _plain_issue(finding: Issue) -> list[object]:
    place = finding.place
    return [
        str(place.file),
        place.line,
        place.column,
        finding.where,
        finding.key,
        finding.wrong,
        finding.fix,
        finding.severity,
        finding.counts,
    ]


def _issue(plain: Sequence[object]) -> Issue:
    file, line, column, where, key, wrong, fix, severity, counts = plain
    known: Severity = "warning" if severity == "warning" else "error"
    place = Place(Path(_text(file)), _number(line), _number(column))
    return Issue(_text(where), _text(key), known, _text(wrong), _text(fix), place, counts=_number(counts))


def _row(plain: Sequence[object]) -> Row:
    if len(plain) != FIELDS:
        raise ValueError("not a row")
    row = Row(*map(_text, plain))
    extents_of(row)
    return row


def _text(raw: object) -> str:
    if not isinstance(raw, str):
        raise TypeError("not a text")
    return raw


def _number(raw: object) -> int:
    if isinstance(raw, bool) or not isinstance(raw, int):
        raise TypeError("not a number")
    return raw
