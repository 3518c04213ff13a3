"""From the bytes of a file to its tables, each with the text it was written in.

A file that TOML accepts is read at once. In one that it refuses each table is read alone, so that a mistake
costs the line or the table it stands in and nothing else.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path

from library.book.model import Finding, Layer, Place
from library.book.patterns import KEY
from library.book.shop_words import Trouble, explain
from library.book.splitting import Piece, split, split_plainly

LONGEST_LINE = 4096
"""Bytes in one line; a longer one makes the parser slow beyond reason."""

DEEPEST = 16
"""Tables, arrays and dotted keys within each other."""

MOST_TROUBLES = 50
"""Mistakes told of one table; the rest is told when these are mended."""

_BYTE_ORDER_MARK = "\ufeff"
_DEEP_KEY = re.compile(
    rf"^[ \t]*+\[?\[?[ \t]*+{KEY}(?:[ \t]*+\.[ \t]*+{KEY}){{{DEEPEST},}}+[ \t]*+[=\]]", re.MULTILINE
)
_PAIR = re.compile(r"^[ \t]*(?P<key>[A-Za-z0-9_-]+)[ \t]*=")
_ID = re.compile(r"""^[ \t]*id[ \t]*=[ \t]*["'](?P<id>[^"'\n]*)["']""", re.MULTILINE)


@dataclass(frozen=True)
class Sheet:
    """One table of a file, as it was written.

    Attributes:
        array: its kind, such as ``entry``; empty for what stands above the first table.
        table: its keys.
        layer: of the file.
        file: it stands in.
        text: of the table, from its own line to the next table.
        line: it begins on.
        unread: keys whose line could not be read.
        brackets: what is wrong with its brackets, as in ``splitting.Piece``.
    """

    array: str
    table: Mapping[str, object]
    layer: Layer
    file: Path
    text: str
    line: int
    unread: tuple[str, ...] = ()
    brackets: str = ""

    @property
    def id(self) -> str:
        """What the table calls itself; empty when it does not."""
        found = self.table.get("id")
        return found if isinstance(found, str) else ""


@dataclass
class Parsed:
    """What a file holds.

    Attributes:
        sheets: its tables in order.
        findings: mistakes in the writing.
    """

    sheets: list[Sheet] = field(default_factory=list)
    findings: list[Finding] = field(default_factory=list)


def parse(raw: bytes, file: Path, layer: Layer) -> Parsed:
    """Read the tables of a file.

    Args:
        raw: its bytes.
        file: its path, for the findings.
        layer: that it belongs to.
    """
    parsed = Parsed()
    text = decoded(raw)
    if raw[:2] in {b"\xff\xfe", b"\xfe\xff"}:
        parsed.findings.append(Finding(Place(file), "", "The file is saved as UTF-16.", "Save it as UTF-8."))
        return parsed
    if raw.startswith(b"\xef\xbb\xbf"):
        wrong = "The file begins with a byte order mark, which TOML does not know."
        mend = 'Save it as "UTF-8" instead of "UTF-8 with BOM".'
        parsed.findings.append(Finding(Place(file), "", wrong, mend, "watch"))
    pieces = split(text)
    data, refusal = _whole(text)
    if data is not None and _is_regular(pieces, data):
        parsed.sheets = _sheets_of(pieces, data, text, file, layer)
        return parsed
    for piece in pieces:
        _read_alone(piece, text, file, layer, parsed)
    if refusal and not parsed.findings and not any(sheet.brackets for sheet in parsed.sheets):
        trouble = explain(text.split("\n"), refusal)
        parsed.findings.append(_finding(trouble, file, 1, ""))
    return parsed


def decoded(raw: bytes) -> str:
    """The text of a file, without its byte order mark; a byte that is no text becomes a lone surrogate."""
    return raw.decode("utf-8", "surrogateescape").removeprefix(_BYTE_ORDER_MARK)


def _whole(text: str) -> tuple[dict[str, object] | None, str]:
    """The document, or nothing and what the parser said of it."""
    if _is_too_much(text):
        return None, ""
    try:
        return tomllib.loads(text), ""
    except (ValueError, RecursionError) as error:
        return None, str(error)


def _is_too_much(text: str) -> bool:
    """Whether the text holds what the parser must not be given."""
    if any(len(line) > LONGEST_LINE // 4 and _bytes(line) > LONGEST_LINE for line in text.split("\n")):
        return True
    return _DEEP_KEY.search(text) is not None


def _bytes(line: str) -> int:
    return len(line.encode("utf-8", "surrogateescape"))


def _is_regular(pieces: list[Piece], data: Mapping[str, object]) -> bool:
    """Whether the pieces are one by one the tables that the parser found."""
    counts: dict[str, int] = {}
    for piece in pieces[1:]:
        if piece.lonely:
            return False
        counts[piece.array] = counts.get(piece.array, 0) + 1
    for array, count in counts.items():
        tables = data.get(array)
        if not isinstance(tables, list) or len(tables) != count:
            return False
    return True


def _sheets_of(
    pieces: list[Piece], data: Mapping[str, object], text: str, file: Path, layer: Layer
) -> list[Sheet]:
    arrays = {piece.array for piece in pieces[1:]}
    top = {key: value for key, value in data.items() if key not in arrays}
    sheets = [Sheet("", top, layer, file, text[: pieces[0].end], 1)]
    seen: dict[str, int] = {}
    for piece in pieces[1:]:
        number = seen[piece.array] = seen.get(piece.array, -1) + 1
        tables = data[piece.array]
        assert isinstance(tables, list)
        sheets.append(
            Sheet(piece.array, tables[number], layer, file, text[piece.start : piece.end], piece.line)
        )
    return sheets


def _read_alone(piece: Piece, text: str, file: Path, layer: Layer, parsed: Parsed) -> None:
    """Read one table; where it is broken, see whether it has swallowed others that are not."""
    sheet, troubles = read_piece(piece, text, file, layer)
    if sheet is None:
        parts = split_plainly(text, piece)
        if len(parts) > 1:
            read = [read_piece(part, text, file, layer) for part in parts]
            if any(one for one, _ in read):
                for part, (one, found) in zip(parts, read, strict=True):
                    _keep(part, one, found, text, file, parsed)
                return
    _keep(piece, sheet, troubles, text, file, parsed)


def _keep(
    piece: Piece, sheet: Sheet | None, troubles: list[Trouble], text: str, file: Path, parsed: Parsed
) -> None:
    if sheet is not None:
        parsed.sheets.append(sheet)
    named = _ID.search(text, piece.start, piece.end)
    name = named["id"] if named else piece.array
    parsed.findings.extend(_finding(trouble, file, piece.line, name) for trouble in troubles)


def _finding(trouble: Trouble, file: Path, first_line: int, name: str) -> Finding:
    where = ".".join(part for part in (name, trouble.key) if part)
    place = Place(file, first_line + trouble.line - 1, trouble.column)
    return Finding(place, where, trouble.wrong, trouble.mend)


def read_piece(piece: Piece, text: str, file: Path, layer: Layer) -> tuple[Sheet | None, list[Trouble]]:
    """Read one table by itself, leaving out lines that cannot be read.

    Returns:
        The table, or nothing when it cannot be had; and what is wrong with it.
    """
    own = text[piece.start : piece.end]
    lines = own.split("\n")
    troubles = _forbidden(lines)
    while all(trouble.key for trouble in troubles) and len(troubles) < MOST_TROUBLES:
        readable = _without(lines, troubles)
        try:
            data = tomllib.loads(readable)
        except (ValueError, RecursionError) as error:
            troubles.append(explain(readable.split("\n"), str(error)))
            continue
        if piece.lonely == "strayed":
            return None, [_strayed(lines)]
        table = _table(piece, data)
        if table is None:
            return None, [*troubles, Trouble(1, 1, "This table cannot be told from its neighbours.",
                                             f"Write its first line as [[{piece.array}]].")]  # fmt: skip
        unread = tuple(trouble.key for trouble in troubles)
        return Sheet(piece.array, table, layer, file, readable, piece.line, unread, piece.lonely), troubles
    return None, troubles


def _table(piece: Piece, data: dict[str, object]) -> Mapping[str, object] | None:
    if not piece.array:
        return data
    tables = data.get(piece.array)
    if isinstance(tables, list) and len(tables) == 1:
        tables = tables[0]
    return tables if isinstance(tables, dict) and len(data) == 1 else None


def _strayed(lines: list[str]) -> Trouble:
    header = lines[0].strip()
    return Trouble(1, 1, f"{header} does not stand below the table that it belongs to.",
                   "Move it with its lines directly under that table.")  # fmt: skip


def _without(lines: list[str], troubles: list[Trouble]) -> str:
    left_out = {trouble.line for trouble in troubles}
    return "\n".join("" if number in left_out else line for number, line in enumerate(lines, 1))


def _forbidden(lines: list[str]) -> list[Trouble]:
    """What must not be given to the parser: lines too long, keys too deep, bytes that are no text."""
    troubles = []
    for number, line in enumerate(lines, 1):
        pair = _PAIR.match(line)
        key = pair["key"] if pair else ""
        if len(line) > LONGEST_LINE // 4 and _bytes(line) > LONGEST_LINE:
            troubles.append(Trouble(number, 1, f"The line is longer than {LONGEST_LINE} bytes.",
                                    "Write it as a text of several lines between three quotes.", key))  # fmt: skip
        elif _DEEP_KEY.search(line):
            troubles.append(
                Trouble(number, 1, f"A key here has more than {DEEPEST} parts.", "Remove it.", key)
            )
        elif (strange := re.search("[\udc80-\udcff]", line)) is not None:
            byte = ord(strange[0]) - 0xDC00
            troubles.append(Trouble(number, strange.start() + 1, f"The byte 0x{byte:02X} is not UTF-8 text.",
                                    "Save the file as UTF-8, or type that character again.", key))  # fmt: skip
    return troubles
