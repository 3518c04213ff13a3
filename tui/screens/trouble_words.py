"""By which words a line of the list of troubles is found: its own, and the names of the tools that carry the trouble."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, NamedTuple

from geometry.quantities import QUANTITIES
from library.book.search_text import plain
from library.book.word_forms import may_become
from library.guidance.model import Symptom, symptoms
from library.pages.own_tables import carriers
from tui.screens.table_ways import FAMILY

if TYPE_CHECKING:
    from library.book.model import Book, Family
    from tui.screens.chooser import Choice


class Sought(NamedTuple):
    """The words of one line.

    Attributes:
        trouble: how the trouble is called.
        said: how it is said too.
        tools: how the tools are called that it is told of by name.
        rest: all else that stands in the line, and the names of the other tools that carry it.
    """

    trouble: frozenset[str]
    said: frozenset[str]
    tools: frozenset[str]
    rest: frozenset[str]

    def has(self, word: str) -> bool:
        """Whether a word, in any of its forms or as far as it is typed, is among them."""
        return any(_has(words, word) for words in self)

    def away(self, words: Sequence[str]) -> tuple[int, int]:
        """How many of the words are in no name of the trouble or of its tools; then so without the ways it is said too."""
        called, named = self.trouble | self.tools, self.trouble | self.said | self.tools
        return sum(not _has(named, word) for word in words), sum(not _has(called, word) for word in words)


def sought_by(book: Book, choice: Choice) -> Sought:
    """By which words a line is found.

    Args:
        book: has the troubles and the families.
        choice: the line.
    """
    array, _, name = choice.id.partition(":")
    one = symptoms(book).get(name) if array != FAMILY else None
    own = book.families.values() if array == FAMILY else ()
    told = [book.families[key] for key in one.families if key in book.families] if one is not None else []
    tools = told or [family for family in own if family.id == name]
    carry = carriers(book, one) if one is not None else ()
    return Sought(
        _words((choice.name,)),
        _words(one.synonyms if one is not None else ()),
        _names(tools),
        _words(_told(one) if one is not None else (choice.text,)) | _names(carry),
    )


def _told(one: Symptom) -> Iterator[str]:
    """What stands in the line of a trouble, without where it is from: the name of a book says nothing of the tools."""
    yield from (told.text for told in (one.measure, one.change) if told is not None)
    if one.value in QUANTITIES:
        yield QUANTITIES[one.value].title


def _names(families: Iterable[Family]) -> frozenset[str]:
    return _words(name for family in families for name in (family.title, family.id, *family.synonyms))


def _words(texts: Iterable[str]) -> frozenset[str]:
    return frozenset(word for text in texts for word in plain(text).split())


def _has(words: Iterable[str], typed: str) -> bool:
    return all(any(may_become(part, word) for word in words) for part in plain(typed).split())
