"""Words of a search by which no tool that it found is called, for each a sentence is due."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

from library.book.word_forms import LEAST_BEGUN
from library.search.named_tool import NamedTool, is_whole
from library.search.nearness import IN_NOTES


@dataclass(frozen=True)
class NotCalled:
    """What such words are told by.

    Attributes:
        words: that are sought, without those of a trouble.
        tool: that is named in full.
        nears: how near each word is in each row.
        of_any: for each word of a work material the pairs that are for any.
        found: the rows; of those for a named tool these alone.
    """

    words: Sequence[str]
    tool: NamedTool
    nears: Mapping[str, Mapping[int, int]]
    of_any: Mapping[str, Collection[int]]
    found: Sequence[int]

    @property
    def for_any(self) -> tuple[str, ...]:
        """Words of a work material where nothing that was found is called by it, and some of it is for any."""
        groups = self.tool.searched.groups
        called = {
            word: [row for row in self.found if self.nears[word][row] < IN_NOTES] for word in self.of_any
        }
        of_any = [
            word
            for word, rows in called.items()
            if rows and all(groups[row] in self.of_any[word] for row in rows)
        ]
        together = " ".join(word for word in of_any if word in self.tool.material)
        others = (word for word in of_any if word not in self.tool.material)
        return tuple(one for one in (together, *others) if one)

    @property
    def only_told(self) -> tuple[str, ...]:
        """Words, typed so far that they may be whole, by which nothing is called that was found, and no trouble."""
        whole = [word for word in self.words if len(word) >= LEAST_BEGUN or word in self.tool.material]
        return tuple(word for word in whole if self.found and self._nearest(word) >= IN_NOTES)

    @property
    def only_part(self) -> tuple[str, ...]:
        """Words that are names of other tools, and in what was found parts of other words alone; not the last one typed."""
        searched = self.tool.searched
        rows = range(len(searched.heads))
        return tuple(
            word
            for word in self.words
            if self.found and word.isalpha() and word not in self.tool.tool and word not in self.of_any
            and not any(is_whole(searched, word, row) for row in self.found)
            and self._nearest(word) < IN_NOTES
            and any(is_whole(searched, word, row) for row in rows)
        )  # fmt: skip

    def _nearest(self, word: str) -> int:
        return min(map(self.nears[word].__getitem__, self.found))
