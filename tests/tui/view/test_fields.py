"""A field of choices takes the one that begins with what is typed, else one that has it in it, and never another."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from geometry.quantities import quantity
from tui.view.choice_words import told
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
    made.move(-1)
    made.type("t")
    assert made.chosen() == "tooth rest height"


@given(st.text("landipotrweshu x", max_size=12))
def test_what_is_taken_has_what_was_typed_or_the_letters_are_told(text: str) -> None:
    made = typed(text)
    begun = text.strip()
    repeated = len(set(begun)) == 1
    assert f" {begun}" in f" {made.chosen()}" or made.strange or repeated or made.chosen() == "shoulder"


SHAPES = ("", *quantity("wheel_shape").choices)


def wheel(text: str) -> TextForm:
    made = TextForm((Blank("shape", "Shape", choices=SHAPES),), {"shape": ""})
    for letter in text:
        made.type(letter)
    return made


@pytest.mark.parametrize(
    ("text", "chosen"),
    [
        ("flaring", "type-11-flaring-cup"),
        ("straight cup", "type-6-straight-cup"),
        ("Dish", "type-12-dish"),
        ("type 11", "type-11-flaring-cup"),
    ],
)
def test_a_part_of_a_choices_words_takes_it(text: str, chosen: str) -> None:
    made = wheel(text)
    assert (made.chosen(), made.strange, made.told_of_choices) == (chosen, "", "")


def test_a_word_that_several_choices_have_is_answered_with_these() -> None:
    made = wheel("cup")
    assert made.chosen() == "type-6-straight-cup"
    assert made.told_of_choices == (
        "Which 'cup'? There are: type-6-straight-cup, type-11-flaring-cup. Left and Right go through them."
    )


def test_what_is_no_choice_is_answered_with_all_of_them() -> None:
    told = wheel("bowl").told_of_choices
    assert all(one in told for one in SHAPES)
    assert wheel("bowl").chosen() == ""


def test_where_there_is_only_one_choice_it_is_told_as_one() -> None:
    assert told(["", "left out"], "xyz") == (
        "No choice here is 'xyz'; what stands there stays. There is only 'left out': Left and Right change it."
    )
