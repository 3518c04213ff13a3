"""Sentences that name a key: the reader's own one, whatever it is."""

from __future__ import annotations

import re
from collections.abc import Callable

Keys = Callable[[str], str]
"""Gives the key of an action by its id, as a person reads it."""

_NAMED = re.compile(r"\{([a-z-]+)\}")


def no_keys(action: str) -> str:
    """Stands in where there is no keyboard: the id of the action itself."""
    return action


def with_keys(sentence: str, keys: Keys) -> str:
    """The sentence with the key of each action in place of its id in braces.

    Example:
        >>> with_keys("{more} lists them.", {"more": "F6"}.__getitem__)
        'F6 lists them.'
    """
    return _NAMED.sub(lambda found: keys(found[1]), sentence)
