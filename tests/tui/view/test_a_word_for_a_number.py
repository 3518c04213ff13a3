"""A word typed where a number belongs, by somebody who meant to search, destroys no number."""

from __future__ import annotations

import pytest

from geometry.calculations import calculation
from library.calc.answer import answer
from tests.tui.conftest import Program
from tui.view.form import Form


def typed(form: Form, text: str) -> None:
    for letter in text:
        form.type(letter)
        form.take(answer(form.sheet, form.given()))


def test_a_word_over_a_number_is_taken_away_and_the_number_is_there_again() -> None:
    form = Form(calculation("lead-over-land"), None, {})
    form.take(answer(form.sheet, {}))
    form.focus = "diameter"
    typed(form, "12 mm")
    assert not form.is_word
    form.leave()
    typed(form, "chamfer")
    assert (form.in_hand.text, form.is_word, form.before_word) == ("chamfer", True, "12 mm")
    form.clear()
    assert form.in_hand.text == "12 mm"
    form.clear()
    assert form.in_hand.text == ""


def test_a_number_typed_over_a_number_is_emptied_as_ever() -> None:
    form = Form(calculation("lead-over-land"), None, {})
    form.take(answer(form.sheet, {}))
    form.focus = "diameter"
    typed(form, "12 mm")
    form.leave()
    typed(form, "13 mm")
    form.clear()
    assert form.in_hand.text == ""


@pytest.mark.depth
async def test_the_sentence_says_how_it_is_taken_back_and_where_calculations_are_listed(
    program: Program,
) -> None:
    async with program() as hands:
        shown = await hands.do("bro", "<f2>", "5", "<down>", "<up>", "chamfer")
        told = " ".join(shown.split())
        assert "Ctrl+U brings 5 back" in told
        assert "F2 lists the calculations" in told
        assert "chamfer" not in await hands.do("<ctrl+u>")
