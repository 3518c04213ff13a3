"""Edit one text of a card by its way: ``tool.flutes``, ``received.drop``, ``after.drop.tolerance``."""

from __future__ import annotations

import re
import textwrap
from collections.abc import Callable, Mapping
from dataclasses import fields, replace
from difflib import get_close_matches
from typing import TypeVar

from geometry.calculations import calculation, calculation_names
from geometry.quantities import QUANTITIES
from library.cards.model import Card, Inspection, Readings, Setting, Tool, Wanted
from library.cards.writing import LAST_TEXTS, TEXTS
from library.units.several import parted

LONGEST_LINE = 600
"""Characters in one line of a card; however they are written down, a line of its file stays under 4 KiB."""

SECTIONS = ("tool", "received", "wanted", "settings", "after")

_REPEATED = re.compile(r"(\d{1,2})[xX\u00d7](?:\s+|(?=\.))(\S.*)")
"""A reading behind how often it was found alike, as drawings write it: ``8x 0.15 mm``."""

_Part = TypeVar("_Part")


class CardEditRefused(ValueError):
    """Something that cannot be written on a card; the message is a sentence for the person who typed it."""


def edited(card: Card, way: str, text: str) -> Card:
    """The card with one text changed.

    Args:
        card: as it was.
        way: to the text: ``notes``; ``tool.flutes``; ``received.drop``; ``wanted.relief_angle`` and
            ``wanted.relief_angle.reason``; ``settings.relief-drop.land_width`` and ``settings.relief-drop``,
            which takes ``skip``; ``after.drop``, ``after.drop.wanted`` and ``after.drop.tolerance``.
        text: as typed, even when it makes no sense; readings of several flutes are parted by commas. An empty
            text takes away what stood there.

    Returns:
        The changed card.

    Raises:
        CardEditRefused: when there is no such place on a card, or the text is too long.

    Example:
        >>> edited(Card(), "received.drop", "0.28 mm, 0.30 mm").received["drop"]
        ('0.28 mm', '0.30 mm')
    """
    first, *rest = way.split(".")
    if first in {"notes", "wrong"} and not rest:
        return replace(card, **{first: _lines(text)})  # type: ignore[arg-type]
    if len(text) > LONGEST_LINE:
        raise CardEditRefused(
            f"{way} has {len(text)} characters; {LONGEST_LINE} are the most. Put the rest in notes."
        )
    text = " ".join(text.splitlines()).strip()
    if first in (*TEXTS, *LAST_TEXTS) and not rest:
        return replace(card, **{first: text})  # type: ignore[arg-type]
    if first not in SECTIONS or not rest:
        raise CardEditRefused(_no_place(way, [*TEXTS, *LAST_TEXTS, *(f"{one}.KEY" for one in SECTIONS)]))
    return _SECTIONS[first](card, rest, text)


def _lines(text: str) -> str:
    """Text of several lines, none too long to be written down."""
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    return "\n".join("\n".join(_folded(line)) for line in lines)


def _folded(line: str) -> list[str]:
    if len(line) <= LONGEST_LINE:
        return [line]
    return textwrap.wrap(
        line, LONGEST_LINE, drop_whitespace=False, replace_whitespace=False, expand_tabs=False
    )


def _tool(card: Card, keys: list[str], text: str) -> Card:
    names = [one.name for one in fields(Tool)]
    if keys[0] not in names or len(keys) > 1:
        raise CardEditRefused(_no_place(".".join(["tool", *keys]), [f"tool.{name}" for name in names]))
    return replace(card, tool=replace(card.tool, **{keys[0]: text}))


def _received(card: Card, keys: list[str], text: str) -> Card:
    key = _quantity("received", keys, 1)
    readings = each_reading(text)
    return replace(card, received=_put(card.received, key, readings or None))


