"""The data model of a job card, as frozen objects: everything on it is the text that a person typed.

What a text means is worked out when it is asked for, so that a card with a slip in it is still a card.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

SCHEMA = 1
"""The layout of cards that this program writes; a card of a newer one is only read."""

DRAFT = "draft"
DONE = "done"
STATUSES = (DRAFT, DONE)

Readings = tuple[str, ...]
"""What was read, as typed: one text for the tool as a whole, or one for each flute."""


@dataclass(frozen=True)
class Tool:
    """The physical tool on the bench.

    Attributes:
        name: its own name or number in this shop, by which its history is found.
        size: as a person says it, such as ``12 mm`` or ``5/8 in``.
        thread: as marked, such as ``M16 x 2`` or ``5/8-11``.
        flutes: how many edges it has.
        marks: what its maker stamped on it.
        belongs_to: the customer or the machine that it belongs to.
        work_material: what it cuts.
    """

    name: str = ""
    size: str = ""
    thread: str = ""
    flutes: str = ""
    marks: str = ""
    belongs_to: str = ""
    work_material: str = ""


@dataclass(frozen=True)
class Wanted:
    """What one quantity of the tool shall be.

    Attributes:
        value: what to grind, as typed or as the book has it.
        book: what the book had on the day the card was begun; empty when it had nothing.
        source: where the book had it from, in words.
        reason: why the value is another than the book's.
    """

    value: str
    book: str = ""
    source: str = ""
    reason: str = ""

    @property
    def changed(self) -> bool:
        """Whether a person chose another value than the book's."""
        return bool(self.book) and self.value.strip() != self.book.strip()


@dataclass(frozen=True)
class Setting:
    """What was typed into one calculation, and what it answered when the job was done.

    Attributes:
        typed: by quantity.
        recorded: the answers as they were shown on the day the card was closed, by quantity.
        skipped: true when the person left this calculation out of the job.
        filled: what tool, machine, wheel and drawer of that day filled in, by quantity.
    """

    typed: Mapping[str, str] = field(default_factory=dict)
    recorded: Mapping[str, str] = field(default_factory=dict)
    skipped: bool = False
    filled: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class Inspection:
    """One quantity as it was measured after grinding.

    Attributes:
        readings: for each flute, or one for the tool as a whole.
        wanted: what it shall be; empty to take it from what is wanted or worked out.
        tolerance: how far off it may be, such as ``0.02 mm`` or ``+0 -0.03 mm``.
        judged_by: what it was held against on the day the card was closed, where that was worked out.
    """

    readings: Readings = ()
    wanted: str = ""
    tolerance: str = ""
    judged_by: str = ""


@dataclass(frozen=True)
class Card:
    """One job.

    Attributes:
        id: the day it was begun and a number, such as ``2026-11-25-01``; empty until it is saved.
        status: a draft until every step that matters is in order and the person says it is done.
        started: the day it was begun.
        finished: the day it was done.
        family: the id of the tool's family.
        entry: the id of the entry it was begun from; empty when it was begun without one.
        again: the id of the earlier card that it repeats.
        units: the unit of lengths typed without one into a calculation, ``mm`` or ``in``.
        machine: the id of the machine it is ground on.
        wheel: the id of the wheel it is ground with.
        tool: the tool itself.
        wrong: what is wrong with it, in the person's words.
        received: what was measured before grinding, by quantity.
        wanted: what it shall have, by quantity.
        settings: the calculations, by name.
        after: what was measured after grinding, by quantity.
        notes: free text, several lines.
        minutes: time spent, as typed.
        result: how it ended, such as ``good`` or ``scrapped``.
        remarks: what is to be said of the result.
        chosen: the surface and the method of the day the card was closed, and the book's range of a relief that was found
            outside it, by quantity; nothing on a draft.
        extra: whatever else the file holds, in its own place, kept as it is.
        schema: the layout of the file.
    """

    id: str = ""
    status: str = DRAFT
    started: date | None = None
    finished: date | None = None
    family: str = ""
    entry: str = ""
    again: str = ""
    units: str = "mm"
    machine: str = ""
    wheel: str = ""
    tool: Tool = Tool()
    wrong: str = ""
    received: Mapping[str, Readings] = field(default_factory=dict)
    wanted: Mapping[str, Wanted] = field(default_factory=dict)
    settings: Mapping[str, Setting] = field(default_factory=dict)
    after: Mapping[str, Inspection] = field(default_factory=dict)
    notes: str = ""
    minutes: str = ""
    result: str = ""
    remarks: str = ""
    chosen: Mapping[str, str] = field(default_factory=dict)
    extra: Mapping[str, object] = field(default_factory=dict)
    schema: int = SCHEMA

    @property
    def title(self) -> str:
        """What the card is called in a list: the tool's own words, as far as they are written."""
        tool = self.tool
        words = (tool.name, tool.thread or tool.size, self.entry or self.family)
        return ", ".join(word for word in words if word) or "an empty card"

    @property
    def done(self) -> bool:
        """Whether the job is finished; whatever else its status says, it is not."""
        return self.status == DONE

    @property
    def ended(self) -> str:
        """How the job ended, as ``how_ended`` has it."""
        return how_ended(self.status, self.result)

    @property
    def newer(self) -> bool:
        """Whether a newer program wrote it, so that this one must not write over it."""
        return self.schema > SCHEMA


def how_ended(status: str, result: str) -> str:
    """How a job ended; of a card that is no record its status, for what a draft says of it does not hold yet.

    Args:
        status: of the card.
        result: that stands on it.

    Example:
        >>> how_ended("draft", "good"), how_ended("done", "good")
        ('draft', 'good')
    """
    return result if status == DONE else status
