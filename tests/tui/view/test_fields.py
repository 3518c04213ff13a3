"""A field of choices takes the one that begins with what is typed, and never another one."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tui.view.text_form import Blank, TextForm

WORDS = ("", "shoulder", "land", "lip", "tooth rest height", "tooth", "turn")


def form(now: str = "shoulder") -> TextForm:
    return TextForm((Blank("one", "One", choices=WORDS), Blank("other", "Other")), {"one": now})


def typed(text: str, now: str = "shoulder") -> TextForm:
    made = form(now)
    for letter in text:
        made.type(letter)
    return made


@pytest.mark.parametrize("now", WORDS)
@pytest.mark.parametrize("word", WORDS[1:])
def test_a_whole_word_typed_letter_by_letter_is_the_word_that_is_taken(word: str, now: str) -> None:
    made = typed(word, now)
    assert made.chosen().startswith(word)
    assert made.strange == ""


@pytest.mark.parametrize(("text", "chosen"), [("lap", "land"), ("work", "shoulder"), ("lin", "lip"), ("tox", "tooth rest height")])  # fmt: skip
def test_letters_that_begin_no_word_change_nothing_and_are_told(text: str, chosen: str) -> None:
    made = typed(text)
    assert (made.chosen(), made.strange) == (chosen, text)
    made.type("l")
    assert (made.chosen(), made.strange) == (chosen, f"{text}l")


def test_the_same_letter_goes_through_the_words_that_begin_so() -> None:
    assert [typed("l" * count).chosen() for count in (1, 2, 3)] == ["land", "lip", "land"]


def test_backspace_takes_a_letter_back_and_another_line_begins_anew() -> None:
    made = typed("lap")
    made.edit("backspace")
    assert (made.chosen(), made.strange) == ("land", "")
    made.move(1)
    made.move(1)
    made.type("t")
    assert made.chosen() == "tooth rest height"


@given(st.text("landipotrweshu x", max_size=12))
def test_what_is_taken_begins_with_what_was_typed_or_the_letters_are_told(text: str) -> None:
    made = typed(text)
    begun = text.strip()
    repeated = len(set(begun)) == 1
    assert made.chosen().startswith(begun) or made.strange or repeated or made.chosen() == "shoulder"
