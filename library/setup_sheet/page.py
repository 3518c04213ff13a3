"""What stands on a setup sheet, before it is text, Markdown or HTML."""

from __future__ import annotations

from dataclasses import dataclass, field

from geometry.figure import Figure
from library.units.system import METRIC, Display


@dataclass(frozen=True)
class Facts:
    """Short facts, each a word and a text, run together in as few lines as they need."""

    pairs: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Said:
    """Plain sentences, each a paragraph of its own."""

    texts: tuple[str, ...]


@dataclass(frozen=True)
class Item:
    """One thing to set.

    Attributes:
        title: what.
        value: how much.
        more: on which graduation, and what the rounding costs.
    """

    title: str
    value: str
    more: str = ""


@dataclass(frozen=True)
class Items:
    """Things to set, in their order."""

    items: tuple[Item, ...]


@dataclass(frozen=True)
class Table:
    """Rows under a heading; every column but the first is aligned to the right.

    Attributes:
        heading: of each column.
        rows: as many cells as the heading.
    """

    heading: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


@dataclass(frozen=True)
class Checks:
    """What it means at the machine, each with its state: ``stop``, ``watch``, ``pass``, or ``note`` for none."""

    checks: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class BoxRow:
    """One quantity to be measured, with a box for each flute.

    Attributes:
        title: what is measured.
        wanted: what it shall be, with its tolerance.
        boxes: what is written in each box already; an empty text leaves it to the pencil.
    """

    title: str
    wanted: str
    boxes: tuple[str, ...]


@dataclass(frozen=True)
class Boxes:
    """Boxes for the readings."""

    rows: tuple[BoxRow, ...]


@dataclass(frozen=True)
class Warned:
    """One caution.

    Attributes:
        title: what it is about.
        sentence: its first sentence.
        clause: as much of that as asks for something.
    """

    title: str
    sentence: str
    clause: str


@dataclass(frozen=True)
class Cautions:
    """The warnings; ``last`` stands at the very end, in full."""

    cautions: tuple[Warned, ...]
    last: str


@dataclass(frozen=True)
class Drawing:
    """A tooth with the units of its words; only paper that can draw shows it."""

    figure: Figure
    title: str
    display: Display = METRIC


Block = Facts | Said | Items | Table | Checks | Boxes | Cautions | Drawing


@dataclass(frozen=True)
class Section:
    """A part of the page with its heading."""

    heading: str
    blocks: tuple[Block, ...]


@dataclass(frozen=True)
class Page:
    """A whole setup sheet.

    Attributes:
        title: what it is.
        sections: in the order in which the job is done.
    """

    title: str
    sections: tuple[Section, ...] = field(default=())
