"""How much a source carries: one letter, the strongest first, and a sign where it speaks of something else.

A letter says what kind of text it is, and nothing of whether it is right: a standard may be old, and one maker may know
best. What a person measured on a tool of this kind in his own shop is worth more to him than most of them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from library.book.model import Citation, Source

GRADES: Mapping[str, str] = {
    "S": "standard or law",
    "M": "military or national manual",
    "B": "book",
    "b": "book before 1950",
    "T": "one maker",
    "W": "web page",
    "P": "practice of this shop",
    "C": "common practice",
    "-": "document without a grade",
    "?": "guess",
}
"""What each letter stands for, the strongest first."""

IN_SHORT: Mapping[str, str] = {
    "S": "standard",
    "M": "manual",
    "B": "book",
    "b": "old book",
    "T": "maker",
    "W": "web",
    "P": "this shop",
    "C": "common",
    "-": "no grade",
    "?": "guess",
}
"""The same in as few words as stand in one line beside the values."""

DOCUMENTS = "S M B b T W"
"""The letters that a document may have."""

GUESS, LAW = "?", "S"
ELSEWHERE, OF_ANOTHER, OTHER = "x", "of another tool, size or material", "other tool"
"""Stands behind the letter of a source that speaks of something else, and what it means."""

_OF_A_WORD = {"shop": "P", "common practice": "C", "from memory": GUESS, "missing": GUESS}
_UNGRADED = "-"


def grade(citation: Citation, sources: Mapping[str, Source]) -> str:
    """The letter of a source, with the sign behind it where it speaks of something else.

    Args:
        citation: where a value or a text came from.
        sources: the documents of the book by id.

    Example:
        >>> manual = Source("a", "A manual", grade="M")
        >>> grade(Citation("published", "a", speaks_of="milling cutters"), {"a": manual})
        'Mx'
        >>> grade(Citation("from memory"), {}), grade(Citation("published", "by word of mouth"), {})
        ('?', '-')
    """
    letter = _OF_A_WORD.get(citation.label, "")
    if not letter:
        source = sources.get(citation.document)
        letter = (source.grade if source is not None else "") or _UNGRADED
    return letter + (ELSEWHERE if citation.speaks_of else "")


def explained(grades: Iterable[str]) -> str:
    """What the letters stand for that are used, the strongest first, in one line.

    Example:
        >>> explained(["?", "Mx"])
        'M military or national manual, ? guess, x of another tool, size or material'
    """
    used = set("".join(grades))
    told = [f"{letter} {words}" for letter, words in GRADES.items() if letter in used]
    return ", ".join([*told, *([f"{ELSEWHERE} {OF_ANOTHER}"] if ELSEWHERE in used else [])])
