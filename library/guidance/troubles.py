"""Which symptoms belong to a family of tools, and which a person means by the words for a trouble."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from library.book.likeness import ancestors
from library.book.model import Book, Entry
from library.book.word_forms import (
    LEAST_BEGUN,
    LEAST_STEM,
    is_same,
    may_become,
    stem,
    stems,
    telling_words,
)
from library.guidance.model import Symptom, symptoms
from library.guidance.setups import is_named

_STOP = re.compile(r"[.,;:!?\n]")


def symptoms_of(book: Book, family: str, entry: Entry | None = None) -> tuple[Symptom, ...]:
    """The symptoms of a family, then those of every tool; of a family without any those of its kin.

    Args:
        book: has them, and the families.
        family: its id; empty for those of every tool alone.
        entry: of the tool, where it is known; what is seen on its like alone comes first, and on no other.
    """
    found = all_symptoms_of(book, family)
    own = tuple(one for one in found if one.when and is_named(entry, one.when))
    return own + tuple(one for one in found if not one.when)


def all_symptoms_of(book: Book, family: str) -> tuple[Symptom, ...]:
    """The same with those that are seen on some tools of the family alone."""
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


def troubles_of(book: Book, family: str, entry: Entry | None = None) -> Mapping[str, tuple[Symptom, ...]]:
    """The troubles of a family by their title, each with its symptoms, in the order of the book."""
    return by_trouble(symptoms_of(book, family, entry))


def by_trouble(found: Iterable[Symptom]) -> Mapping[str, tuple[Symptom, ...]]:
    """Symptoms by the trouble that they tell of."""
    troubles: dict[str, tuple[Symptom, ...]] = {}
    for one in found:
        troubles[one.title] = (*troubles.get(one.title, ()), one)
    return troubles


@dataclass(frozen=True)
class Recognised:
    """A trouble of which a text tells.

    Attributes:
        title: of the trouble.
        symptoms: of it.
        words: those of the text by which it was recognised, as they stand there.
    """

    title: str
    symptoms: tuple[Symptom, ...]
    words: tuple[str, ...]

    @property
    def is_named(self) -> bool:
        """Whether the words are those of the trouble itself, and not another way to say it."""
        return stems(self.title) <= stems(" ".join(self.words))


def recognised(text: str, found: Iterable[Symptom]) -> tuple[Recognised, ...]:
    """The troubles of which a text tells.

    All words of the trouble, or of how it is said too, stand in the text; where that finds none, a part of the text
    between two stops is how the name of one trouble alone begins.

    Args:
        text: what is wrong with a tool, in a person's words.
        found: the symptoms to choose from.

    Example:
        >>> tears = Symptom("a", "Tears the thread", synonyms=("rough thread",))
        >>> [(one.title, one.words) for one in recognised("Tears, in bronze", [tears, Symptom("b", "Cuts large")])]
        [('Tears the thread', ('tears',))]
    """
    troubles = by_trouble(found)
    said = telling_words(text)
    told = []
    for title, rows in troubles.items():
        names = dict.fromkeys(name for one in rows for name in (one.title, *one.synonyms))
        by = next((words for name in names if (words := _holding(said, name))), ())
        if by:
            told.append(Recognised(title, rows, by))
    if not told:
        parts = [words for part in _STOP.split(text) if (words := telling_words(part))]
        begun = ((words, [title for title in troubles if _begins(words, title)]) for words in parts)
        told = [Recognised(one[0], troubles[one[0]], words) for words, one in begun if len(one) == 1]
    return _named_first({one.title: one for one in told}.values())


def _named_first(told: Iterable[Recognised]) -> tuple[Recognised, ...]:
    """The troubles without those that were recognised only by words which are another one's own name."""
    found = tuple(told)
    named = {word for one in found if one.is_named for word in one.words}
    return tuple(one for one in found if one.is_named or not named.issuperset(one.words))


def told_of(text: str, found: Iterable[Symptom]) -> tuple[Symptom, ...]:
    """The symptoms of the troubles of which a text tells.

    Args:
        text: what is wrong with a tool, in a person's words.
        found: the symptoms to choose from.

    Example:
        >>> [one.id for one in told_of("It chattered badly.", [Symptom("a", "Chatters"), Symptom("b", "Cuts large")])]
        ['a']
    """
    return tuple(one for trouble in recognised(text, found) for one in trouble.symptoms)


def asked_for(text: str, found: Sequence[Symptom], called: str = "") -> tuple[Symptom, ...]:
    """The symptoms that a search is for, which names a tool too: those it tells of, else those that have all its words of trouble.

    Args:
        text: as searched for.
        found: the symptoms of the tool.
        called: all by which the tool is called; a word of that tells of no trouble by itself.

    Example:
        >>> burns = Symptom("a", "Burns the edge at the grinder")
        >>> [one.id for one in asked_for("burns reamer", [burns, Symptom("b", "Cuts large")])]
        ['a']
        >>> asked_for("taper pin", [Symptom("c", "Bell mouth", synonyms=("taper hole",))], "Taper reamer")
        ()
    """
    told = told_of(text, found)
    if told:
        return told
    known = {word for one in found for name in (one.title, *one.synonyms) for word in telling_words(name)}
    own = telling_words(called)
    words = [
        typed
        for typed in telling_words(text)
        if len(typed) >= LEAST_STEM
        and any(may_become(typed, word) for word in known)
        and not any(word.startswith(typed) for word in own)
    ]
    return meant_by(words, found)


def meant_by(words: Iterable[str], found: Iterable[Symptom]) -> tuple[Symptom, ...]:
    """Those symptoms whose trouble has all of the words in its title, or in one of the ways it is said.

    Those of a trouble that is called so, and no more, come first.

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

    def has_all(name: str) -> bool:
        return all(any(is_same(word, other) for other in stems(name)) for word in wanted)

    meant = [one for one in found if any(map(has_all, (one.title, *one.synonyms)))]
    return tuple(
        sorted(meant, key=lambda one: not (has_all(one.title) and len(stems(one.title)) == len(wanted)))
    )


def _holding(said: tuple[str, ...], name: str) -> tuple[str, ...]:
    """The words of a text that are those of a name, where all of them are there."""
    found = [next((word for word in said if is_same(stem(word), wanted)), "") for wanted in stems(name)]
    return tuple(word for word in said if word in found) if found and all(found) else ()


def _begins(said: tuple[str, ...], title: str) -> bool:
    """Whether a title begins with some words, of which the last may be its beginning alone."""
    own = " ".join(telling_words(title))
    text = " ".join(said)
    return len(text) >= LEAST_BEGUN and own.startswith(text)
