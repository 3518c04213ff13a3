"""Where in a text every table and every key stands, to the character.

The text must be one that ``tomllib`` accepts; then a walk along it that looks only at brackets, strings
and line ends knows for each statement its way into the data, its lines, and where its value is.
"""

from __future__ import annotations

import re
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass, field

from library.toml.patterns import KEY, LONG_STRING, SHORT_STRING

Way = tuple[str | int, ...]
"""A way into the data: keys of tables, and numbers from 0 in arrays of tables."""

_GAP = re.compile(r"(?:[ \t\r\n]++|#[^\n]*+)*+")
_DOTTED = re.compile(rf"{KEY}(?:[ \t]*\.[ \t]*{KEY})*")
_BARE = re.compile(r"[A-Za-z0-9_-]+(?:\.[A-Za-z0-9_-]+)*")
_SPACE = re.compile(r"[ \t]*")
_EQUALS = re.compile(r"[ \t]*=[ \t]*")
_TOKEN = re.compile(
    rf"(?P<string>{LONG_STRING}|{SHORT_STRING})|(?P<open>[\[{{])|(?P<shut>[\]}}])|(?P<remark>#[^\n]*+)|(?P<end>\r?\n)"
    r"|(?P<other>[^\"'\[\]{}#\r\n]++|\r)",
    re.DOTALL,
)


@dataclass(frozen=True)
class Statement:
    """One header, or one key with its value.

    Attributes:
        way: where it leads in the data.
        header: the way of the header that it stands under; for a header its own.
        start: offset of the first character of its first line.
        end: offset behind the line end of its last line.
        value: offsets of its value; for a header an empty span.
        is_header: whether it is ``[table]`` or ``[[table]]``.
    """

    way: Way
    header: Way
    start: int
    end: int
    value: tuple[int, int]
    is_header: bool

    def is_below(self, way: Way) -> bool:
        """Whether this is ``way`` itself or something inside it."""
        return self.way[: len(way)] == way


@dataclass
class Layout:
    r"""The statements of a text, in order.

    Args:
        text: a document that ``tomllib`` accepts.

    Example:
        >>> layout = Layout("[[entry]]\nid = 'a' # one\n")
        >>> [(statement.way, statement.start, statement.end) for statement in layout.statements]
        [(('entry', 0), 0, 10), (('entry', 0, 'id'), 10, 25)]
    """

    text: str
    statements: tuple[Statement, ...] = field(init=False)

    def __post_init__(self) -> None:
        self.statements = tuple(_walk(self.text))

    def below(self, way: Way) -> tuple[Statement, ...]:
        """The statements that make up what is at ``way``."""
        return tuple(statement for statement in self.statements if statement.is_below(way))

    def pair(self, way: Way) -> Statement | None:
        """The statement that gives exactly ``way`` a value, if one does."""
        return next((one for one in self.statements if one.way == way and not one.is_header), None)

    def covering(self, way: Way) -> Statement | None:
        """The statement whose value has ``way`` inside it: an inline table, or an array of them."""
        return next(
            (
                one
                for one in self.statements
                if not one.is_header and way[: len(one.way)] == one.way and one.way != way
            ),
            None,
        )


def _walk(text: str) -> Iterator[Statement]:
    at = _after(_GAP, text, 0)
    header: Way = ()
    counts: dict[Way, int] = {}
    while at < len(text):
        start = text.rfind("\n", 0, at) + 1
        if text[at] == "[":
            header, at = _header(text, at, counts)
            statement = Statement(header, header, start, _line_end(text, at), (at, at), True)
        else:
            keys, at = _keys(text, at)
            value = _value(text, _after(_EQUALS, text, at))
            statement = Statement((*header, *keys), header, start, _line_end(text, value[1]), value, False)
        yield statement
        at = _after(_GAP, text, statement.end)


def _after(pattern: re.Pattern[str], text: str, at: int) -> int:
    found = pattern.match(text, at)
    return found.end() if found else at


def _line_end(text: str, at: int) -> int:
    found = text.find("\n", at)
    return len(text) if found < 0 else found + 1


def _header(text: str, at: int, counts: dict[Way, int]) -> tuple[Way, int]:
    """The way that a header leads, and the offset behind it; a double one counts its array up."""
    brackets = 2 if text.startswith("[[", at) else 1
    keys, at = _keys(text, _after(_SPACE, text, at + brackets))
    way: Way = ()
    for key in keys[:-1]:
        way = _latest((*way, key), counts)
    way = (*way, keys[-1])
    if brackets == 2:
        counts[way] = counts.get(way, -1) + 1
    return _latest(way, counts), _after(_SPACE, text, at) + brackets


def _latest(way: Way, counts: dict[Way, int]) -> Way:
    return (*way, counts[way]) if way in counts else way


def _keys(text: str, at: int) -> tuple[tuple[str, ...], int]:
    """The parts of a dotted key, and the offset behind it."""
    end = _after(_DOTTED, text, at)
    raw = text[at:end]
    if _BARE.fullmatch(raw):
        return tuple(raw.split(".")), end
    keys = []
    table: object = tomllib.loads(f"{raw} = 0")
    while isinstance(table, dict):
        key, table = next(iter(table.items()))
        keys.append(key)
    return tuple(keys), end


def _value(text: str, start: int) -> tuple[int, int]:
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


def remarks(text: str) -> list[str]:
    r"""The remarks in a text, as written, in order; a ``#`` inside a string is none.

    Example:
        >>> remarks("[ 'a#b', # first\n 'c' ]")
        ['# first']
    """
    return [found[0].rstrip() for found in _TOKEN.finditer(text) if found.lastgroup == "remark"]
