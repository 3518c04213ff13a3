"""Which words come first where a thread is known."""

from __future__ import annotations

import pytest

from geometry.quantities import quantity
from library.calc.words_first import words_first


@pytest.mark.parametrize(
    ("key", "known", "first"),
    [
        ("tap_limit", {"threads_per_inch"}, "H1"),
        ("tap_limit", {"pitch"}, "ISO1-4H"),
        ("thread_class", {"threads_per_inch"}, "2B"),
        ("thread_class", {"pitch"}, "6H"),
        ("thread_class", set(), "6H"),
        ("hand", {"threads_per_inch"}, "right"),
    ],
)
def test_the_words_of_the_threads_own_system_come_first_and_none_is_lost(
    key: str, known: set[str], first: str
) -> None:
    words = quantity(key).choices
    found = words_first(key, words, known)
    assert found[0] == first
    assert sorted(found) == sorted(words)
