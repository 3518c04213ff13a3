"""The row of a card from the head of its file alone, where that says all that a row shows."""

from __future__ import annotations

import re
from dataclasses import fields
from pathlib import Path

from library.book.parsing import decoded
from library.cards.model import DRAFT, Card, Tool
from library.cards.rows import CardRow, row_of
from library.cards.writing import LAST_TEXTS, TEXTS
from library.equipment.readers import as_day
from library.toml.limits import loads

_BELOW = r"card\.(?:received|wanted|settings|chosen|after|x-)"
"""Headings of tables that say nothing of what a row shows, as this program writes them."""

_BODY = re.compile(rf"^\[{_BELOW}", re.MULTILINE)
_MORE = re.compile(rf"^[ \t]*\[(?!{_BELOW})", re.MULTILINE)
_TEXTS = ("status", *TEXTS, *LAST_TEXTS)
_TOOL = tuple(one.name for one in fields(Tool))


def quick_row(raw: bytes, path: Path) -> CardRow | None:
    """The row of a card, read from the lines above its measurements.

    Args:
        raw: the bytes of the file.
        path: of the file.

    Returns:
        The row, or nothing where the file is not as this program writes it and has to be read whole.
    """
    text = decoded(raw)
    body = _BODY.search(text)
    head = text[: body.start()] if body else text
    # A heading further down could belong to the tool; what looks like one inside a text only costs time.
    if body and _MORE.search(text, body.start()):
        return None
    try:
        (card,) = (loads(head) or {})["card"]
        tool = card.get("tool", {})
        texts = {key: card[key] for key in _TEXTS if key in card}
        words = {key: tool[key] for key in _TOOL if key in tool}
    except (ValueError, KeyError, TypeError, AttributeError):
        return None
    if not all(isinstance(one, str) for one in (*texts.values(), *words.values())):
        return None
    started = as_day(card.get("started", ""))
    return row_of(
        Card(**{"id": path.stem, "status": DRAFT, "started": started, "tool": Tool(**words), **texts})
    )
