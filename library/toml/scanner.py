r"""Where each statement of a TOML text stands, to the character.

``tomllib`` says what a text means and not where it says so. The text must be one that it accepts; then a walk
along it that looks only at keys, brackets, strings and line ends knows for each statement its path into the data,
its lines and its value, and within a value the place of every key.
"""

from __future__ import annotations

import re
import tomllib
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass

from library.toml.patterns import BARE_KEY, KEY, LONG_STRING, SHORT_STRING

KeyPath = tuple[str | int, ...]
"""A way into the data: keys of tables, and numbers from 0 in arrays."""

DEEPEST = 40
"""Keys within each other whose places are told apart; a book has less than half of that."""

_GAP = re.compile(r"(?:[ \t\r\n]++|#[^\n]*+)*+")
_SPACE = re.compile(r"[ \t]*")
_EQUALS = re.compile(r"[ \t]*=[ \t]*")
_COMMA = re.compile(rf"{_GAP.pattern},?{_GAP.pattern}")
_KEY = re.compile(KEY)
_DOTTED = re.compile(rf"{KEY}(?:[ \t]*\.[ \t]*{KEY})*")
_BARE = re.compile(BARE_KEY)
_TOKEN = re.compile(
    rf"(?P<string>{LONG_STRING}|{SHORT_STRING})|(?P<open>[\[{{])|(?P<shut>[\]}}])|(?P<remark>#[^\n]*+)|(?P<end>\r?\n)"
    r"|(?P<other>[^\"'\[\]{}#\r\n]++|\r)",
    re.DOTALL,
)
_SCALAR = re.compile(rf"{LONG_STRING}|{SHORT_STRING}|[^\s,\]}}#]+(?: [0-9][^\s,\]}}#]*)?", re.DOTALL)


@dataclass(frozen=True, slots=True)
class Statement:
    """One header, or one key with its value.

    Attributes:
        path: where it leads in the data.
        header: the path of the header that it stands under; for a header its own.
        start: offset of the first character of its first line.
        end: offset behind the line end of its last line.
        value: offsets of its value; for a header an empty span.
        is_header: whether it is ``[table]`` or ``[[table]]``.
        keys: offset of each part of its key; for a header that of its first bracket.
    """

    path: KeyPath
    header: KeyPath
    start: int
    end: int
    value: tuple[int, int]
    is_header: bool
    keys: tuple[int, ...]

    def is_below(self, path: KeyPath) -> bool:
        """Whether this is ``path`` itself or something inside it."""
        return self.path[: len(path)] == path


def scan(text: str) -> Iterator[Statement]:
    r"""The statements of a text, in order.

    Args:
        text: a document that ``tomllib`` accepts.

    Example:
        >>> [(one.path, one.start, one.end) for one in scan("[[entry]]\nid = 'a' # one\n")]
        [(('entry', 0), 0, 10), (('entry', 0, 'id'), 10, 25)]
    """
    at = _after(_GAP, text, 0)
    header: KeyPath = ()
    counts: dict[KeyPath, int] = {}
    while at < len(text):
        start = text.rfind("\n", 0, at) + 1
        if text[at] == "[":
            header, end = _header(text, at, counts)
            yield Statement(header, header, start, _line_end(text, end), (end, end), True, (at,))
        else:
            keys, offsets, end = _keys(text, at)
            value = _value_span(text, _after(_EQUALS, text, end))
            end = value[1]
            yield Statement((*header, *keys), header, start, _line_end(text, end), value, False, offsets)
        at = _after(_GAP, text, _line_end(text, end))


def positions(text: str) -> dict[KeyPath, tuple[int, int]]:
    r"""Line and column, both from 1, of every key and of every element of an array.

    Args:
        text: a document that ``tomllib`` accepts.

    Raises:
        ValueError: for another text.

    Example:
        >>> positions("[[entry]]\nrake = { low = 1 }\n")[("entry", 0, "rake", "low")]
        (2, 10)
    """
    found: dict[KeyPath, int] = {}
    for one in scan(text):
        if one.is_header:
            for count in range(len(one.path)):
                found.setdefault(one.path[: count + 1], one.keys[0])
        else:
            _inside(text, one.value[0], _noted(one.path, one.header, one.keys, found), found)
    lines = [0, *(end.end() for end in re.finditer("\n", text))]

    def place(offset: int) -> tuple[int, int]:
        line = bisect_right(lines, offset)
        return line, offset - lines[line - 1] + 1

    return {path: place(offset) for path, offset in found.items()}


