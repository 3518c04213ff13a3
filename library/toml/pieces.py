"""Split a file into its tables at their headers, without parsing what is in them.

It works on a broken file too, so that one mistake spoils one table and not the file.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from library.toml.patterns import LONG_STRING, SHORT_STRING

_HEADER = (
    r"^[ \t]*+(?P<open>\[\[?)[ \t]*+(?P<name>[A-Za-z_][A-Za-z0-9_-]*+)[ \t]*+(?P<rest>\.[^\]\n]*+)?\]\]?"
)
_TOKEN = re.compile(rf"{_HEADER}|{LONG_STRING}|{SHORT_STRING}|\#[^\n]*+", re.MULTILINE | re.DOTALL)
_NOT_A_NAME = frozenset({"true", "false", "inf", "nan"})
_PLAIN_HEADER = re.compile(
    r"^[ \t]*+(?P<open>\[\[?)[ \t]*+(?P<name>[A-Za-z_][A-Za-z0-9_-]*+)[ \t]*+\]\]?[ \t]*+(?:#.*+)?\r?$",
    re.MULTILINE,
)


@dataclass(frozen=True, slots=True)
class Piece:
    """One table of a file with everything below it, up to where the next begins.

    Attributes:
        array: the name in its brackets; empty for what stands above the first table.
        start: where it begins in the text.
        end: where the next one begins.
        line: the line it begins on, from 1.
        brackets: what is wrong with its brackets: ``single`` for ``[entry]``, ``strayed`` for an
            ``[entry.key]`` that does not stand below its ``[[entry]]``; else empty.
    """

    array: str
    start: int
    end: int
    line: int
    brackets: str = ""


def split(text: str) -> list[Piece]:
    r"""Cut a file into its tables.

    Args:
        text: the whole file, with line ends as they are.

    Returns:
        The pieces in order, together the whole text; the first holds what stands above the first table.

    Example:
        >>> [(piece.array, piece.line) for piece in split("schema = 1\n[[entry]]\nid = 'a'\n[[entry]]\n")]
        [('', 1), ('entry', 2), ('entry', 4)]
    """
    return _pieces(text, _starts(text))


def split_plainly(text: str, piece: Piece) -> list[Piece]:
    """Cut a piece at every line that looks like the beginning of a table, even inside an unclosed text."""
    cut = text[piece.start : piece.end]
    starts = [
        (piece.start + found.start(), found["name"], "" if found["open"] == "[[" else "single")
        for found in _PLAIN_HEADER.finditer(cut)
    ]
    if starts and starts[0][0] == piece.start:
        starts[0] = (piece.start, piece.array, piece.brackets)
    else:
        starts.insert(0, (piece.start, piece.array, piece.brackets))
    return _pieces(text, starts, piece.line, piece.end)


def _starts(text: str) -> list[tuple[int, str, str]]:
    starts = [(0, "", "")]
    current = ""
    for found in _TOKEN.finditer(text):
        name = found["name"]
        if name is None or name in _NOT_A_NAME:
            continue
        double = found["open"] == "[["
        if found["rest"]:
            if name != current:
                starts.append((found.start(), name, "strayed"))
                current = name
            continue
        starts.append((found.start(), name, "" if double else "single"))
        current = name
    return starts


def _pieces(
    text: str, starts: list[tuple[int, str, str]], line: int = 1, end: int | None = None
) -> list[Piece]:
    pieces = []
    ends = [start for start, _, _ in starts[1:]] + [len(text) if end is None else end]
    for (start, array, brackets), stop in zip(starts, ends, strict=True):
        pieces.append(Piece(array, start, stop, line, brackets))
        line += text.count("\n", start, stop)
    return pieces
