"""Serialize a card to the text of its file."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields

from library.cards.model import Card, Inspection, Readings, Setting, Tool, Wanted

TEXTS = ("family", "entry", "again", "units", "machine", "wheel", "wrong")
"""Keys of a card that hold one text and stand above its tables."""

LAST_TEXTS = ("minutes", "result", "remarks", "notes")
"""The same, in the order in which a job ends."""


def as_toml(card: Card) -> str:
    """The whole text of the card's file.

    Example:
        >>> print(as_toml(Card(id="2026-11-25-01", family="tap")))
        schema = 1
        <BLANKLINE>
        [[card]]
        id = "2026-11-25-01"
        status = "draft"
        family = "tap"
        units = "mm"
        <BLANKLINE>
    """
    import tomli_w

    table = as_table(card)
    # A carriage return would be lost in a text of several lines, which TOML ends as it likes.
    text = tomli_w.dumps({"card": table}, multiline_strings="\r" not in _all_text(table))
    return f"schema = {card.schema}\n\n[[card]]\n{text.removeprefix('[card]').lstrip()}"


def as_table(card: Card) -> dict[str, object]:
    """The card as TOML holds it; what is empty is left out, and what was not understood is put back."""
    table: dict[str, object] = {"id": card.id, "status": card.status}
    days = {"started": card.started, "finished": card.finished}
    table |= {key: day for key, day in days.items() if day is not None}
    table |= _filled({key: getattr(card, key) for key in (*TEXTS, *LAST_TEXTS)})
    sections = {
        "tool": _filled({one.name: getattr(card.tool, one.name) for one in fields(Tool)}),
        "received": {key: _readings(found) for key, found in card.received.items()},
        "wanted": {key: _wanted(found) for key, found in card.wanted.items()},
        "settings": {name: _setting(found) for name, found in card.settings.items()},
        "chosen": dict(card.chosen),
        "after": {key: _inspection(found) for key, found in card.after.items()},
    }
    table |= {name: section for name, section in sections.items() if section}
    return _laid_under(table, card.extra)


def _filled(texts: Mapping[str, str]) -> dict[str, object]:
    return {key: text for key, text in texts.items() if text}


def _readings(found: Readings) -> object:
    return found[0] if len(found) == 1 else list(found)


def _wanted(found: Wanted) -> object:
    return {"value": found.value} | _filled(
        {"book": found.book, "source": found.source, "reason": found.reason}
    )


def _setting(found: Setting) -> object:
    table: dict[str, object] = {"skipped": True} if found.skipped else {}
    parts = {"typed": dict(found.typed), "filled": dict(found.filled), "recorded": dict(found.recorded)}
    return table | {name: part for name, part in parts.items() if part}


def _inspection(found: Inspection) -> object:
    table: dict[str, object] = {"readings": _readings(found.readings)} if found.readings else {}
    return table | _filled(
        {"wanted": found.wanted, "tolerance": found.tolerance, "judged_by": found.judged_by}
    )


def _laid_under(table: Mapping[str, object], extra: Mapping[str, object]) -> dict[str, object]:
    """The table with what was not understood back in its place; what the card says itself wins."""
    whole = dict(table)
    for key, value in extra.items():
        mine = whole.get(key)
        if isinstance(mine, Mapping) and isinstance(value, Mapping):
            whole[key] = _laid_under(mine, value)
        elif key not in whole:
            whole[key] = value
    return whole


def _all_text(value: object) -> str:
    if isinstance(value, Mapping):
        return "".join(f"{key}{_all_text(one)}" for key, one in value.items())
    if isinstance(value, list | tuple):
        return "".join(map(_all_text, value))
    return value if isinstance(value, str) else ""
