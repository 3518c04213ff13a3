"""Forms of a word, as far as they are typed."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from library.book.word_forms import may_become

WORDS = ("chatters", "burns", "chips", "oversize", "tears", "wanders", "mouth", "edge", "gas")


@pytest.mark.parametrize(
    ("typed", "word"),
    [("chattering", "chatters"), ("burnt", "burns"), ("chipped", "chips"), ("oversized", "oversize"), ("mouthed", "mouth")],
)  # fmt: skip
def test_another_form_of_a_word_is_that_word(typed: str, word: str) -> None:
    assert may_become(typed, word)


@given(
    st.sampled_from(WORDS), st.sampled_from(["", "ing", "ed", "s", "t", "ters", "ping"]), st.integers(1, 12)
)
def test_whatever_is_a_form_was_one_as_far_as_it_was_typed(word: str, ending: str, length: int) -> None:
    typed = word.removesuffix("s") + ending
    assert not may_become(typed, word) or may_become(typed[:length], word)