def _wanted(card: Card, keys: list[str], text: str) -> Card:
    key = _quantity("wanted", keys, 2)
    part = _part("wanted", keys, ("value", "reason"))
    was = card.wanted.get(key, Wanted(""))
    now = replace(was, **{part: text})
    if part == "value" and not text:
        # What the book has returns; without a book's value nothing is wanted any more.
        now = replace(was, value=was.book, reason="")
    return replace(card, wanted=_put(card.wanted, key, now if now.value or now.reason else None))


def _settings(card: Card, keys: list[str], text: str) -> Card:
    name, *rest = keys
    if name not in calculation_names() or len(rest) > 1:
        raise CardEditRefused(
            _no_place(f"settings.{name}", [f"settings.{one}" for one in calculation_names()])
        )
    was = card.settings.get(name, Setting())
    if not rest:
        now = replace(was, skipped=text.lower() in {"skip", "skipped", "yes"})
    else:
        sheet = calculation(name)
        if sheet.field(rest[0]) is None:
            raise CardEditRefused(_no_place(".".join(["settings", *keys]),
                                        [f"settings.{name}.{one.key}" for one in sheet.inputs]))  # fmt: skip
        now = replace(was, typed=_put(was.typed, rest[0], text or None))
    return replace(card, settings=_put(card.settings, name, now if now != Setting() else None))


def _after(card: Card, keys: list[str], text: str) -> Card:
    key = _quantity("after", keys, 2)
    part = _part("after", keys, ("readings", "wanted", "tolerance"))
    was = card.after.get(key, Inspection())
    now = {
        "readings": lambda: replace(was, readings=each_reading(text)),
        "wanted": lambda: replace(was, wanted=text),
        "tolerance": lambda: replace(was, tolerance=text),
    }[part]()
    return replace(card, after=_put(card.after, key, now if now != Inspection() else None))


_SECTIONS: Mapping[str, Callable[[Card, list[str], str], Card]] = {
    "tool": _tool,
    "received": _received,
    "wanted": _wanted,
    "settings": _settings,
    "after": _after,
}


def readings_of(text: str) -> Readings:
    """Readings typed in one line, parted by commas or semicolons; a gap between two stays a gap.

    A comma between two digits is a decimal comma: it stays, so that the reading can be complained of.

    Example:
        >>> readings_of("0.28 mm, , 0.3 mm"), readings_of("0,28 mm")
        (('0.28 mm', '', '0.3 mm'), ('0,28 mm',))
    """
    return parted(text)


def each_reading(text: str) -> Readings:
    """Readings as they are typed on the bench, of which one may stand for several behind their number.

    Example:
        >>> each_reading("3x 0.2 mm, 0.21 mm"), each_reading("8x1")
        (('0.2 mm', '0.2 mm', '0.2 mm', '0.21 mm'), ('8x1',))
    """
    found: list[str] = []
    for one in readings_of(text):
        repeated = _REPEATED.fullmatch(one)
        found += [repeated[2]] * int(repeated[1]) if repeated and int(repeated[1]) else [one]
    return tuple(found)


def _quantity(section: str, keys: list[str], most: int) -> str:
    if keys[0] not in QUANTITIES or len(keys) > most:
        raise CardEditRefused(_no_place(f"{section}.{keys[0]}", [f"{section}.{key}" for key in QUANTITIES]))
    return keys[0]


def _part(section: str, keys: list[str], parts: tuple[str, ...]) -> str:
    part = keys[1] if len(keys) > 1 else parts[0]
    if part not in parts:
        raise CardEditRefused(
            _no_place(".".join([section, *keys]), [f"{section}.{keys[0]}.{one}" for one in parts])
        )
    return part


def _put(mapping: Mapping[str, _Part], key: str, value: _Part | None) -> dict[str, _Part]:
    """The mapping with one key set, or taken away where nothing is given."""
    changed = dict(mapping)
    if value is None:
        changed.pop(key, None)
    else:
        changed[key] = value
    return changed


def _no_place(way: str, known: list[str]) -> str:
    near = get_close_matches(way, known, n=1, cutoff=0.5)
    hint = f" Did you mean {near[0]}?" if near else f" There is {', '.join(known[:12])}."
    return f"A card has no place called {way!r}.{hint}"
