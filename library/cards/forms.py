"""A card as a flat mapping of fields, each by its way, and back: what a form edits and a draft keeps."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields

from library.cards.editing import edited
from library.cards.model import Card, Readings, Tool
from library.cards.writing import LAST_TEXTS, TEXTS


def as_fields(card: Card) -> dict[str, str]:
    """Every text of a card that a person may change and that is not empty, by its way.

    Example:
        >>> as_fields(Card(family="tap", received={"drop": ("0.28 mm", "0.3 mm")}))
        {'family': 'tap', 'units': 'mm', 'received.drop': '0.28 mm; 0.3 mm'}
    """
    found = {key: getattr(card, key) for key in (*TEXTS, *LAST_TEXTS)}
    found |= {f"tool.{one.name}": getattr(card.tool, one.name) for one in fields(Tool)}
    found |= {f"received.{key}": _line(readings) for key, readings in card.received.items()}
    for key, wanted in card.wanted.items():
        found |= {f"wanted.{key}": wanted.value, f"wanted.{key}.reason": wanted.reason}
    for name, setting in card.settings.items():
        found |= {f"settings.{name}": "skip" if setting.skipped else ""}
        found |= {f"settings.{name}.{key}": text for key, text in setting.typed.items()}
    for key, one in card.after.items():
        found |= {
            f"after.{key}": _line(one.readings),
            f"after.{key}.wanted": one.wanted,
            f"after.{key}.tolerance": one.tolerance,
        }
    return {way: text for way, text in found.items() if text}


def with_fields(card: Card, texts: Mapping[str, str]) -> Card:
    """The card with several texts changed, as ``editing.edited`` changes one.

    Raises:
        CardEditRefused: when one of them has no place on a card or is too long; no text is lost by that, for the
            card given is as it was.
    """
    for way, text in texts.items():
        card = edited(card, way, text)
    return card


def changed_fields(before: Card, after: Card) -> dict[str, str]:
    """The fields in which two cards differ, with the text of the second; empty where it was taken away."""
    old, new = as_fields(before), as_fields(after)
    return {way: new.get(way, "") for way in {**old, **new} if old.get(way, "") != new.get(way, "")}


def _line(readings: Readings) -> str:
    return "; ".join(readings)
