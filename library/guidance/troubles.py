"""Which symptoms belong to a family of tools, and which a person means by the words for a trouble."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from library.book.likeness import ancestors
from library.book.model import Book
from library.book.search_text import plain
from library.guidance.model import Symptom, symptoms

SMALL = frozenset(["a", "an", "and", "at", "in", "is", "it", "of", "on", "the", "to", "too", "up", "with"])
"""Words that say nothing of a trouble."""

_ENDINGS = ("ing", "ed", "es", "er", "s")


def symptoms_of(book: Book, family: str) -> tuple[Symptom, ...]:
    """The symptoms of a family, then those of every tool; of a family without any those of its kin.

    Args:
        book: has them, and the families.
        family: its id; empty for those of every tool alone.
    """
    found = symptoms(book).values()
    every = tuple(one for one in found if not one.families)
    for name in _kin(book, family):
        own = tuple(one for one in found if name in one.families)
        if own:
            return own + every
    return every


def _kin(book: Book, family: str) -> Iterator[str]:
    """A family, those that it is like, and its kind."""

    def like(name: str) -> str:
        known = book.families.get(name)
        return known.like if known is not None else ""

    yield from (one for one in (family, *ancestors(family, like), book.kind_of(family)) if one)


def troubles_of(book: Book, family: str) -> Mapping[str, tuple[Symptom, ...]]:
    """The troubles of a family by their title, each with its symptoms, in the order of the book."""
    return by_trouble(symptoms_of(book, family))


def by_trouble(found: Iterable[Symptom]) -> Mapping[str, tuple[Symptom, ...]]:
    """Symptoms by the trouble that they tell of."""
    troubles: dict[str, tuple[Symptom, ...]] = {}
    for one in found:
        troubles[one.title] = (*troubles.get(one.title, ()), one)
    return troubles


def told_of(text: str, found: Iterable[Symptom]) -> tuple[Symptom, ...]:
    """Those symptoms of which a text tells: all words of the trouble, or of how it is said too, stand in it.

    Args:
        text: what is wrong with a tool, in a person's words.
        found: the symptoms to choose from.

    Example:
        >>> [one.id for one in told_of("It chattered badly.", [Symptom("a", "Chatters"), Symptom("b", "Cuts large")])]
        ['a']
    """
    said = stems(text)
    return tuple(one for one in found if any(stems(name) <= said for name in (one.title, *one.synonyms)))


def meant_by(words: Iterable[str], found: Iterable[Symptom]) -> tuple[Symptom, ...]:
    """Those symptoms whose trouble has all of the words in its title, or in one of the ways it is said.

    Args:
        words: as typed.
        found: the symptoms to choose from.

    Example:
        >>> [one.id for one in meant_by(["tears", "the", "thread"], [Symptom("a", "Tears the thread")])]
        ['a']
    """
    wanted = stems(" ".join(words))
    if not wanted:
        return ()
    return tuple(one for one in found if any(wanted <= stems(name) for name in (one.title, *one.synonyms)))


def stems(text: str) -> frozenset[str]:
    """The words of a text that say something, each without its ending, so that ``chattering`` is ``chatters``.

    Example:
        >>> sorted(stems("It chatters at the corner"))
        ['chatt', 'corn']
    """
    return frozenset(_stem(word) for word in plain(text).split() if word not in SMALL)


def _stem(word: str) -> str:
    for ending in _ENDINGS:
        if len(word) - len(ending) >= 3 and word.endswith(ending):
            return _stem(word[: -len(ending)])
    return word
