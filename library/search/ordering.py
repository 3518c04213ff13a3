"""The order of what a search finds: how far away each tool is, and of equals what is asked for more often."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence, Set
from dataclasses import dataclass

from library.book.search_text import BETWEEN, SearchWords
from library.search.named_tool import NamedTool
from library.search.nearness import ABSENT, called, named, singular
from library.search.sizes import Sought

COMMONEST = "plain steel"
"""The work material of a tool that is looked for without one, more often than any other. Common practice, no source."""

STEEL, OF_ANOTHER_STEEL = "steel", 12
"""The word by which alone the commonest work material is meant, and how much later tools for one come that is neither that
nor called as typed."""

COMMON_TOOLS = (" ; taps ; ", " ; twist drills ; ", " ; reamers ; ", " ; countersinks ; ")
"""Families as their titles have them, the one that is ground most often first, for where a work material alone is sought.
Common practice, no source."""

OVER = re.compile(r" over (?![0-9./]+ to )")
"""By this word in its name a tool for large work alone is known, but for one that is for a range of sizes."""


@dataclass(frozen=True)
class _Named:
    """What the words of a search name.

    Attributes:
        phrase: of the words, without a family that stands first.
        one: the same of one tool, as titles in the singular have it.
        title: all that was typed as the whole title of a tool.
        begins: with what the title of a likely one begins.
        families: how far each pair of family and work material is from the family that is named; 0 the nearest.
        others: of each pair whether it is for another work material than the one that is meant.
        of_family: the pairs that are meant where a family alone is named.
        common: how many kinds of tools are asked for more often than that of each pair.
        weight: of how far the families are.
    """

    phrase: str
    one: str
    title: str
    begins: tuple[str, str]
    families: Sequence[int]
    others: Sequence[bool]
    of_family: Set[int]
    common: Sequence[int]
    weight: int


@dataclass(frozen=True)
class Order:
    """What the order goes by.

    Attributes:
        searched: what the rows are found by.
        sought: what is searched for.
        words: of it that name a tool, and not its trouble.
        tool: that is named in full.
        nears: how near each word is in each row.
        meant: rows that are meant for the size, by the range in their title.
    """

    searched: SearchWords
    sought: Sought
    words: tuple[str, ...]
    tool: NamedTool
    nears: Mapping[str, Mapping[int, int]]
    meant: frozenset[int]

    def sorted(self, found: Sequence[int], away: Sequence[float], *, is_telling: bool) -> list[int]:
        """The rows, the likeliest first.

        Args:
            found: the numbers of the rows.
            away: how far away each row of the book is by its words, sizes and flutes.
            is_telling: whether some words tell of a trouble.
        """
        named_so = self._named(is_telling=is_telling)
        return sorted(found, key=lambda row: self._behind(row, away[row], named_so))

    def _named(self, *, is_telling: bool) -> _Named:
        """What the words of the search are of a title, of families and of work materials."""
        words, sought, searched = self.words, self.sought, self.searched
        whole = sought.phrase
        tool, material = named(words, searched.families), named(words, searched.materials)
        # Of taps it says nothing that the name of one begins with tap, or that plain stands right behind that.
        has_tool_first = len(words) > 1 and words[0] == tool
        # A size and a number of flutes belong to no name.
        is_parted = words and (sought.size is not None or sought.flutes is not None or bool(sought.numbers))
        phrase = " ".join(words[has_tool_first:]) if is_telling or has_tool_first or is_parted else whole
        title = f" {BETWEEN} {whole} {BETWEEN}"
        first = f" {BETWEEN} {words[0]}" if len(words) > 1 and not has_tool_first else title
        of_tool = f" {BETWEEN} {tool}" if " " in tool else first
        if words and words[0] in self.tool.tool[1:] + self.tool.tool[:-1]:
            # Half of the name of a family says nothing, as drill in drill bit.
            first = of_tool
        families = [called(tool, one) if tool else 0 for one in searched.families]
        others = [
            f" {COMMONEST} " not in one.head and (not material or called(material, one) > 0)
            for one in searched.materials
        ]
        # Where a family alone is named, that of the commonest work material is meant, whatever other titles begin with.
        nearest = min(families, default=2)
        is_all = " ".join(words) == tool and (" " in tool if nearest == 0 else nearest == 1)
        of_family = {number for number, one in enumerate(families) if one == nearest} if is_all else set()
        # Two words that name a family say more than each of them in the title of another tool, as tool in tool steel.
        weight = 48 if " " in tool else 16 if len(words) > 1 else 8
        return _Named(
            phrase=phrase,
            one=singular(phrase),
            title=title,
            begins=(first, of_tool),
            families=families,
            others=others,
            of_family=of_family,
            common=self._commonness(),
            weight=weight,
        )

    def _behind(self, row: int, away: float, named_so: _Named) -> tuple[float, int]:
        """How far behind the likeliest one a row comes, and how seldom its kind of tool is asked for."""
        searched, head, group = self.searched, self.searched.heads[row], self.searched.groups[row]
        is_other = named_so.others[group]
        if head.startswith(named_so.title) and group not in named_so.of_family:
            return -1, 0
        # In the title alone: an id has its words in another order.
        is_of_family = group in named_so.of_family and not is_other
        in_head = is_of_family or f" {named_so.one}" in head[: head.find(BETWEEN, 2)]
        in_text = in_head or named_so.one in searched.names[row] or named_so.phrase in searched.notes[row]
        step = away * 48 + (not in_head) * 24 + named_so.families[group] * named_so.weight
        step += self._from_tool(row) * 48
        # Steel without a word for which steel is plain steel, though the names of others have the word too.
        step += (STEEL in self.words and is_other) * OF_ANOTHER_STEEL
        step += (row not in self.meant) * 4 + (not in_text) * 2
        step += not (is_of_family or head.startswith(named_so.begins))
        # A tool for large work alone, as its name says, comes after the one for any.
        return (step * 2 + is_other) * 2 + bool(OVER.search(head)), named_so.common[group]

    def _commonness(self) -> list[int]:
        """For each pair of family and work material how many kinds of tools are asked for more often, where none is named."""
        families = self.searched.families
        if self.tool.tool or not (self.tool.material or STEEL in self.words):
            return [0] * len(families)
        return [
            next((place for place, name in enumerate(COMMON_TOOLS) if name in one.head), len(COMMON_TOOLS))
            for one in families
        ]

    def _from_tool(self, row: int) -> int:
        """How much farther, or nearer, a tool is by the words that name a family in full, beside each of them alone."""
        words = self.tool.tool
        if len(words) > 1 and self.searched.groups[row] in self.tool.families:
            return -sum(self.nears[word].get(row, 0) for word in words)
        # Alone, the word may yet go on, as tap does to taper.
        return 0 if len(self.sought.words) == 1 or self.tool.is_called(row) else ABSENT
