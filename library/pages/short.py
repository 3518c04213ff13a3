"""A caution cut to what it asks for, for a page on which there is no room for why."""

from __future__ import annotations

import re

_END = re.compile(r"(?<=[a-z)0-9][.!?])\s+(?=[A-Z])")


def first_sentence(text: str) -> str:
    """What a caution asks for, without why and by whom it was written.

    Example:
        >>> first_sentence("Keep the rest 1/8 in (3 mm) from the wheel. Federal law asks for it.")
        'Keep the rest 1/8 in (3 mm) from the wheel.'
    """
    return _END.split(" ".join(text.split()), maxsplit=1)[0]


def first_clause(sentence: str) -> str:
    """A sentence up to its first colon or semicolon; what follows only explains.

    Example:
        >>> first_clause("No gloves near the wheel: what is caught pulls the hand in.")
        'No gloves near the wheel.'
    """
    return f"{re.split('[:;] ', sentence.rstrip('.'), maxsplit=1)[0]}."
