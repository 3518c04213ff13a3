"""The words of the trade beside the quantities: each stands once, and names only what exists."""

from __future__ import annotations

from collections import Counter

import pytest

from geometry.quantities import QUANTITIES
from geometry.quantities.terms import TERMS, names_of, terms_with, words_found_by


def test_every_word_and_every_other_name_stands_once() -> None:
    names = Counter(name for term in TERMS for name in (term.word, *term.also))
    assert [name for name, times in names.items() if times > 1] == []
    assert all(name == name.casefold() for name in names)


def test_a_term_names_only_quantities_and_choices_that_there_are() -> None:
    assert {key for term in TERMS for key in term.keys} <= set(QUANTITIES)
    for term in TERMS:
        key, choice = term.choice
        assert key == "" or choice in QUANTITIES[key].choices, term.word


@pytest.mark.parametrize("part", ["heel", "edge", "face", "land", "rake"])
def test_the_parts_of_a_tooth_have_entries_of_their_own(part: str) -> None:
    assert terms_with([part])[0].word == part


# The other names are common practice, no source.
@pytest.mark.parametrize(
    ("other", "word"),
    [
        ("clearance", "relief"),
        ("backing off", "eccentric relief"),
        ("cam relief", "eccentric relief"),
        ("radial relief", "eccentric relief"),
        ("eccentric", "eccentric relief"),
        ("hook", "rake"),
        ("circular land", "margin"),
        ("indicator drop", "indicator drop"),
        ("throw", "throw"),
        ("drags", "rubs"),
    ],
)
def test_another_name_leads_to_the_term(other: str, word: str) -> None:
    assert terms_with(other.split())[0].word == word


def test_a_flat_relief_is_not_found_by_the_names_of_an_eccentric_one() -> None:
    assert "cam relief" in words_found_by({"relief_form": ("eccentric",)})
    assert "cam relief" not in words_found_by({"relief_form": ("flat",)})
    assert words_found_by({}) == ()
    assert names_of("pitch") == ()
