"""Without which words something would be found, where with all of them nothing is."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Collection, Sequence
from typing import NamedTuple

from library.book.rows import Rows
from library.book.search_text import Parts, plain
from library.book.word_forms import SAYS_NOTHING
from library.search.named_tool import NamedTool
from library.search.nearness import called, named
from library.search.ranked import Ranked
from library.search.ranking import ranked
from library.search.size_patterns import LENGTH
from library.search.slips import meant_by, vocabulary

MOST = 12
"""Words of which it is told which are in the way; each takes a search."""

_WORDS = re.compile(rf"(?i)(?<!\S)(?:{LENGTH}|\d{{1,2}} flute[sd]?)(?!\S)|\S+")
"""The words of a search; the unit of a length, and what is counted, is one with its number."""


class LeftOut(NamedTuple):
    """Words that are in the way.

    Attributes:
        words: as typed; none where nothing helps.
        found: how much is found without them.
        meant: words of the book that are near them, where they may be slips.
    """

    words: tuple[str, ...] = ()
    found: int = 0
    meant: tuple[str, ...] = ()

    @property
    def told(self) -> str:
        """The same as a sentence; empty where nothing helps.

        Example:
            >>> LeftOut(("my", "bush"), 3).told, LeftOut().told
            ("Without 'my' and 'bush' there are 3.", '')
            >>> LeftOut(("reemer",), 3, ("reamer",)).told
            "Without 'reemer' there are 3; near it in the book is 'reamer'."
        """
        if not self.words:
            return f"Near it in the book is {' and '.join(map(repr, self.meant))}." if self.meant else ""
        *others, last = map(repr, self.words)
        named = f"{', '.join(others)} and {last}" if others else last
        them = "it" if len(self.words) == 1 else "them"
        near = f"; near {them} in the book is {' and '.join(map(repr, self.meant))}" if self.meant else ""
        return f"Without {named} there {'is' if self.found == 1 else 'are'} {self.found}{near}."


def leaving_out(
    words: Sequence[str],
    find: Callable[[Sequence[str]], Collection[int]],
    dearest: Sequence[Collection[str]] = (),
) -> LeftOut:
    """The fewest words without which something is found, and of equally many those without which most is.

    Words that say what is meant are left out last: without them other things are found, and not more of those meant.

    Args:
        words: as typed, which together find nothing.
        find: the numbers of what some of them find together.
        dearest: words that say what is meant, those first that are left out last.

    Example:
        >>> texts = ["taper reamer", "hand tap", "hand reamer", "hand reamer, long"]
        >>> find = lambda words: [at for at, text in enumerate(texts) if all(one in text for one in words)]
        >>> leaving_out(["hand", "tap", "titanium"], find), leaving_out(["taper", "hand", "reamer"], find)
        (LeftOut(words=('titanium',), found=1, meant=()), LeftOut(words=('taper',), found=2, meant=()))
        >>> leaving_out(["taper", "hand", "reamer"], find, [["taper"]]).words
        ('hand',)
    """
    if not 2 <= len(words) <= MOST:
        return LeftOut()
    having: dict[int, list[str]] = {}
    for word in dict.fromkeys(words):
        for number in find([word]):
            having.setdefault(number, []).append(word)
    together = Counter(map(tuple, having.values()))

    def cost(kept: Collection[str]) -> tuple[int, ...]:
        return *(sum(word not in kept for word in one) for one in dearest), -len(kept)

    ways = [{*min(together, key=lambda kept: (*cost(kept), -together[kept]))}] if together else []
    # Words of which each finds something may mean another thing side by side, as a number of flutes.
    ways += sorted(({*words} - {word} for word in words), key=cost)
    for kept in ways:
        found = find([word for word in words if word in kept])
        if found:
            return LeftOut(tuple(word for word in dict.fromkeys(words) if word not in kept), len(found))
    return LeftOut()


def without(rows: Rows, text: str) -> LeftOut:
    """The words without which a text finds something in the book; those that say nothing are in nobody's way.

    Args:
        rows: of the book.
        text: as typed.

    Example:
        >>> from library.book.rows import Row
        >>> rows = Rows.of([Row("entry", "a", "A", search="taper reamer"), Row("entry", "b", "B", search="hand tap")])
        >>> without(rows, "hand tap titanium").told, without(rows, "my taper drill of brass").words, without(rows, "titanium")
        ("Without 'titanium' there is 1.", ('drill', 'brass'), LeftOut(words=(), found=0, meant=()))
    """
    words = [word for word in _WORDS.findall(text) if word.casefold() not in SAYS_NOTHING]
    dearest = [_naming(words, rows.words.families), _naming(words, rows.words.materials)]
    left_out = leaving_out(words, lambda some: ranked(rows, " ".join(some)).numbers, dearest)
    known = vocabulary(rows.words)
    near = (meant_by(word, known) for word in left_out.words or words[: len(words) <= 1])
    return left_out._replace(meant=tuple(dict.fromkeys(word for word in near if word)))


def found_without(rows: Rows, text: str, found: Ranked) -> Ranked:
    """What is found without the words that are in the way, where nothing is with them and the tool is named in full.

    Args:
        rows: of the book.
        text: as typed.
        found: with all words.

    Returns:
        The same, where something was found, or where a word of the tool or of its work material would be left out.
    """
    if found.numbers or not text.strip():
        return found
    helps = without(rows, text)
    words = [word for word in _WORDS.findall(text) if word.casefold() not in SAYS_NOTHING]
    tool = NamedTool.of([plain(word) for word in words], rows.words)
    if (
        not helps.words
        or not tool.tool
        or not {*tool.tool, *tool.material}.isdisjoint(map(plain, helps.words))
    ):
        return found
    rest = ranked(rows, " ".join(word for word in words if word not in helps.words))
    return rest._replace(left_out=(*rest.left_out, *helps.words), named=tool.told, meant=helps.meant)


def _naming(words: Sequence[str], those: Sequence[Parts]) -> list[str]:
    """Those words by which together one of the families, or of the materials, is called in full."""
    even = {word: plain(word) for word in words}
    run = named([*even.values()], those)
    if not any(called(run, one) == 0 for one in those):
        return []
    return [word for word in even if f" {even[word]} " in f" {run} "]
