"""Search the cards by words and by single fields: ``winch bronze``, ``tool:T-14 from:2026-01``, ``result:good``."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from operator import attrgetter

from library.cards.rows import CardRow

Test = Callable[[CardRow], bool]

FIELDS = {
    "id": "id",
    "tool": "tool",
    "size": "size",
    "thread": "size",
    "family": "family",
    "entry": "entry",
    "material": "work_material",
    "belongs": "belongs_to",
    "result": "result",
    "status": "status",
    "date": "started",
}
"""What may stand before a colon, and the part of the row it looks at; ``from`` and ``to`` are days besides."""


def search(rows: Iterable[CardRow], query: str) -> list[CardRow]:
    """The cards that have every word of a query, in the order given.

    Args:
        rows: of the cards.
        query: words, and fields such as ``size:M12`` (a part of the field is enough) or ``tool="T 14"`` (the
            whole field, with ``=`` instead of the colon). Quotes hold words together.

    Example:
        >>> rows = [CardRow("2026-11-25-01", "done", tool="T-14", text="t-14 bronze")]
        >>> len(search(rows, "bronze tool:t-1")), len(search(rows, "tool=t-1")), len(search(rows, "brass"))
        (1, 0, 0)
    """
    tests = [_test(word) for word in words_of(query)]
    if not tests:
        return list(rows)
    found = [row for row in rows if tests[0](row)]
    for test in tests[1:]:
        found = [row for row in found if test(row)]
    return found


def words_of(query: str) -> list[str]:
    """The words of a query, those in double quotes together; an open quote runs to the end.

    Example:
        >>> words_of('bronze size:"5/8 in"')
        ['bronze', 'size:5/8 in']
    """
    words, current, quoted = [], "", False
    for sign in query:
        if sign == '"':
            quoted = not quoted
        elif sign.isspace() and not quoted:
            words.append(current)
            current = ""
        else:
            current += sign
    return [word for word in (*words, current) if word]


def _test(word: str) -> Test:
    for sign, exact in ((":", False), ("=", True)):
        name, found, text = word.partition(sign)
        if found and text and (name in FIELDS or name in {"from", "to"}):
            return _of_field(name, " ".join(text.split()).casefold(), exact)
    plain = " ".join(word.split()).casefold()
    return lambda row: plain in row.text


def _of_field(name: str, text: str, exact: bool) -> Test:
    if name == "from":
        return lambda row: row.started[: len(text)] >= text
    if name == "to":
        # A card without a day is not before any day.
        return lambda row: row.started != "" and row.started[: len(text)] <= text
    part = attrgetter(FIELDS[name])
    if exact:
        return lambda row: " ".join(part(row).split()).casefold() == text
    return lambda row: text in part(row).casefold()


def of_tool(rows: Sequence[CardRow], name: str) -> list[CardRow]:
    """The cards of one physical tool, by its own name, the oldest first."""
    wanted = " ".join(name.split()).casefold()
    return sorted(
        (row for row in rows if " ".join(row.tool.split()).casefold() == wanted and wanted),
        key=lambda row: row.id,
    )
