"""Words that were typed with a slip: ``tpa`` is near ``tap``."""

from __future__ import annotations

from collections.abc import Collection
from functools import lru_cache

from library.book.search_text import SearchWords

LEAST = 3
"""Letters of a word that may be a slip; a shorter one is near too many others."""

NEAR = 0.8
"""How much of two words has to be alike, from 0 to 1."""


# With each key the same book is asked as before.
@lru_cache(maxsize=1)
def vocabulary(searched: SearchWords) -> frozenset[str]:
    """The words by which tools, their families and work materials are called."""
    common = (part for one in (*searched.families, *searched.materials) for part in one[:2])
    own = (text for texts in (searched.heads, searched.names) for text in texts)
    return frozenset(word for text in (*own, *common) for word in text.split() if word.isalpha())


def meant_by(word: str, known: Collection[str]) -> str:
    """The word that was meant, where one is near that begins alike and is as long, but for a letter; empty where none is, or where the word itself is known.

    Args:
        word: as typed.
        known: words in small letters.

    Example:
        >>> meant_by("Reemer", ["reamer", "tap"]), meant_by("tpa", ["reamer", "tap"])
        ('reamer', 'tap')
        >>> meant_by("tap", ["tap", "tape"]), meant_by("gear", ["grey"])
        ('', '')
    """
    from difflib import get_close_matches

    small = word.casefold()
    if len(small) < LEAST or not small.isalpha() or small in known:
        return ""
    letters = sorted(small)
    alike = [one for one in known if one[0] == small[0] and abs(len(one) - len(small)) <= 1]
    same = sorted(one for one in alike if sorted(one) == letters)
    return next(iter([*same, *get_close_matches(small, sorted(alike), n=1, cutoff=NEAR)]), "")
