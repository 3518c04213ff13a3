"""Error recovery: parse one table that TOML refuses, leaving out the lines that are wrong, and say why.

A line that cannot be read is left out and told of; then the rest is tried again. A table that cannot be read at
all still gives its id, so that it does not vanish from the list.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, replace

from library.sanitize import MARK, name_of
from library.toml.conflicts import Conflict
from library.toml.limits import DEEPEST, LONGEST_LINE, has_deep_key, is_too_long
from library.toml.parse_errors import ParseError, explain, is_conflict_mark, key_of
from library.toml.patterns import KEY
from library.toml.pieces import Piece, split_plainly

MOST_MISTAKES = 20
"""Mistakes told of one table; the rest is told when these are fixed."""

LARGEST_TABLE = 1 << 17
"""Characters in a table that is tried again and again; a longer one is tried once."""

_NOT_TEXT = re.compile("[\x00-\x08\x0b-\x1f\x7f\udc80-\udcff]")
_BELOW = re.compile(rf"^[ \t]*+\[\[?[ \t]*+{KEY}[ \t]*+\.(?P<path>[^\]\n]*+)\]", re.MULTILINE)
_ID = re.compile(r"""^[ \t]*id[ \t]*=[ \t]*["'](?P<id>[^"'\n]*)["']""", re.MULTILINE)


@dataclass(frozen=True)
class Recovered:
    """What could be had of one table.

    Attributes:
        piece: where it stands.
        content: its keys; nothing where it cannot be read.
        mistakes: what is wrong with its writing.
        text: that was read, with unreadable lines left empty.
        unread: keys whose line could not be read.
        broken: true when nothing but its id could be read.
    """

    piece: Piece
    content: Mapping[str, object] | None = None
    mistakes: tuple[ParseError, ...] = ()
    text: str = ""
    unread: frozenset[str] = frozenset()
    broken: bool = False


def read_alone(piece: Piece, text: str, apart: list[Conflict]) -> list[Recovered]:
    """Read one table by itself.

    Args:
        piece: where it stands.
        text: of the file.
        apart: conflicts in the file; lines in them are not read.

    Returns:
        The table; or, where a text that is not closed has swallowed the tables after it, each of them.
    """
    first = _placed(_read(piece, text, apart), text)
    parts = split_plainly(text, piece) if first.content is None or first.unread else []
    if len(parts) > 1:
        each = [_placed(_read(part, text, apart), text) for part in parts]
        if any(one.content is not None and not one.unread for one in each[1:]):
            return [_or_its_name(one, text) for one in each]
    return [_or_its_name(first, text)]


def _placed(read: Recovered, text: str) -> Recovered:
    """The same, where each mistake names the table of a value that it stands in, and that value is not read.

    What is left of a value without one of its lines is not what the shop wrote.
    """
    piece = read.piece
    below = _BELOW.search(text, piece.start, piece.end) if read.mistakes else None
    if below is None or piece.brackets == "strayed":
        return read
    paths = _paths(text[piece.start : piece.end].split("\n"))
    placed = tuple(
        replace(mistake, key=".".join(part for part in (paths[mistake.line - 1], mistake.key) if part))
        for mistake in read.mistakes
    )
    values = {paths[mistake.line - 1] for mistake in read.mistakes} - {""}
    return replace(read, unread=read.unread | values, mistakes=placed)


def _paths(lines: list[str]) -> list[str]:
    """For each line of a table the name of the table below it that the line stands in; empty in its own lines."""
    paths, path = [], ""
    for line in lines:
        found = _BELOW.match(line)
        path = re.sub(r"[\s\"']", "", found["path"]) if found else path
        paths.append(path)
    return paths


def _or_its_name(read: Recovered, text: str) -> Recovered:
    piece = read.piece
    named = _ID.search(text, piece.start, piece.end)
    if read.content is not None or not piece.array or not named or piece.brackets == "strayed":
        return read
    empty = "\n" * text.count("\n", piece.start, piece.end)
    return Recovered(piece, {"id": named["id"]}, read.mistakes, empty, broken=True)


def _read(piece: Piece, text: str, apart: list[Conflict]) -> Recovered:
    lines = text[piece.start : piece.end].replace("\r\n", "\n").split("\n")
    if not _take_out_conflicts(lines, piece, apart):
        return Recovered(piece)
    mistakes = [*_characters(lines), *_forbidden(lines)]
    most = MOST_MISTAKES if piece.end - piece.start < LARGEST_TABLE else 1
    while all(mistake.apart for mistake in mistakes):
        try:
            data = tomllib.loads("\n".join(lines))
        except (ValueError, RecursionError) as error:
            mistake = explain(lines, str(error))
            mistakes.append(mistake)
            if len(mistakes) > most or not _leave_out(lines, mistake):
                break
            continue
        if piece.brackets == "strayed":
            return Recovered(piece, mistakes=(_strayed(lines[0]),))
        return _made(piece, data, lines, mistakes)
    return Recovered(piece, mistakes=tuple(mistakes))


def _made(piece: Piece, data: dict[str, object], lines: list[str], mistakes: list[ParseError]) -> Recovered:
    content = _content(piece, data)
    if content is None:
        fix = f"Write the first line of each as [[{piece.array}]], without quotes."
        mistakes.append(ParseError(1, 1, "This table and the next cannot be told apart.", fix))
        return Recovered(piece, mistakes=tuple(mistakes))
    unread = frozenset(mistake.key for mistake in mistakes if mistake.key)
    return Recovered(piece, content, tuple(mistakes), "\n".join(lines), unread)


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
        if is_too_long(line):
            fix = "Divide it; a text of several lines stands between three quotes."
            mistake = ParseError(number, 1, f"The line is longer than {LONGEST_LINE} bytes.", fix, key)
        elif has_deep_key(line):
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
