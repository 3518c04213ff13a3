"""The line of a reading says how many are wanted, before one is typed."""

from __future__ import annotations

import pytest

from library.book.model import Book, Family
from library.cards.model import Card, Tool
from tui.view.card_form import CardForm

BOOK = Book({}, {"reamer": Family("reamer", "Reamers", kind="reamer", surfaces=("land",))})


@pytest.mark.parametrize(
    ("flutes", "said"),
    [("8", "All 8 flutes, one for each, parted by commas"), ("", "One for each flute, parted by commas")],
)
def test_the_line_of_the_drop_after_grinding_says_how_many_readings_are_wanted(
    flutes: str, said: str
) -> None:
    form = CardForm(BOOK, Card(family="reamer", tool=Tool("R-1", size="16 mm", flutes=flutes)))
    form.go_to("after.drop")
    (row,) = (one for one in form.rows if one.way == "after.drop")
    assert said in row.hint