def remarks(text: str) -> list[str]:
    r"""The remarks in a text, as written, in order; a ``#`` inside a string is none.

    Example:
        >>> remarks("[ 'a#b', # first\n 'c' ]")
        ['# first']
    """
    return [found[0].rstrip() for found in _TOKEN.finditer(text) if found.lastgroup == "remark"]


def _after(pattern: re.Pattern[str], text: str, at: int) -> int:
    found = pattern.match(text, at)
    return found.end() if found else at


def _line_end(text: str, at: int) -> int:
    found = text.find("\n", at)
    return len(text) if found < 0 else found + 1


def _header(text: str, at: int, counts: dict[KeyPath, int]) -> tuple[KeyPath, int]:
    """The path that a header leads, and the offset behind it; a double one counts its array up."""
    brackets = 2 if text.startswith("[[", at) else 1
    keys, _, at = _keys(text, _after(_SPACE, text, at + brackets))
    path: KeyPath = ()
    for key in keys[:-1]:
        path = _latest((*path, key), counts)
    path = (*path, keys[-1])
    if brackets == 2:
        counts[path] = counts.get(path, -1) + 1
    return _latest(path, counts), _after(_SPACE, text, at) + brackets


def _latest(path: KeyPath, counts: dict[KeyPath, int]) -> KeyPath:
    """The table that a key of a header means: for an array, its last one so far."""
    return (*path, counts[path]) if path in counts else path


def _keys(text: str, at: int) -> tuple[tuple[str, ...], tuple[int, ...], int]:
    """The parts of a dotted key, the offset of each, and the offset behind it."""
    end = _after(_DOTTED, text, at)
    parts = list(_KEY.finditer(text, at, end))
    return tuple(_meant(part[0]) for part in parts), tuple(part.start() for part in parts), end


def _meant(key: str) -> str:
    return key if _BARE.fullmatch(key) else str(tomllib.loads(f"k = {key}")["k"])


def _value_span(text: str, start: int) -> tuple[int, int]:
    """The span of a value: to the line end or remark that is in no bracket."""
    depth = 0
    at = start
    while found := _TOKEN.match(text, at):
        kind = found.lastgroup
        if depth == 0 and kind in {"remark", "end"}:
            break
        depth += (kind == "open") - (kind == "shut")
        at = found.end()
    return start, start + len(text[start:at].rstrip(" \t\r"))


def _noted(path: KeyPath, base: KeyPath, offsets: tuple[int, ...], found: dict[KeyPath, int]) -> KeyPath:
    """Note where each part of a dotted key stands; the path, cut where it goes too deep."""
    for count, offset in enumerate(offsets[: max(DEEPEST - len(base), 0)], len(base) + 1):
        found.setdefault(path[:count], offset)
    return path[: max(DEEPEST, len(base))]


def _inside(text: str, at: int, base: KeyPath, found: dict[KeyPath, int]) -> int:
    """Note every key and element within a value; the offset behind it."""
    opens = text[at]
    if opens not in "[{":
        return _after(_SCALAR, text, at)
    at = _after(_GAP, text, at + 1)
    count = 0
    while text[at] not in "]}":
        path: KeyPath = (*base, count)
        if opens == "[":
            found[path] = at
        else:
            keys, offsets, end = _keys(text, at)
            path = _noted((*base, *keys), base, offsets, found)
            at = _after(_EQUALS, text, end)
        end = _inside(text, at, path, found)
        if end == at:
            raise ValueError("this is not a document that tomllib accepts")
        at = _after(_COMMA, text, end)
        count += 1
    return at + 1
