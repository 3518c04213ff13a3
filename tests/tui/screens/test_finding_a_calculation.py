"""The list of calculations is searched as the book is: every word, wherever a calculation is called so."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.book.model import Book
from library.search.of_calculations import other_words
from tui.screens.calculations import CalculationsScreen
from tui.session import Session
from tui.view.text_line import TextLine


@pytest.fixture
def listed(book: Book) -> CalculationsScreen:
    return CalculationsScreen(
        Session(book=book), book.entries["sink-steel"], "setting-height", lambda sheet: None
    )


@pytest.mark.parametrize(
    "words", ["cup height", "wheel head height", "tooth rests", "the height of a cup", "finger rest"]
)
def test_a_calculation_is_found_by_what_it_asks_for_and_answers(
    listed: CalculationsScreen, words: str
) -> None:
    listed.find = TextLine.ending(words)
    assert "setting-height" in [one.id for one in listed.found()]
    assert len(listed.found()) < len(listed.choices())


def test_those_come_first_that_are_called_so(listed: CalculationsScreen) -> None:
    listed.find = TextLine.ending("height")
    assert listed.found()[0].id == "setting-height"


def test_where_nothing_is_found_the_word_in_the_way_is_named(listed: CalculationsScreen) -> None:
    listed.find = TextLine.ending("setting height zirconium")
    assert not listed.found()
    assert "Without 'zirconium' there is 1" in listed.nothing()


def test_the_other_words_are_titles_synonyms_and_choices_in_shop_words() -> None:
    words = other_words(calculation("setting-height"))
    assert {"Wheel head height", "finger rest", "type 6 straight cup"} <= {
        one for one in ("Wheel head height", "finger rest", "type 6 straight cup") if one in words
    }
    assert "_" not in words
