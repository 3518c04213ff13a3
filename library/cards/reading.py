"""Parse the table of a card's file into a card; what is not understood is complained of and kept."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, replace
from datetime import date, datetime

from library.book.diagnostics import Location, shown
from library.cards.model import DRAFT, STATUSES, Card, Inspection, Readings, Setting, Tool, Wanted
from library.cards.unknown_names import complain_of_unknown
from library.cards.writing import LAST_TEXTS, TEXTS
from library.equipment.readers import as_day
from library.sanitize import first_hidden, name_of

LONGEST = 65_536
"""Characters that one text of a card may have."""

SEVERAL_LINES = frozenset({"notes", "wrong"})
"""Texts that may have line ends."""


@dataclass
class Taken:
    """A table whose known keys are consumed one by one, so that the rest is what was not understood.

    Attributes:
        table: as it stands in the file.
        location: where.
        left: keys that nobody has taken yet.
        below: tables in it that were taken key by key.
    """

    table: Mapping[str, object]
    location: Location
    left: dict[str, object] = field(default_factory=dict)
    below: dict[str, Taken] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self.left = dict(self.table)

    def text(self, key: str) -> str:
        """The text at a key; empty when there is none, or something else stands there."""
        raw = self.table.get(key)
        if raw is None:
            return ""
        if not isinstance(raw, str) or len(raw) > LONGEST:
            self.location.at(key).complain(
                f"This is {shown(raw)}; a text is wanted.", "Write it in quotes.", "warning"
            )
            return ""
        complain_of_hidden(raw, self.location.at(key), lines=key in SEVERAL_LINES)
        del self.left[key]
        return raw

    def day(self, key: str) -> date | None:
        """The day at a key."""
        if key not in self.table:
            return None
        found = None if isinstance(self.table[key], datetime) else as_day(self.table[key])
        if found is None:
            self.location.at(key).complain(f"This is {shown(self.table[key])}; a day is wanted.",
                                       "Write it as year-month-day: 2026-11-25.", "warning")  # fmt: skip
        else:
            del self.left[key]
        return found

    def readings(self, key: str) -> Readings:
        """One text, or a list of them; a bare number has no unit and is left where it is."""
        raw = self.table.get(key)
        texts = [raw] if isinstance(raw, str) else raw
        if raw is None:
            return ()
        if not isinstance(texts, list) or not all(isinstance(one, str) for one in texts):
            self.location.at(key).complain(f"The reading {shown(raw)} has no unit.",
                                       'Write it in quotes with its unit: "0.28 mm".', "warning")  # fmt: skip
            return ()
        del self.left[key]
        return tuple(texts)

    def section(self, key: str) -> Taken:
        """The table at a key; an empty one when there is none."""
        raw = self.table.get(key)
        if isinstance(raw, Mapping):
            del self.left[key]
            self.below[key] = Taken(raw, self.location.at(key))
            return self.below[key]
        if raw is not None:
            self.location.at(key).complain(f"This is {shown(raw)}; a table is wanted.",
                                       f"Write its keys below [card.{key}].", "warning")  # fmt: skip
        return Taken({}, self.location.at(key))

    def rest(self) -> dict[str, object]:
        """What was not understood, in its own place."""
        inside = {key: one.rest() for key, one in self.below.items()}
        return self.left | {key: rest for key, rest in inside.items() if rest}


def read_card(table: Mapping[str, object], location: Location, schema: int) -> Card:
    """Read a card; a key that is not known, or not of the right kind, is kept and complained of.

    Args:
        table: of the file.
        location: where complaints go.
        schema: of the file.
    """
    top = Taken(table, location)
    card = Card(
        id=top.text("id"),
        status=_status(top),
        started=top.day("started"),
        finished=top.day("finished"),
        tool=Tool(**_texts(top.section("tool"), tuple(one.name for one in fields(Tool)))),
        received=_quantities(top.section("received")),
        wanted={key: _wanted(one) for key, one in _tables(top.section("wanted"))},
        settings={name: _setting(one) for name, one in _tables(top.section("settings"))},
        chosen=_texts(chosen := top.section("chosen"), tuple(chosen.table)),
        after={key: _inspection(one) for key, one in _tables(top.section("after"))},
        schema=schema,
        **_texts(top, (*TEXTS, *LAST_TEXTS)),  # type: ignore[arg-type]
    )
    complain_of_unknown(top)
    return replace(card, extra=top.rest())


def _status(top: Taken) -> str:
    word = top.text("status") or DRAFT
    if word not in STATUSES:
        top.location.at("status").complain(
            f"The status is {shown(word)}.", f"It can be {' or '.join(STATUSES)}.", "warning"
        )
    return word


def _texts(taken: Taken, keys: tuple[str, ...]) -> dict[str, str]:
    return {key: text for key in keys if (text := taken.text(key))}


def _quantities(taken: Taken) -> dict[str, Readings]:
    found = {key: taken.readings(key) for key in taken.table}
    return {key: readings for key, readings in found.items() if key not in taken.left}


def _tables(taken: Taken) -> list[tuple[str, Taken]]:
    mine = [key for key in taken.table if not key.startswith("x-")]
    return [(key, found) for key in mine if (found := taken.section(key)) and key in taken.below]


def _wanted(taken: Taken) -> Wanted:
    return Wanted(**{"value": "", **_texts(taken, ("value", "book", "source", "reason"))})


def _setting(taken: Taken) -> Setting:
    skipped = taken.table.get("skipped") is True
    if skipped:
        del taken.left["skipped"]
    parts = {}
    for name in ("typed", "filled", "recorded"):
        part = taken.section(name)
        parts[name] = _texts(part, tuple(part.table))
    return Setting(skipped=skipped, **parts)


def _inspection(taken: Taken) -> Inspection:
    return Inspection(taken.readings("readings"), **_texts(taken, ("wanted", "tolerance", "judged_by")))


def complain_of_hidden(text: str, location: Location, *, lines: bool) -> None:
    """Complain of a character that cannot be seen; the text itself stays as it is."""
    hidden = first_hidden(text.replace("\n", " ").replace("\t", " ") if lines else text)
    if hidden:
        location.complain(f"The text holds {name_of(hidden)}, which cannot be seen or is not text.",
                      "Type the text again without it.", "warning")  # fmt: skip
