"""The rows of a file of plainly written entries, for a list of very many: four lines of each, without parsing the rest.

A file is plain where every line of it is one of a few forms that can only be read in one way. Any other file gives
nothing here and is read in full, so that a list says the same either way.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from library.book.fields import LONGEST_TEXT
from library.book.model import Layer
from library.book.rows import Row
from library.sanitize import sanitize
from library.toml.limits import is_too_much
from library.toml.pieces import Piece, split

_KEY = r"[A-Za-z0-9_-]++"
_TEXT = r'"[^"\\\x00-\x1f\x7f]*+"'
_WORD = rf"(?:{_TEXT}|[-+]?(?:0|[1-9][0-9]*+)(?:\.[0-9]++)?|true|false)"
_PAIR = rf"{_KEY}[ \t]*+=[ \t]*+{_WORD}"
_TABLE = rf"\{{[ \t]*+(?:{_PAIR}(?:[ \t]*+,[ \t]*+{_PAIR})*+)?[ \t]*+\}}"
_LIST = rf"\[[ \t]*+(?:{_WORD}(?:[ \t]*+,[ \t]*+{_WORD})*+)?[ \t]*+\]"
_LONG = r'"""(?:[^"\\\x00-\x08\x0b-\x1f\x7f]|"(?!""))*+"""(?!")'
_REMARK = r"[ \t]*+(?:\#[^\x00-\x08\x0a-\x1f\x7f]*+)?"
_LINE = rf"(?:[ \t]*+{_KEY}[ \t]*+=[ \t]*+(?:{_LONG}|{_WORD}|{_TABLE}|{_LIST}))?{_REMARK}(?=\n|\Z)"
_LINES = rf"{_LINE}(?:\n{_LINE})*+"
_TOP = re.compile(_LINES)
_ENTRY = re.compile(
    rf"\[\[entry\]\]{_REMARK}(?P<own>(?:\n{_LINE})*+)(?P<below>(?:\n\[entry\.{_KEY}\]{_REMARK}(?:\n{_LINE})*+)*+)"
)
_OWN_KEY = re.compile(rf"^[ \t]*+({_KEY})[ \t]*+=", re.MULTILINE)
_BELOW_KEY = re.compile(rf"^\[entry\.({_KEY})\]", re.MULTILINE)
_SHOWN = re.compile(r'^[ \t]*+(id|title|family|work_material)[ \t]*+=[ \t]*+"([^"\n]*+)"(?!")', re.MULTILINE)
_TOKEN = re.compile(rf"{_LONG}|(?P<short>{_TEXT})|\#[^\n]*+")
_FOUR = ("id", "title", "family", "work_material")


def plain_rows(text: str, layer: Layer, below: Mapping[tuple[str, str], Row]) -> tuple[Row, ...] | None:
    r"""The rows of a file.

    Args:
        text: of the file.
        layer: that it belongs to.
        below: the rows of the layer under it, by kind and id; what an entry does not say of itself, they do.

    Returns:
        The rows; nothing where a part of the file is not plain.

    Example:
        >>> text = 'schema = 1\n[[entry]]\nid = "a"\nfamily = "tap"\ntitle = "A"\n'
        >>> [(row.id, row.title, row.family) for row in plain_rows(text, "shop", {})]
        [('a', 'A', 'tap')]
        >>> plain_rows(text.replace('"A"', "'A'"), "shop", {}) is None
        True
    """
    if is_too_much(text):
        return None
    top, *pieces = split(text)
    keys = _OWN_KEY.findall(text, top.start, top.end)
    if set(keys) - {"schema"} or len(keys) > 1 or not _TOP.fullmatch(text, top.start, top.end):
        return None
    rows = []
    for piece in pieces:
        row = _plain_row(text, piece, layer, below)
        if row is None:
            return None
        rows.append(row)
    return tuple(rows)


def _plain_row(text: str, piece: Piece, layer: Layer, below: Mapping[tuple[str, str], Row]) -> Row | None:
    found = _ENTRY.fullmatch(text, piece.start, piece.end) if piece.array == "entry" else None
    if found is None:
        return None
    own = found["own"]
    if '"""' in own:
        # What stands inside a long text looks like lines of the entry, and is none.
        own = _TOKEN.sub(lambda one: one[0] if one.lastgroup == "short" else "0", own)
    keys = _OWN_KEY.findall(own) + _BELOW_KEY.findall(found["below"])
    shown = dict(_SHOWN.findall(own))
    told = [key for key in _FOUR if key in keys]
    if len(set(keys)) < len(keys) or len(told) != len(shown) or not shown.get("id"):
        return None
    if not all(map(_is_plain, shown.values())):
        return None
    name = shown["id"]
    under = below.get(("entry", name)) or Row("entry", name, name)
    return Row(
        "entry",
        name,
        shown.get("title", under.title),
        shown.get("family", under.family),
        shown.get("work_material", under.work_material),
        layer,
        parts=f"0:{piece.start}:{piece.end}:{piece.line}",
    )


def _is_plain(text: str) -> bool:
    return len(text) <= LONGEST_TEXT and text.isprintable() and sanitize(text) == text
