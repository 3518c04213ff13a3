"""The page model: blocks that are rendered as lines of a screen, text, Markdown or HTML.

A page holds words and numbers as they are read, each once; the renderers only decide where they stand.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar, Literal

from geometry.figure import Figure

Role = Literal["plain", "quiet", "strong", "head", "pass", "watch", "stop", "warn"]
"""What a piece of text is to the reader; no meaning rests on it alone. The word of a state is told from a sentence that warns."""


@dataclass(frozen=True)
class Facts:
    """Short facts, each a word and a text, run together in as few lines as they need."""

    pairs: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Said:
    """Plain sentences, each a paragraph of its own; a line end in one of them is kept.

    Attributes:
        texts: the sentences.
        role: of all of them.
        indent: how far they stand in from what they belong to.
    """

    texts: tuple[str, ...]
    role: Role = "plain"
    indent: int = 0


@dataclass(frozen=True)
class Named:
    """Something with a name and a value.

    Attributes:
        title: its name.
        value: how much, with its unit.
        beside: who gave it, or how far it may be off.
        below: what belongs to it, each a paragraph: its source, its note, its graduation.
        role: of the value.
    """

    title: str
    value: str
    beside: str = ""
    below: tuple[str, ...] = ()
    role: Role = "strong"


@dataclass(frozen=True)
class Values:
    """Values under each other, each behind its name; ``at_edge`` sets numbers at the right edge, as they are read."""

    values: tuple[Named, ...]
    at_edge: bool = False


@dataclass(frozen=True)
class Item:
    """One thing to set.

    Attributes:
        title: what.
        value: how much.
        graduation: the same as it is turned on the machine.
        more: what the rounding costs.
    """

    title: str
    value: str
    graduation: str = ""
    more: str = ""

    @property
    def beside(self) -> str:
        """What stands behind the value."""
        return "; ".join(part for part in (self.graduation, self.more) if part)


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
        spare: the places of columns that give way where there is no room for all, the first of them first.
        boxes: how many boxes for the pencil stand behind each row.
        closed: row and box, from 0, where nothing is to be written, as it is another row's.
    """

    heading: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    spare: tuple[int, ...] = ()
    boxes: int = 0
    closed: frozenset[tuple[int, int]] = field(default=frozenset(), repr=False)

    def with_boxes(self, box: str) -> Table:
        """The same with each box as a cell."""
        heading = (*self.heading, *map(str, range(1, self.boxes + 1)))
        cells = (self.pencil(place, box) for place in range(len(self.rows)))
        return Table(
            heading, tuple((*row, *more) for row, more in zip(self.rows, cells, strict=True)), self.spare
        )

    def pencil(self, row: int, box: str, closed: str = "-") -> list[str]:
        """The boxes behind a row, from 0, and a dash where nothing is to be written."""
        return [closed if (row, place) in self.closed else box for place in range(self.boxes)]


@dataclass(frozen=True)
class Across:
    """One line of a comparison.

    Attributes:
        mark: whether all say the same.
        title: what is compared.
        cells: what each says.
        below: what belongs to each of them, where it is asked for.
    """

    mark: str
    title: str
    cells: tuple[str, ...]
    below: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True)
class SideBySide:
    """Things side by side, each in a column under its name."""

    heading: tuple[str, ...]
    rows: tuple[Across, ...]

    def table(self) -> Table:
        """The same where columns may be as wide as they like."""
        rows = tuple((f"{row.mark} {row.title}", *row.cells) for row in self.rows)
        return Table(("", *self.heading), rows)


@dataclass(frozen=True)
class Checks:
    """What it means at the machine, each with its state: ``stop``, ``watch``, ``pass``, or ``note`` for none."""

    checks: tuple[tuple[str, str], ...]

    def as_verdict(self) -> Checks:
        """The same as the verdict of an answer: where nothing in it was judged, a word says so in the place of one.

        Example:
            >>> Checks((("note", "The face is set over."),)).as_verdict().checks
            (('found', 'The face is set over.'),)
        """
        match self.checks:
            case (("note", text), *rest):
                return Checks((("found", text), *rest))
        return self


@dataclass(frozen=True)
class BoxRow:
    """One quantity to be measured, with a box for each flute.

    Attributes:
        title: what is measured.
        wanted: what it shall be, with its tolerance.
        boxes: what is written in each box already; an empty text leaves it to the pencil.
        came: what it was when the tool came.
        place: what each box is for, where that is no flute, such as a step; it stands before the number of the box.
    """

    title: str
    wanted: str
    boxes: tuple[str, ...]
    came: str = ""
    place: str = ""

    def name(self, number: int) -> str:
        """What stands before a box, counted from 1."""
        return f"{self.place} {number}".lstrip()

    @property
    def cells(self) -> tuple[str, ...]:
        """What is written in each box, where the number of its flute stands over it: with its step where it is for one."""
        if not self.place:
            return self.boxes
        return tuple(f"{self.name(number)} {text}".rstrip() for number, text in enumerate(self.boxes, 1))


