"""Parse a file into its tables, each with its own text; where TOML refuses the file, table by table.

A file that TOML accepts is read at once. In one that it refuses each table is read alone, so that a mistake
costs the line or the table it stands in and nothing else.
"""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path

from library.book.model import Layer
from library.book.raw_table import RawTable
from library.issue import Issue, Place, Severity
from library.toml.conflicts import conflicts
from library.toml.limits import is_too_much
from library.toml.parse_errors import ParseError, explain
from library.toml.pieces import Piece, split
from library.toml.recovery import Recovered, read_alone

MOST_FINDINGS = 20_000
"""Mistakes in the writing of one file that are told; the rest is told when these are fixed."""

_BYTE_ORDER_MARK = "\ufeff"


@dataclass
class Parsed:
    """What a file holds.

    Attributes:
        tables: its tables in order.
        findings: mistakes in the writing.
    """

    tables: list[RawTable] = field(default_factory=list)
    findings: list[Issue] = field(default_factory=list)


def parse(raw: bytes, file: Path, layer: Layer) -> Parsed:
    """Read the tables of a file.

    Args:
        raw: its bytes.
        file: its path, for the findings.
        layer: that it belongs to.
    """
    parsed = Parsed()
    if raw[:2] in {b"\xff\xfe", b"\xfe\xff"}:
        parsed.findings.append(_of_file(file, "The file is saved as UTF-16.", "Save it as UTF-8."))
        return parsed
    if raw.startswith(b"\xef\xbb\xbf"):
        wrong = "The file begins with a byte order mark, which TOML does not know."
        fix = 'Save it as "UTF-8" instead of "UTF-8 with BOM".'
        parsed.findings.append(_of_file(file, wrong, fix, "warning"))
    text = decoded(raw)
    if b"\r" in raw and b"\n" not in raw:
        wrong = "The lines end in the way of very old computers, which TOML does not know."
        parsed.findings.append(_of_file(file, wrong, "Save it with line ends of Unix or Windows.", "warning"))
    pieces = split(text)
    data, refusal = _whole(text)
    if data is not None and _is_regular(pieces, data):
        parsed.tables = _tables_of(pieces, data, text, file, layer)
    else:
        _read_each(pieces, text, file, layer, parsed)
        if refusal and not parsed.findings and not any(table.brackets for table in parsed.tables):
            parsed.findings.append(_issue(explain(text.split("\n"), refusal), file, 1, ""))
    return parsed


def decoded(raw: bytes) -> str:
    """The text of a file without its byte order mark, cut into lines in a way that TOML knows.

    A byte that is no text becomes a lone surrogate.
    """
    text = raw.decode("utf-8", "surrogateescape").removeprefix(_BYTE_ORDER_MARK)
    return text if "\n" in text else text.replace("\r", "\n")


def _whole(text: str) -> tuple[dict[str, object] | None, str]:
    """The document, or nothing and what the parser said of it."""
    if is_too_much(text):
        return None, ""
    try:
        return tomllib.loads(text), ""
    except (ValueError, RecursionError) as error:
        return None, str(error)


def _is_regular(pieces: list[Piece], data: Mapping[str, object]) -> bool:
    """Whether the pieces are one by one the tables that the parser found."""
    counts: dict[str, int] = {}
    for piece in pieces[1:]:
        if piece.brackets:
            return False
        counts[piece.array] = counts.get(piece.array, 0) + 1
    for array, count in counts.items():
        tables = data.get(array)
        if not isinstance(tables, list) or len(tables) != count:
            return False
    return True


def _tables_of(
    pieces: list[Piece], data: Mapping[str, object], text: str, file: Path, layer: Layer
) -> list[RawTable]:
    arrays = {piece.array for piece in pieces[1:]}
    top = {key: value for key, value in data.items() if key not in arrays}
    found = [RawTable("", top, layer, file, text[: pieces[0].end], 1)]
    seen: dict[str, int] = {}
    for piece in pieces[1:]:
        number = seen[piece.array] = seen.get(piece.array, -1) + 1
        tables = data[piece.array]
        assert isinstance(tables, list)
        own = text[piece.start : piece.end]
        found.append(
            RawTable(
                piece.array, tables[number], layer, file, own, piece.line, start=piece.start, end=piece.end
            )
        )
    return found


def _read_each(pieces: list[Piece], text: str, file: Path, layer: Layer, parsed: Parsed) -> None:
    apart = conflicts(text)
    for conflict in apart[: MOST_FINDINGS + 1]:
        wrong = f"Lines {conflict.first} to {conflict.last} hold two versions that git could not join; neither is read."
        fix = "Keep one, and delete the lines that begin with <<<<<<<, ======= and >>>>>>>."
        parsed.findings.append(_of_file(file, wrong, fix, line=conflict.first))
    for piece in pieces:
        if len(parsed.findings) > MOST_FINDINGS:
            wrong = (
                f"There are more than {MOST_FINDINGS} mistakes in this file; from here on it was not read."
            )
            parsed.findings.append(_of_file(file, wrong, "Fix the ones before first.", line=piece.line))
            return
        for one in read_alone(piece, text, apart):
            table = _recovered(one, text, file, layer)
            if table is not None:
                parsed.tables.append(table)
            name = (table.id if table else "") or one.piece.array
            parsed.findings.extend(_issue(mistake, file, one.piece.line, name) for mistake in one.mistakes)


def _recovered(one: Recovered, text: str, file: Path, layer: Layer) -> RawTable | None:
    piece = one.piece
    if one.content is None:
        return None
    table = RawTable(
        piece.array, one.content, layer, file, one.text, piece.line, one.unread, piece.brackets, one.broken
    )
    is_whole = one.text == text[piece.start : piece.end].replace("\r\n", "\n")
    if one.mistakes or piece.brackets or not is_whole:
        return table
    return replace(table, start=piece.start, end=piece.end)


def _of_file(file: Path, wrong: str, fix: str, severity: Severity = "error", *, line: int = 1) -> Issue:
    return Issue("", "", severity, wrong, fix, Place(file, line))


def _issue(mistake: ParseError, file: Path, first_line: int, name: str) -> Issue:
    place = Place(file, first_line + mistake.line - 1, mistake.column)
    return Issue(name, mistake.key, "error", mistake.wrong, mistake.fix, place)
