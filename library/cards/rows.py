"""The row of a card: what the list shows of it and what a search looks at."""

from __future__ import annotations

from dataclasses import asdict, astuple, dataclass, fields, replace
from pathlib import Path

from library.cards.model import Card, how_ended
from library.sanitize import sanitize

UNREADABLE = "unreadable"
"""The status of a card whose file, or a part of it, cannot be read."""


@dataclass(frozen=True, slots=True)
class CardRow:
    """What is known of a card without opening it.

    Attributes:
        id: of the card.
        status: ``draft``, ``done``, or ``unreadable``.
        started: the day, as ``2026-11-25``; empty where it has none.
        tool: its own name in the shop.
        size: of the tool, or its thread.
        family: of the tool.
        entry: that it was begun from.
        work_material: that the tool cuts.
        belongs_to: customer or machine.
        result: how it ended.
        text: everything a search looks at, small letters.
    """

    id: str
    status: str
    started: str = ""
    tool: str = ""
    size: str = ""
    family: str = ""
    entry: str = ""
    work_material: str = ""
    belongs_to: str = ""
    result: str = ""
    text: str = ""

    @property
    def ended(self) -> str:
        """How the job ended, as ``how_ended`` has it."""
        return how_ended(self.status, self.result)

    def as_data(self) -> dict[str, str]:
        """The row for ``--json``, without the text that a search looks at."""
        found: dict[str, str] = asdict(self)
        del found["text"]
        return found


NAMES = tuple(one.name for one in fields(CardRow))


def row_of(card: Card) -> CardRow:
    """The row of a card.

    Example:
        >>> row_of(Card(id="2026-11-25-01", family="tap")).text
        '2026-11-25-01 draft tap'
    """
    tool = card.tool
    parts = (
        card.id,
        card.status,
        card.started.isoformat() if card.started else "",
        tool.name,
        tool.thread or tool.size,
        card.family,
        card.entry,
        tool.work_material,
        tool.belongs_to,
        card.result,
    )
    more = (tool.size if tool.thread else "", tool.marks, card.wrong, card.remarks, card.notes)
    # The day is in the id already, and is searched by its own word.
    searched = (*parts[:2], *parts[3:], *more)
    return CardRow(*parts, " ".join(" ".join(one.split()) for one in searched if one).casefold())


def unreadable(path: Path) -> CardRow:
    """The row of a file that cannot be read."""
    name = sanitize(path.stem)
    return CardRow(name, UNREADABLE, text=f"{name} {UNREADABLE}".casefold())


def as_unreadable(row: CardRow) -> CardRow:
    """The row of a file of which only a part can be read.

    Example:
        >>> as_unreadable(CardRow("2026-11-25-01", "draft", text="2026-11-25-01 draft")).ended
        'unreadable'
    """
    return replace(row, status=UNREADABLE, text=f"{row.text} {UNREADABLE}")


def as_list(row: CardRow) -> list[str]:
    """The row as the cache holds it."""
    return list(astuple(row))


def from_list(values: object) -> CardRow | None:
    """A row from the cache, or nothing where the cache holds something else."""
    if isinstance(values, list) and len(values) == len(NAMES) and all(isinstance(one, str) for one in values):
        return CardRow(*values)
    return None
