"""The data model of the book, as frozen objects.

A value keeps the text that a person typed beside the number it means, where it came from, in which
layer and on which line it stands, and what it replaced.
"""

from __future__ import annotations

from collections.abc import Hashable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal, NamedTuple

from library.book.rows import Row
from library.issue import NOWHERE, Issue, Place

Layer = Literal["shipped", "shop"]
Label = Literal["published", "shop", "common practice", "from memory", "missing"]

LABELS: tuple[Label, ...] = ("published", "shop", "common practice", "from memory")
"""The four kinds of source that a value may name; a published one names the document and a place in it."""


@dataclass(frozen=True)
class Measure:
    """One number of the book: the text as typed, and what it means.

    Attributes:
        text: as it stands in the file, such as ``1-1/2 in``.
        number: in mm, radians or as a count; the chosen word's number is not used.
        word: for a choice, the word; else empty.
        per_diameter: true when the number is a share of the tool's diameter (``0.25 D``).
    """

    text: str
    number: float = 0.0
    word: str = ""
    per_diameter: bool = False


@dataclass(frozen=True)
class Citation:
    """Where a value or a text came from.

    Attributes:
        label: which of the four kinds of source it is.
        document: for a published source, the id of a ``Source`` or the title as typed.
        place: the section, table or page in that document.
        speaks_of: what the document speaks of there, where that is another tool, size or material; else empty.
    """

    label: Label
    document: str = ""
    place: str = ""
    speaks_of: str = ""


class ByRule(NamedTuple):
    """The rule that gave a value.

    Attributes:
        id: of the rule.
        title: the tools that it is for.
    """

    id: str
    title: str

    @property
    def in_words(self) -> str:
        """What is said of the value.

        Example:
            >>> ByRule("hand-tap", "hand taps").in_words
            'by the rule for hand taps'
        """
        return f"by the rule for {self.title}"


@dataclass(frozen=True)
class Value:
    """A recommended value of one quantity, or a range of them.

    Attributes:
        key: the quantity.
        low: the least that is usual, or nothing.
        usual: the one to take first, or nothing.
        high: the most that is usual, or nothing.
        citation: where it came from.
        note: a remark that belongs to this value.
        also: other sources' values for the same thing, each with its own citation.
        disagreement: one sentence on where the sources differ.
        layer: the layer that it was read from.
        place: the file and line it stands on.
        replaces: the value of the layer below that this one covers.
        unread: true when the file has something here that could not be read; a finding says what.
        by_rule: the rule that gave it, where it does not stand in the entry itself.
        bands: what it is for tools of one size, or for one kind of hole.
        band: the words of the band that was taken, where the size of the tool was known; else empty.
    """

    key: str
    low: Measure | None = None
    usual: Measure | None = None
    high: Measure | None = None
    citation: Citation = Citation("missing")
    note: str = ""
    also: tuple[Value, ...] = ()
    disagreement: str = ""
    layer: Layer = "shipped"
    place: Place = NOWHERE
    replaces: Value | None = None
    unread: bool = False
    by_rule: ByRule | None = None
    bands: tuple[Band, ...] = ()
    band: str = ""

    def first(self) -> Measure | None:
        """The measure that stands for it in a list: the usual one, else the low, else the high."""
        return self.usual or self.low or self.high


def _before(text: str, measure: Measure | None) -> str:
    """A length before "to" and another; without its unit where the other has the same."""
    number, _, unit = text.rpartition(" ")
    is_plain = measure is not None and measure.text.rpartition(" ")[2] == unit and number.isascii()
    return number if is_plain and number and " " not in number else text


@dataclass(frozen=True)
class Band:
    """A value for tools of one size, or for one kind of hole.

    Attributes:
        start: the diameter with which it begins; nothing where it has no such end.
        to: the diameter with which it ends; nothing where it has no such end.
        hole: ``through`` or ``blind``; empty where it is for both.
        value: range, source, place and note.
        is_over: whether it begins above its start, and not with it.
    """

    start: Measure | None
    to: Measure | None
    hole: str
    value: Value
    is_over: bool = True

    @property
    def in_words(self) -> str:
        """For what it is.

        Example:
            >>> Band(Measure("3 mm"), Measure("10 mm"), "blind", Value("flutes")).in_words
            'over 3 to 10 mm, in blind holes'
        """
        if self.start is not None:
            size = f"{'over' if self.is_over else 'from'} {_before(self.start.text, self.to)}"
            size += f" to {self.to.text}" if self.to is not None else "" if self.is_over else " on"
        else:
            size = f"up to {self.to.text}" if self.to is not None else ""
        return ", ".join(filter(None, (size, f"in {self.hole} holes" if self.hole else "")))


