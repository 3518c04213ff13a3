"""The words that a search looks at: names first, then other names, then what is told of trouble and in notes.

A text is kept as three parts with a bar between them, each name between semicolons. Neither sign, nor a hyphen or a
comma, can be in the words themselves, so that ``spiral-point`` and ``spiral point`` are the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from typing import NamedTuple

BAR, BETWEEN = "|", ";"

LONGEST_NOTE = 4000
"""Characters of notes that are searched; a book has a few hundred."""

_EVEN = str.maketrans(
    dict.fromkeys("-\u2010\u2011\u2012\u2013\u2014\u2212_,;:|()[]{}!?\u00b0\n\t\r", " ")
    | {"\u00d7": "x", "\u2019": "'", "\u2032": "'", "\u2033": '"', "\u201c": '"', "\u201d": '"'}
)
_DOT = re.compile(r"\.(?=\s|$)")


class Parts(NamedTuple):
    """What a search looks at in one table of the book.

    Attributes:
        head: its title and its id.
        names: what else it is called.
        notes: what is told of it.
    """

    head: str
    names: str = ""
    notes: str = ""


def plain(text: str) -> str:
    """A text as it is searched: small letters, one blank between words, no signs that part them.

    Example:
        >>> plain("Spiral-point tap,  M12 (1/2 in)")
        'spiral point tap m12 1/2 in'
    """
    return " ".join(_DOT.sub(" ", text.casefold().translate(_EVEN)).split())


def words_of(text: str) -> tuple[str, ...]:
    """The words to be found; those that a hyphen joins belong together.

    Example:
        >>> words_of("Spiral-point  tap - ")
        ('spiral point', 'tap')
    """
    return tuple(even for word in text.split() if (even := plain(word)))


def search_text(head: Iterable[str], names: Iterable[str] = (), notes: str = "") -> str:
    """What a search looks at, as one line.

    Args:
        head: the title, the id and what else is its own name.
        names: what else it is called.
        notes: what is told of it.

    Example:
        >>> search_text(["Gun tap", "gun-tap"], ["Chip driver"], "It squeals.")
        ' ; gun tap ; gun tap ; | ; chip driver ; | it squeals '
    """
    return f"{_listed(head)}{BAR}{_listed(names)}{BAR} {plain(notes[:LONGEST_NOTE])} "


def _listed(names: Iterable[str]) -> str:
    found = [even for name in names if (even := plain(name))]
    return f" {BETWEEN} {f' {BETWEEN} '.join(found)} {BETWEEN} " if found else " "


def parts_of(text: str) -> Parts:
    """The parts of such a line; a line that has none is a head alone.

    Example:
        >>> parts_of("gun tap").head
        ' gun tap '
    """
    head, bar, rest = text.partition(BAR)
    names, _, notes = rest.partition(BAR)
    return Parts(head, names, notes) if bar else Parts(f" {plain(text)} ")


class Shared(NamedTuple):
    """What the entries of a family, or of a work material, are found by together.

    Attributes:
        families: the line of each family, by its id.
        materials: the line of each work material, by its id.
        troubles: what the troubles of each family are called, by its id.
    """

    families: Mapping[str, str] = {}
    materials: Mapping[str, str] = {}
    troubles: Mapping[str, str] = {}


class SearchWords:
    """What a search looks at, row by row; what rows have in common is there once.

    Args:
        lines: one for each row.
        pairs: the ids of family and work material of each row.
        shared: what their names stand for.

    Attributes:
        heads: of each row.
        names: of each row.
        notes: of each row.
        groups: the number of the pair of each row.
        families: the parts of the family of each different pair.
        materials: the parts of the work material of each different pair.
        troubles: of each different pair what the troubles of the family are called, its own in the head.
    """

    def __init__(self, lines: Sequence[str], pairs: Sequence[tuple[str, str]], shared: Shared) -> None:
        parts = [parts_of(line) for line in lines]
        self.heads = [one.head for one in parts]
        self.names = [one.names for one in parts]
        self.notes = [one.notes for one in parts]
        numbers = {pair: number for number, pair in enumerate(dict.fromkeys(pairs))}
        self.groups = [numbers[pair] for pair in pairs]
        self.families = [parts_of(shared.families.get(family, "")) for family, _ in numbers]
        self.materials = [parts_of(shared.materials.get(material, "")) for _, material in numbers]
        self.troubles = [parts_of(shared.troubles.get(family, BAR)) for family, _ in numbers]

    def names_of(self, row: int) -> tuple[str, ...]:
        """What one row, its family and its work material are called."""
        group = self.groups[row]
        common = (self.families[group], self.materials[group])
        return self.heads[row], self.names[row], *(text for one in common for text in one[:2])

    def holding(self, word: str, among: Iterable[int]) -> list[int]:
        """Those of the rows that hold a word or a part of one."""
        heads, names, notes, groups = self.heads, self.names, self.notes, self.groups
        common = [any(word in part for part in (*family, *material))
                  for family, material in zip(self.families, self.materials, strict=True)]  # fmt: skip
        return [
            number
            for number in among
            if common[groups[number]]
            or word in heads[number]
            or word in names[number]
            or word in notes[number]
        ]
