"""Reading one table of a file that TOML refuses, and having of it what can be had.

A line that cannot be read is left out and told of; then the rest is tried again. A table that cannot be read at
all still gives its id, so that it does not vanish from the list.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path

from library.book.model import Layer
from library.book.raw_table import RawTable
from library.sanitize import MARK, name_of
from library.toml.conflicts import Conflict
from library.toml.parse_errors import ParseError, explain, is_conflict_mark, key_of
from library.toml.patterns import KEY
from library.toml.pieces import Piece, split_plainly

LONGEST_LINE = 4096
"""Bytes in one line; a longer one makes the parser slow beyond reason."""

DEEPEST = 16
"""Tables, arrays and dotted keys within each other."""

MOST_MISTAKES = 20
"""Mistakes told of one table; the rest is told when these are fixed."""

LARGEST_TABLE = 1 << 17
"""Characters in a table that is tried again and again; a longer one is tried once."""

_DEEP_KEY = re.compile(
    rf"^[ \t]*+\[?\[?[ \t]*+{KEY}(?:[ \t]*+\.[ \t]*+{KEY}){{{DEEPEST},}}+[ \t]*+[=\]]", re.MULTILINE
)
_NOT_TEXT = re.compile("[\x00-\x08\x0b-\x1f\x7f\udc80-\udcff]")
_NO_TEXT = re.compile("[\udc80-\udcff]")
_BELOW = re.compile(rf"^[ \t]*+\[\[?[ \t]*+{KEY}[ \t]*+\.(?P<path>[^\]\n]*+)\]", re.MULTILINE)
_ID = re.compile(r"""^[ \t]*id[ \t]*=[ \t]*["'](?P<id>[^"'\n]*)["']""", re.MULTILINE)

Read = tuple[Piece, RawTable | None, list[ParseError]]
"""A table of a file, what could be read of it, and what is wrong with it."""


def is_too_much(text: str) -> bool:
    """Whether a text holds what the parser must not be given."""
    if any(len(line) > LONGEST_LINE // 4 and _bytes(line) > LONGEST_LINE for line in text.split("\n")):
        return True
    return _DEEP_KEY.search(text) is not None or _NO_TEXT.search(text) is not None


def read_alone(piece: Piece, text: str, file: Path, layer: Layer, apart: list[Conflict]) -> list[Read]:
    """Read one table by itself.

    Args:
        piece: where it stands.
        text: of the file.
        file: for the findings.
        layer: of the file.
        apart: conflicts in the file; lines in them are not read.

    Returns:
        The table; or, where a text that is not closed has swallowed the tables after it, each of them.
    """
    first = _placed(_read(piece, text, file, layer, apart), text)
    parts = split_plainly(text, piece) if first[1] is None or first[1].unread else []
    if len(parts) > 1:
        each = [_placed(_read(part, text, file, layer, apart), text) for part in parts]
        if any(table and not table.unread for _, table, _ in each[1:]):
            return [_or_its_name(one, text, file, layer) for one in each]
    return [_or_its_name(first, text, file, layer)]


def _placed(read: Read, text: str) -> Read:
    """The same, where each mistake names the table of a value that it stands in, and that value is not read.

    What is left of a value without one of its lines is not what the shop wrote.
    """
    piece, table, mistakes = read
    below = _BELOW.search(text, piece.start, piece.end) if mistakes else None
    if below is None or piece.lonely == "strayed":
        return read
    paths = _paths(text[piece.start : piece.end].split("\n"))
    placed = [
        replace(mistake, key=".".join(part for part in (paths[mistake.line - 1], mistake.key) if part))
        for mistake in mistakes
    ]
    values = {paths[mistake.line - 1] for mistake in mistakes}
    return piece, replace(table, unread=table.unread | (values - {""})) if table else None, placed


def _paths(lines: list[str]) -> list[str]:
    """For each line of a table the name of the table below it that the line stands in; empty in its own lines."""
    paths, path = [], ""
    for line in lines:
        found = _BELOW.match(line)
        path = re.sub(r"[\s\"']", "", found["path"]) if found else path
        paths.append(path)
    return paths


def _or_its_name(read: Read, text: str, file: Path, layer: Layer) -> Read:
    piece, table, mistakes = read
    named = _ID.search(text, piece.start, piece.end)
    if table is None and piece.array and named and piece.lonely != "strayed":
        empty = "\n" * text.count("\n", piece.start, piece.end)
        table = RawTable(piece.array, {"id": named["id"]}, layer, file, empty, piece.line, broken=True)
    return piece, table, mistakes


def _read(piece: Piece, text: str, file: Path, layer: Layer, apart: list[Conflict]) -> Read:
    own = text[piece.start : piece.end].replace("\r\n", "\n").split("\n")
    lines = own.copy()
    if not _take_out_conflicts(lines, piece, apart):
        return piece, None, []
    mistakes = [*_characters(lines), *_forbidden(lines)]
    most = MOST_MISTAKES if piece.end - piece.start < LARGEST_TABLE else 1
    while all(mistake.apart for mistake in mistakes):
        try:
            data = tomllib.loads("\n".join(lines))
        except (ValueError, RecursionError) as error:
            mistake = explain(lines, str(error))
            mistakes.append(mistake)
            if len(mistakes) > most or not _leave_out(lines, mistake):
                return piece, None, mistakes
            continue
        if piece.lonely == "strayed":
            return piece, None, [_strayed(lines[0])]
        return _made(piece, data, lines, mistakes, file, layer, untouched=own == lines)
    return piece, None, mistakes


def _made(
    piece: Piece,
    data: dict[str, object],
    lines: list[str],
    mistakes: list[ParseError],
    file: Path,
    layer: Layer,
    *,
    untouched: bool,
) -> Read:
    content = _content(piece, data)
    if content is None:
        fix = f"Write the first line of each as [[{piece.array}]], without quotes."
        return (
            piece,
            None,
            [*mistakes, ParseError(1, 1, "This table and the next cannot be told apart.", fix)],
        )
    unread = frozenset(mistake.key for mistake in mistakes if mistake.key)
    table = RawTable(piece.array, content, layer, file, "\n".join(lines), piece.line, unread, piece.lonely)
    if not mistakes and not piece.lonely and untouched:
        table = replace(table, start=piece.start, end=piece.end)
    return piece, table, mistakes


def _content(piece: Piece, data: dict[str, object]) -> Mapping[str, object] | None:
    if not piece.array:
        return data
    tables = data.get(piece.array)
    if isinstance(tables, list) and len(tables) == 1:
        tables = tables[0]
    return tables if isinstance(tables, dict) and len(data) == 1 else None


def _strayed(header: str) -> ParseError:
    wrong = f"{header.strip()[:60]} does not stand below the table that it belongs to."
    return ParseError(1, 1, wrong, "Move it with its lines directly under that table.")


def _take_out_conflicts(lines: list[str], piece: Piece, apart: list[Conflict]) -> bool:
    """Empty the lines from a conflict on, when nothing of this table is in it; false when something is."""
    for conflict in apart:
        if conflict.first <= piece.line <= conflict.last:
            return False
        begins = conflict.first - piece.line
        if 0 < begins < len(lines):
            rest = lines[begins:]
            if any(
                line.strip() and not line.lstrip().startswith("#") and not is_conflict_mark(line)
                for line in rest
            ):
                return False
            lines[begins:] = [""] * len(rest)
    return True


def _characters(lines: list[str]) -> list[ParseError]:
    """Replace what is no text by a mark, and tell of the first in each line."""
    mistakes = []
    for number, line in enumerate(lines, 1):
        strange = _NOT_TEXT.search(line)
        if strange is None:
            continue
        character = strange[0]
        if ord(character) > 0xFF:
            wrong = f"The byte 0x{ord(character) - 0xDC00:02X} is not UTF-8 text."
            fix = "Save the file as UTF-8, or type that character again."
        else:
            wrong = f"The line holds {name_of(character)}, which cannot be seen or is not text."
            fix = "Type the line again without it."
        mistakes.append(ParseError(number, strange.start() + 1, wrong, fix, key_of(line)))
        lines[number - 1] = _NOT_TEXT.sub(MARK, line)
    return mistakes


def _forbidden(lines: list[str]) -> list[ParseError]:
    """Leave out lines that are too long for the parser, and keys that are too deep."""
    mistakes = []
    for number, line in enumerate(lines, 1):
        key = key_of(line)
        if len(line) > LONGEST_LINE // 4 and _bytes(line) > LONGEST_LINE:
            fix = "Divide it; a text of several lines stands between three quotes."
            mistake = ParseError(number, 1, f"The line is longer than {LONGEST_LINE} bytes.", fix, key)
        elif _DEEP_KEY.match(line):
            mistake = ParseError(number, 1, f"A key here has more than {DEEPEST} parts.", "Remove it.", key)
        else:
            continue
        mistakes.append(replace(mistake, apart=not line.lstrip().startswith("[")))
        lines[number - 1] = ""
    return mistakes


def _leave_out(lines: list[str], mistake: ParseError) -> bool:
    """Empty the lines of a mistake; false when they are empty already."""
    last = max(mistake.last, mistake.line)
    if not any(lines[mistake.line - 1 : last]) or not mistake.apart:
        return False
    for number in range(mistake.line, last + 1):
        lines[number - 1] = ""
    return True


def _bytes(line: str) -> int:
    return len(line.encode("utf-8", "surrogateescape"))