@dataclass(frozen=True)
class Entry:
    """One kind of tool for one kind of work.

    Attributes:
        id: its name in commands and in other files.
        family: the id of its family.
        title: as shown in the list.
        work_material: what it cuts.
        tool_material: what it is made of, a word of ``library.book.tool_materials``; empty where its family says it.
        synonyms: other words that a search should find it by.
        values: the recommended values by quantity key.
        cautions: ids of the cautions that belong to it.
        notes: free text, several lines.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
        unread: true when some lines of it could not be read; a finding says which.
        unruled: true when what the rules go by could not be read, so that nobody can tell which are for it.
    """

    id: str
    family: str
    title: str
    work_material: str = ""
    tool_material: str = ""
    synonyms: tuple[str, ...] = ()
    values: Mapping[str, Value] = field(default_factory=dict)
    cautions: tuple[str, ...] = ()
    notes: str = ""
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE
    unread: bool = False
    unruled: bool = False


@dataclass(frozen=True)
class Family:
    """A family of tools, with what a newcomer wants to know of it.

    Attributes:
        id: such as ``step-drill``.
        title: as shown, in the plural.
        what: what these tools are, in a sentence or two.
        texts: further paragraphs by heading, in the order of the file.
        like: the id of the family that it follows in all that it does not say itself; empty where it follows none.
        kind: the kind of tool that calculations know it as, a word of ``geometry.kinds``; empty where they go by surfaces.
        surfaces: words of the surfaces that are relieved, the one that is mostly ground first.
        tool_material: what its tools are made of where nothing else is said; empty where that is not known.
        synonyms: other words that a search should find it by.
        cautions: ids of the cautions that belong to every tool of the family.
        extra: the shop's own keys beginning with ``x-``, untouched.
        layer: the highest layer that has a part of it.
        place: where it begins in that layer's file.
    """

    id: str
    title: str
    what: str = ""
    texts: Mapping[str, str] = field(default_factory=dict)
    like: str = ""
    kind: str = ""
    surfaces: tuple[str, ...] = ()
    tool_material: str = ""
    synonyms: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


@dataclass(frozen=True)
class Material:
    """A work material, its ISO 513 letter where it has one, and the cautions that its dust asks for."""

    id: str
    title: str
    iso_513: str = ""
    note: str = ""
    synonyms: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


@dataclass(frozen=True)
class Caution:
    """One warning, with the source it rests on.

    Attributes:
        id: as entries, families, materials and calculations name it.
        title: what it is about.
        text: the whole of it.
        citation: where it was read.
        words: what to do, in a few words that are read at arm's length; empty where the title has to do.
        tool_materials: of the tools that it belongs to without being named, words of ``library.book.tool_materials``.
        abrasives: of the wheels that it belongs to without being named, words of ``library.equipment.abrasives``; with
            ``tool_materials`` it belongs to these wheels on these tools.
    """

    id: str
    title: str
    text: str
    citation: Citation = Citation("missing")
    words: str = ""
    tool_materials: tuple[str, ...] = ()
    abrasives: tuple[str, ...] = ()
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE

    @property
    def in_words(self) -> str:
        """What to do, or else what it is about.

        Example:
            >>> Caution("eyes", "Eyes and face", "Wear goggles.", words="goggles on").in_words
            'goggles on'
        """
        return self.words or self.title


@dataclass(frozen=True)
class Source:
    """A published document that values cite.

    Attributes:
        id: as cited.
        title: of the document.
        by: who published it.
        year: of the edition read, or words where none is printed.
        caveat: why to take it with care, where that is so; empty for a sound source.
        grade: one letter for how much it carries, as in ``library.book.grades``; empty where it has none.
    """

    id: str
    title: str
    by: str = ""
    year: str = ""
    caveat: str = ""
    grade: str = ""
    extra: Mapping[str, object] = field(default_factory=dict)
    layer: Layer = "shipped"
    place: Place = NOWHERE


@dataclass(frozen=True)
class Book:
    """Everything that was read, layers merged, and every problem that was found on the way.

    Attributes:
        entries: by id; an entry is put together when it is asked for.
        families: by id.
        materials: by id.
        cautions: by id.
        sources: by id.
        findings: every problem of every file, by file and line.
        more: what other kinds of table hold, by kind and id.
        rows: the entries as a list shows them; light, and in the order of the list.
    """

    entries: Mapping[str, Entry]
    families: Mapping[str, Family] = field(default_factory=dict)
    materials: Mapping[str, Material] = field(default_factory=dict)
    cautions: Mapping[str, Caution] = field(default_factory=dict)
    sources: Mapping[str, Source] = field(default_factory=dict)
    findings: tuple[Issue, ...] = ()
    more: Mapping[str, Mapping[str, object]] = field(default_factory=dict)
    rows: Sequence[Row] = ()

    @cached_property
    def found_once(self) -> dict[Hashable, object]:
        """What was found in it already, by what was asked (``library.once``)."""
        return {}

    @cached_property
    def problem_count(self) -> int:
        """How many problems there are, those that are only counted included."""
        return sum(one.counts for one in self.findings)

    def kind_of(self, family: str) -> str:
        """The kind of tool that calculations know a family as; empty where none is known.

        Example:
            >>> Book({}, {"flat-drill": Family("flat-drill", "Flat drills", kind="twist-drill")}).kind_of("flat-drill")
            'twist-drill'
        """
        found = self.families.get(family)
        return found.kind if found is not None else ""
