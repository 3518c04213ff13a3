"""The data model of a draft, and its file format."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from library.units.system import Lengths

VERSION = 1
"""Of the file of a draft; another one is left for the program that wrote it."""


class Spoilt(ValueError):
    """The bytes of a file are no draft; the message says why, without a full stop."""


class OtherVersion(ValueError):
    """A draft that another version of the program wrote."""


@dataclass(frozen=True)
class Draft:
    """Unfinished input of one form.

    Attributes:
        kind: which form, such as ``value``, ``entry`` or ``job-card``.
        about: what it is about, such as ``gun-tap.rake_angle``; empty for something new.
        fields: the text of each field by its key, as typed, however unfinished.
        started: the text that each field had when the form was opened.
        kept: when it was last kept.
        units: the unit of lengths of numbers typed without one, mm or in; empty in a draft that does not say it.
        book: the folder of the shop's book that it was typed in; empty in a draft that does not say it.
        order: when it was last kept, for the order of drafts: never earlier than one that was there before, even where
            the clock was set back; nothing in a draft that does not say it.
    """

    kind: str
    about: str
    fields: Mapping[str, str]
    started: Mapping[str, str] = field(default_factory=dict)
    kept: datetime = datetime(1970, 1, 1)
    units: str = ""
    book: str = ""
    order: datetime | None = None

    @property
    def place(self) -> datetime:
        """By which the newest draft is known."""
        return (self.order or self.kept).replace(tzinfo=None)

    @property
    def name(self) -> str:
        """What the draft replaces when it is kept again: one draft for each form and thing."""
        return f"{self.kind} {self.about}".strip()

    @property
    def lengths(self) -> Lengths:
        """The unit of lengths of its bare numbers; millimetres where it does not say it, and then that has to be said.

        Example:
            >>> Draft("calculator", "a", {}, units="in").lengths, Draft("calculator", "a", {}).lengths
            ('in', 'mm')
        """
        return "in" if self.units == "in" else "mm"

    def is_unchanged(self) -> bool:
        """Whether nothing was typed, so that there is nothing to keep."""
        return dict(self.fields) == dict(self.started)


@dataclass(frozen=True)
class Difference:
    """One field in which a draft differs from what is saved.

    Attributes:
        key: of the field.
        draft: the text in the draft; nothing where the draft does not have the field.
        current: the text now; nothing where there is no such field.
        moved: whether somebody else changed it since the form was opened.
    """

    key: str
    draft: str | None
    current: str | None
    moved: bool


def compare(draft: Draft, current: Mapping[str, str]) -> tuple[Difference, ...]:
    """Where a draft differs from what is saved now, in the order of the form.

    Args:
        draft: what was typed.
        current: the text that each field of the form would have if it were opened now.

    Example:
        >>> compare(Draft("value", "a", {"low": "3 deg", "note": ""}, {"low": "2 deg", "note": ""}), {"low": "2 deg", "note": ""})
        (Difference(key='low', draft='3 deg', current='2 deg', moved=False),)
    """
    keys = dict.fromkeys([*draft.fields, *current])
    return tuple(
        Difference(key, draft.fields.get(key), current.get(key), draft.started.get(key) != current.get(key))
        for key in keys
        if draft.fields.get(key) != current.get(key)
    )


def to_bytes(draft: Draft) -> bytes:
    """A draft as the text of its file: TOML, so that a person can read it without the program."""
    import tomli_w

    data = {
        "draft": VERSION,
        "kind": draft.kind,
        "about": draft.about,
        "kept": draft.kept,
        "units": draft.units,
        "book": draft.book,
        "fields": dict(draft.fields),
        "started": dict(draft.started),
    }
    if draft.order is not None:
        data["order"] = draft.order
    return tomli_w.dumps(data).encode("utf-8", "replace")


def from_bytes(raw: bytes) -> Draft:
    """The draft in the bytes of a file.

    Raises:
        Spoilt: when it is no draft, or not a whole one.
        OtherVersion: when another version of the program wrote it.
    """
    try:
        data = tomllib.loads(raw.decode())
    except RecursionError:
        raise Spoilt("its brackets are nested too deep") from None
    except ValueError:
        raise Spoilt("it is cut short or damaged" if raw.strip() else "it is empty") from None
    if data.get("draft", VERSION) != VERSION:
        raise OtherVersion
    kept, fields, started = data.get("kept"), data.get("fields"), data.get("started")
    kind, about = data.get("kind"), data.get("about")
    if not (isinstance(kind, str) and isinstance(about, str) and isinstance(kept, datetime)):
        raise Spoilt("it is no draft")
    units, book, order = data.get("units"), data.get("book"), data.get("order")
    return Draft(
        kind,
        about,
        _texts(fields),
        _texts(started),
        kept,
        units if units in {"mm", "in"} else "",
        book if isinstance(book, str) else "",
        order if isinstance(order, datetime) else None,
    )


def _texts(table: object) -> dict[str, str]:
    if not isinstance(table, dict) or not all(isinstance(text, str) for text in table.values()):
        raise Spoilt("it is no draft")
    return dict(table)
