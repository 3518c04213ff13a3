"""The tool that a search names in full: ``machine tap`` is a tap, whatever else has both words in what is told of it."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from library.book.search_text import Parts, SearchWords
from library.search.nearness import PART_OF_NAME, called, named, singular
from library.search.work_material import FOR_ANY, names_one


class NamedTool(NamedTuple):
    """What of a search names a tool and a work material.

    Attributes:
        searched: what the rows are found by.
        tool: the words by which one of the families is called in full; none where none is.
        material: those by which a work material is; none where none is.
        families: which pairs of family and work material are of that family, by their numbers.
        materials: which are of that work material.
        called: pairs of which all tools are called so, for their family is.
    """

    searched: SearchWords
    tool: tuple[str, ...] = ()
    material: tuple[str, ...] = ()
    families: frozenset[int] = frozenset()
    materials: frozenset[int] = frozenset()
    called: frozenset[int] = frozenset()

    @classmethod
    def of(cls, words: Sequence[str], searched: SearchWords) -> NamedTool:
        """What some words name.

        Args:
            words: that are sought.
            searched: what the rows are found by.
        """
        tool, families = _in_full(words, searched.families)
        material, groups = _in_full([word for word in words if word not in tool], searched.materials)
        alike = (
            number
            for number, one in enumerate(searched.families)
            if all(_stands_in(word, one.head, one.names) for word in tool)
        )
        return cls(searched, tool, material, families, groups, frozenset(alike) if tool else frozenset())

    @property
    def told(self) -> str:
        """The same as a person says it: ``tap for cast iron``."""
        return " for ".join(" ".join(one) for one in (self.tool, self.material) if one)

    def is_called(self, row: int) -> bool:
        """Whether a row, or its family, is called by all words of the tool, each of them whole."""
        return self.searched.groups[row] in self.called or all(
            is_whole(self.searched, word, row) for word in self.tool
        )

    def for_any(self, words: Sequence[str]) -> dict[str, frozenset[int]]:
        """For each word that names a work material, the pairs of the named family and of any material; none where no tool is named.

        Args:
            words: that are sought.
        """
        materials = self.searched.materials
        pairs = frozenset(group for group in self.families if FOR_ANY in materials[group].head)
        if not self.tool or not pairs:
            return {}
        others = (word for word in words if word not in self.tool)
        return {word: pairs for word in others if word in self.material or names_one(word, materials)}

    def of_those(self, found: Sequence[int]) -> Sequence[int]:
        """Those of some rows that are what is named, for the material that is named; where there are none, all."""
        called = [row for row in found if self.is_called(row)]
        return [row for row in called if self.searched.groups[row] in self.materials] or called or found

    def weak(
        self, words: Sequence[str], found: Sequence[int], nears: Mapping[str, Mapping[int, int]]
    ) -> tuple[str, ...]:
        """Words by which no tool of those that were found is called that is of the named kind and for the named material.

        Args:
            words: that are sought, without those of a trouble.
            found: the numbers of the rows.
            nears: how near each word is in each row.

        Returns:
            Words that lead to other tools; none where what was found is what was named.
        """
        others = tuple(word for word in words if word not in self.tool + self.material)
        if not self.tool or not others or not found:
            return ()
        own = [row for row in found if self.is_called(row)]
        groups = self.searched.groups
        # Another tool that is called so too, as a centre drill, is meant where it is called by one of the others.
        if any(
            (not self.material or groups[row] in self.materials)
            and (groups[row] in self.families or any(nears[word][row] < PART_OF_NAME for word in others))
            for row in own
        ):
            return ()
        return tuple(word for word in others if all(nears[word][row] >= PART_OF_NAME for row in own))


def is_whole(searched: SearchWords, word: str, row: int) -> bool:
    """Whether a word stands whole in what a row or its family is called, or in the title of its work material."""
    group = searched.groups[row]
    family, material = searched.families[group], searched.materials[group]
    return _stands_in(
        word, searched.heads[row], searched.names[row], family.head, family.names, material.head
    )


def _stands_in(word: str, *texts: str) -> bool:
    whole, one = f" {word} ", f" {singular(word)} "
    return any(whole in text or one in text for text in texts)


def _in_full(words: Sequence[str], those: Sequence[Parts]) -> tuple[tuple[str, ...], frozenset[int]]:
    run = named(words, those)
    of_it = frozenset(number for number, one in enumerate(those) if called(run, one) == 0)
    return (tuple(word for word in words if f" {word} " in f" {run} ") if of_it else ()), of_it
