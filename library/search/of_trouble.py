"""Which words of a search tell of a trouble, and of which tools the book tells that trouble.

All of it is put together from how troubles are called, so that the first letter finds without the book itself.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

from library.book.search_text import BETWEEN, Parts, SearchWords
from library.book.word_forms import LEAST_STEM, SMALL, may_become

OWN, OF_KIN, OF_EVERY, UNKNOWN = 0, 1, 2, 3
"""Whether a trouble is one of the family's own, one of its kin's, one of every tool, or none of its."""

OF_THE_WORK = frozenset(["hole", "holes", "thread", "threads", "seat", "finish"])
"""What a trouble is seen on: beside words of one these name no tool."""


class TroubleWords:
    """The troubles of the tools among which a search looks, held against its words.

    Args:
        searched: the words of the rows.
        words: that are sought.
    """

    def __init__(self, searched: SearchWords, words: Sequence[str]) -> None:
        self._searched = searched
        self._words = words
        self._lines = {one: _line(one) for one in dict.fromkeys(searched.troubles)}
        known = frozenset(word for line in self._lines.values() for word in line.own | line.every)
        self._meant = {typed: _meant(typed, known) for typed in words}

    def known(self, word: str) -> list[int]:
        """How near a word is to the troubles of each group of rows, from ``OWN`` to ``UNKNOWN``."""
        meant = self._meant[word]
        if not all(meant):
            return [UNKNOWN] * len(self._searched.troubles)
        near = {
            one: (OF_KIN if line.is_of_kin else OWN)
            if _has(line.own, meant)
            else OF_EVERY
            if _has(line.every, meant)
            else UNKNOWN
            for one, line in self._lines.items()
        }
        return [near[one] for one in self._searched.troubles]

    def telling(
        self, groups: Collection[int], begun: Collection[str], whole: Collection[str]
    ) -> frozenset[str]:
        """Those of the words that tell of a trouble and not of a tool; with them what the trouble is on, such as the hole.

        Args:
            groups: of the rows that were found.
            begun: words by which a word in the names of these begins.
            whole: words that stand in the names of these.
        """
        lines = [self._lines[one] for one in {self._searched.troubles[group] for group in groups}]
        found = {
            word
            for word in self._words
            if word not in begun
            and any(_has(words, self._meant[word]) for line in lines for words in (line.own, line.every))
        }
        found |= self._in_one_name(lines, {word for word in self._words if word not in whole})
        return frozenset(found | (OF_THE_WORK.intersection(self._words) if found else set()))

    def _in_one_name(self, lines: Iterable[_Line], alone: set[str]) -> set[str]:
        """Words that make up the whole name of a trouble together with one by which no tool is called."""
        meant = {
            word: typed
            for typed in reversed(self._words)
            if len(typed) >= LEAST_STEM and len(self._meant[typed]) == 1
            for word in self._meant[typed][0]
        }
        found: set[str] = set()
        for name in {name for line in lines for name in line.names if meant.keys() >= set(name)}:
            by = {meant[word] for word in name}
            if not alone.isdisjoint(by):
                found |= by
        return found


class _Line(NamedTuple):
    """The words of one line of troubles.

    Attributes:
        own: of the family's own troubles.
        every: of those of every tool.
        names: the words of each name that say something.
        is_of_kin: whether what is its own is told of its kin.
    """

    own: frozenset[str]
    every: frozenset[str]
    names: tuple[tuple[str, ...], ...]
    is_of_kin: bool


@lru_cache(maxsize=256)
def _line(one: Parts) -> _Line:
    names = (
        tuple(word for word in name.split() if word not in SMALL)
        for part in one[:2]
        for name in part.split(BETWEEN)
    )
    own, every = frozenset(one.head.split()), frozenset(one.names.split())
    return _Line(own, every, tuple(dict.fromkeys(name for name in names if name)), bool(one.notes.strip()))


def _meant(typed: str, known: Iterable[str]) -> tuple[frozenset[str], ...]:
    """For each part of what is typed the known words that it may become."""
    return tuple(frozenset(word for word in known if may_become(part, word)) for part in typed.split())


def _has(words: frozenset[str], meant: Sequence[frozenset[str]]) -> bool:
    return all(not part.isdisjoint(words) for part in meant)
