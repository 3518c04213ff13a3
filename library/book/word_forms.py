"""Forms of a word: ``chattering`` and ``chatters`` are one, and so is a word that is not yet typed to its end."""

from __future__ import annotations

from functools import cache, lru_cache

from library.book.search_text import plain

SMALL = frozenset(["a", "an", "and", "at", "in", "is", "it", "of", "on", "the", "to", "up", "with"])
"""Words that say nothing of a trouble."""

SAYS_NOTHING = SMALL | {
    *("for", "that", "which", "my"),
    *("sharpen", "sharpening", "resharpen", "regrind", "regrinding", "reground"),
}
"""Words between those that are sought, and those for what is done with every tool."""

LEAST_STEM = 3
"""Letters of a word that are left without its ending."""

LEAST_BEGUN = 4
"""Letters from which the beginning of a word or of a name is taken for it."""

ENDING = 2
"""Letters that may be wanting at the end of a word."""

_ENDINGS = ("ing", "ed", "es", "er", "s")
_BEGUN_ENDINGS = frozenset(["", "s", "e", "es", "ed", "er", "ers", "i", "in", "ing", "d", "t"])
"""Endings as far as they may be typed; the beginning of each is one of them."""


# A card is worked out at every key, and looks for its trouble among the same names each time.
@lru_cache(maxsize=4096)
def telling_words(text: str) -> tuple[str, ...]:
    """The words of a text that say something.

    Example:
        >>> telling_words("It chatters at the corner.")
        ('chatters', 'corner')
    """
    return tuple(word for word in plain(text).split() if word not in SMALL)


def stem(word: str) -> str:
    """A word without its endings.

    Example:
        >>> stem("chattering"), stem("gas")
        ('chatt', 'gas')
    """
    return _strips(word)[-1]


@lru_cache(maxsize=4096)
def stems(text: str) -> frozenset[str]:
    """The words of a text that say something, each without its ending, so that ``chattering`` is ``chatters``.

    Example:
        >>> sorted(stems("It chatters at the corner"))
        ['chatt', 'corn']
    """
    return frozenset(map(stem, telling_words(text)))


def is_same(word: str, other: str) -> bool:
    """Whether a word without its ending, as somebody typed it, is the same as another: a letter or two are no matter.

    Example:
        >>> is_same("oversiz", "oversize"), is_same("chipp", "chip"), is_same("over", "oversize")
        (True, True, False)
    """
    begins = len(word) >= LEAST_BEGUN and other.startswith(word) and len(other) - len(word) <= ENDING
    goes_on = len(other) >= LEAST_STEM and word.startswith(other) and len(word) - len(other) == 1
    return word == other or begins or goes_on


def may_become(typed: str, word: str) -> bool:
    """Whether a word is, or goes on to be, a form of another; what is typed before it may be so too.

    Args:
        typed: in small letters, as far as it is typed.
        word: the other one.

    Example:
        >>> may_become("chatteri", "chatters"), may_become("chipped", "chips"), may_become("over", "oversize")
        (True, True, True)
        >>> may_become("burnish", "burns"), may_become("grindstone", "grinder")
        (False, False)
    """
    if typed[:1] != word[:1]:
        return False
    return word.startswith(typed) or any(_goes_on(typed, begun) for begun in _strips(word))


def _goes_on(typed: str, begun: str) -> bool:
    """Whether a word is another with an ending, or with its last letter doubled and one."""
    if not typed.startswith(begun):
        return False
    rest = typed[len(begun) :]
    return rest in _BEGUN_ENDINGS or (rest[0] == begun[-1] and rest[1:] in _BEGUN_ENDINGS)


@cache
def _strips(word: str) -> tuple[str, ...]:
    """A word, then what is left of it without one ending after the other."""
    found = [word]
    while True:
        ending = next((one for one in _ENDINGS if _ends(found[-1], one)), "")
        if not ending:
            return tuple(found)
        found.append(found[-1][: -len(ending)])


def _ends(word: str, ending: str) -> bool:
    return len(word) - len(ending) >= LEAST_STEM and word.endswith(ending)
