"""Which words of a search tell of a trouble, and of which tools the book tells that trouble.

All of it is put together from how troubles are called, so that the first letter finds without the book itself.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from functools import cached_property

from library.book.search_text import BETWEEN, Parts, SearchWords
from library.book.word_forms import LEAST_STEM, may_become, telling_words

OWN, OF_KIN, OF_EVERY, UNKNOWN = 0, 1, 2, 3
"""Whether a trouble is one of the family's own, one of its kin's, one of every tool, or none of its."""


class TroubleWords:
    """The troubles of the tools among which a search looks, held against its words.

    Args:
        searched: the words of the rows.
        words: that are sought.
    """

    def __init__(self, searched: SearchWords, words: Sequence[str]) -> None:
        self._searched = searched
        self._words = words

    @cached_property
    def _lines(self) -> Mapping[Parts, tuple[frozenset[str], frozenset[str]]]:
        """The words of each different line of troubles: of the family's own, and of every tool's."""
        return {
            one: (frozenset(one.head.split()), frozenset(one.names.split()))
            for one in dict.fromkeys(self._searched.troubles)
        }

    def known(self, word: str) -> list[int]:
        """How near a word is to the troubles of each group of rows, from ``OWN`` to ``UNKNOWN``."""
        near = {
            one: (OF_KIN if one.notes.strip() else OWN)
            if _has(own, word)
            else OF_EVERY
            if _has(every, word)
            else UNKNOWN
            for one, (own, every) in self._lines.items()
        }
        return [near[one] for one in self._searched.troubles]

    def telling(self, groups: Collection[int], is_of_a_tool: Collection[str]) -> frozenset[str]:
        """Those of the words that tell of a trouble and not of a tool.

        Args:
            groups: of the rows that were found.
            is_of_a_tool: words that stand in the names of these.
        """
        lines = {self._searched.troubles[group] for group in groups}
        known = [words for one in lines for words in self._lines[one]]
        alone = {
            word
            for word in self._words
            if word not in is_of_a_tool and any(_has(words, word) for words in known)
        }
        return frozenset(alone | self._in_one_name(lines, alone))

    def _in_one_name(self, lines: Collection[Parts], alone: set[str]) -> set[str]:
        """Words that make up the whole name of a trouble together with one that tells of nothing else."""
        if not alone:
            return set()
        names = {name for one in lines for part in one[:2] for name in part.split(f" {BETWEEN} ")}
        found: set[str] = set()
        for name in names:
            by = [_by(self._words, word) for word in telling_words(name)]
            if by and all(by) and not alone.isdisjoint(by):
                found.update(by)
        return found


def _by(typed: Sequence[str], word: str) -> str:
    return next((one for one in typed if len(one) >= LEAST_STEM and may_become(one, word)), "")


def _has(known: Collection[str], typed: str) -> bool:
    return all(any(may_become(part, word) for word in known) for part in typed.split())