@dataclass(frozen=True)
class Boxes:
    """Boxes for the readings."""

    rows: tuple[BoxRow, ...]

    def table(self) -> Table:
        """The same where a box is a cell; a row is as long as it has boxes."""
        most = max((len(row.boxes) for row in self.rows), default=0)
        heading = ("", CAME_WITH, SHALL_BE, *map(str, range(1, most + 1)))
        return Table(heading, tuple((one.title, one.came, one.wanted, *one.cells) for one in self.rows))


CAME_WITH, SHALL_BE = "came with", "shall be"
"""Over what was measured before grinding, and over what it shall be after it."""


@dataclass(frozen=True)
class ToWrite:
    """Words with a line behind each to write on.

    Attributes:
        pairs: the word, and what is written there already; an empty text leaves it to the pencil.
    """

    pairs: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Warned:
    """One caution.

    Attributes:
        title: what it is about.
        text: the whole of it.
        source: where it is from, in words.
    """

    title: str
    text: str
    source: str = ""

    @property
    def told(self) -> str:
        """The whole of it with its source."""
        return f"{self.text} [{self.source}]" if self.source else self.text


@dataclass(frozen=True)
class Cautions:
    """The warnings, each whole with its source, in their order."""

    cautions: tuple[Warned, ...]


@dataclass(frozen=True)
class CautionWords:
    """The warnings at arm's length: what to do, in a few words each.

    Attributes:
        words: the most dangerous first.
        more: where they stand in full. With it they take two lines, and what finds no room is counted there; without it
            all of them stand.
        where_cut: whether that is told only where some find no room, as on paper.
    """

    words: tuple[str, ...]
    more: str = ""
    where_cut: bool = False
    label: ClassVar[str] = "CAUTION"

    def within(self, characters: int) -> tuple[tuple[str, ...], int]:
        """Those that fit into so many characters, with what stands behind them, and how many are left out."""
        room = characters - len(self.label) - len(self.more) - len("+99")
        for count in range(len(self.words), 0, -1):
            if len(SEPARATOR.join(self.words[:count])) <= room:
                return self.words[:count], len(self.words) - count
        return (), len(self.words)

    @property
    def parts(self) -> tuple[tuple[str, str], ...]:
        """All of them behind their label."""
        return ((self.label, SEPARATOR.join(self.words)),)


SEPARATOR = " | "
"""Between words of different cautions."""


@dataclass(frozen=True)
class Labelled:
    """Paragraphs, each behind a short label: what to grind, what never.

    Attributes:
        parts: label and text of each; a line end in a text is kept.
    """

    parts: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Word:
    """A word and what it means.

    Attributes:
        title: the word.
        more: what else it goes by where it is typed.
        texts: what it is, how it is measured; each a paragraph.
        drawing: a small drawing in characters, line by line.
    """

    title: str
    more: str
    texts: tuple[str, ...]
    drawing: tuple[str, ...] = ()


@dataclass(frozen=True)
class Words:
    """Words, each with its meaning."""

    words: tuple[Word, ...]


@dataclass(frozen=True)
class Sources:
    """Sources by the mark that stands behind what they are the source of, such as ``[a]``."""

    marks: Mapping[str, str]

    def told(self) -> str:
        """All of them in one paragraph."""
        return "; ".join(f"{mark} {source}" for mark, source in self.marks.items())


@dataclass(frozen=True)
class Drawing:
    """A tooth; only paper that can draw shows it."""

    figure: Figure
    title: str


Block = (
    Facts
    | Said
    | Values
    | Items
    | Table
    | SideBySide
    | Checks
    | Boxes
    | ToWrite
    | Cautions
    | CautionWords
    | Labelled
    | Words
    | Sources
    | Drawing
)


@dataclass(frozen=True)
class Section:
    """A part of the page.

    Attributes:
        heading: its title; empty for none.
        blocks: what stands in it.
        part: whether it is a part of the section before it.
        looked_up: whether it is looked up and not worked by, so that paper may give it less room.
    """

    heading: str
    blocks: tuple[Block, ...]
    part: bool = False
    looked_up: bool = False


@dataclass(frozen=True)
class Page:
    """A whole page.

    Attributes:
        title: what it is.
        sections: in the order in which they are read.
        dense: whether it shall stand on one sheet of paper, so that headings and blocks stand close.
        close: whether its lines follow each other without an empty one, so that it stands on one screen.
        before: what stands above everything, the title too.
        aside: what stands at the side of the title or below it, such as which sheet it is.
    """

    title: str
    sections: tuple[Section, ...] = field(default=())
    dense: bool = False
    close: bool = False
    before: tuple[Block, ...] = ()
    aside: str = ""
