"""The order in which words are offered for a quantity, as far as other values say which of them are meant."""

from __future__ import annotations

from collections.abc import Container

from geometry.thread.nut_limits import METRIC, OF_2A
from geometry.thread.tap_limits import marks_first

_UNIFIED = tuple(sorted(OF_2A, key=["2B", "3B", "1B"].index))
"""Classes of unified threads, the commonest first."""


def words_first(key: str, words: tuple[str, ...], known: Container[str]) -> tuple[str, ...]:
    """The words for a quantity, those first that fit the thread that is known.

    Args:
        key: the quantity.
        words: that it takes.
        known: the quantities that have a value.

    Returns:
        The same words; in their own order where the thread is not known or the quantity is of no thread.

    Example:
        >>> words_first("tap_limit", ("ISO1-4H", "H1", "H2"), {"threads_per_inch"})
        ('H1', 'H2', 'ISO1-4H')
    """
    by_inch = "threads_per_inch" in known
    if not by_inch and "pitch" not in known:
        return words
    first: tuple[str, ...] = ()
    if key == "tap_limit":
        first = marks_first(by_inch=by_inch)
    elif key == "thread_class":
        first = _UNIFIED if by_inch else METRIC
    own = tuple(word for word in first if word in words)
    return (*own, *(word for word in words if word not in own))
