"""How near a word is to how a tool, its family or its work material is called."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from library.book.search_text import BETWEEN, Parts

ABSENT = 9
"""How far away a word is that is not there; 0 is a whole word in a title."""


IN_NOTES = 5
"""How far away a whole word is that stands only in what is told of a tool."""


OTHER_NAME, PART_OF_NAME = 2, 4
"""How far away a whole word is in what else a thing is called, and a part of such a word."""


def singular(word: str) -> str:
    """A word without the s that it ends in.

    Example:
        >>> singular("burns"), singular("brass"), singular("gas")
        ('burn', 'brass', 'gas')
    """
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def distance(word: str, whole: str, begun: str, rest: str, head: str, names: str, notes: str) -> int:
    """How far away a word is in one table of the book.

    Args:
        word: as typed.
        whole: the word with blanks round it.
        begun: the word with a blank before it.
        rest: the word without a last s.
        head: title and id.
        names: what else it is called.
        notes: what is told of it.
    """
    one = f" {rest} " if rest is not word else whole
    if begun in head or one in head:
        return 0 if whole in head or one in head else 1
    if whole in names or one in names:
        return OTHER_NAME
    if word in head or word in names:
        return 3 if word in head else PART_OF_NAME
    if f" {rest}" in notes:  # Inside a word of a sentence it means nothing, as alu in value.
        return IN_NOTES if whole in notes else 6
    return ABSENT


def named(words: Sequence[str], those: Sequence[Parts]) -> str:
    """The longest run of words by which a family or a material is called in full, as drill in drill brass; else all."""
    for count in range(len(words), 0, -1):
        for at in range(len(words) - count + 1):
            run = " ".join(words[at : at + count])
            if any(called(run, one) == 0 for one in those):
                return run
    return " ".join(words)


def called(phrase: str, one: Parts) -> int:
    """Whether a family or a material is called by a phrase: 0 in full, 1 where a name of it begins so, else 2."""
    names = one.head + one.names
    if any(f"{BETWEEN} {one} {BETWEEN}" in names for one in (phrase, singular(phrase))):
        return 0
    return 1 if f"{BETWEEN} {phrase}" in names else 2


def of_material(near: int, word: str, material: Parts, words: Collection[str]) -> int:
    """How far away a word is in what a work material is called: farther where it is but one word of a name that nobody typed.

    Args:
        near: how far away it is as a word.
        word: as typed.
        material: with its names.
        words: all that are typed.

    Example:
        >>> plain = Parts(" ; plain steel ; ", " ; machine steel ; mild steel ; ")
        >>> of_material(2, "machine", plain, ["machine", "tap"]), of_material(2, "mild", plain, ["mild", "steel"])
        (4, 2)
    """
    if near != OTHER_NAME:
        return near
    said = {part for one in words for part in one.split()} | {singular(one) for one in words}
    names = (name.split() for name in material.names.split(BETWEEN) if f" {word} " in name)
    return OTHER_NAME if any(said.issuperset(name) for name in names) else PART_OF_NAME
