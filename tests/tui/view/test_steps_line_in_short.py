"""The line of the steps says of the worst what there is room for, and never its sign alone."""

from __future__ import annotations

import pytest

from library.book.opening import open_book
from library.cards.model import Card, Setting, Tool
from tui.view.card_form import CardForm
from tui.view.card_steps_line import steps_line
from tui.view.lines import text_of


@pytest.mark.parametrize("width", [76, 80, 120])
def test_a_sentence_that_begins_with_the_name_of_its_line_is_cut_and_not_left_out(width: int) -> None:
    speed = {"wheel-speed": Setting({"rotational_speed": "1e6 rpm"})}
    card = Card(family="tap", tool=Tool("T-1", thread="M12", flutes="4"), settings=speed)
    form = CardForm(open_book(None), card)
    form.go_to("settings.wheel-speed.rotational_speed")
    said = text_of(steps_line(form, width))
    assert "STOP  Rotational speed is" in said


def test_what_cannot_be_is_told_with_the_name_of_its_line() -> None:
    card = Card(family="tap", tool=Tool("T-1", thread="M12", flutes="4"), received={"diameter": ("0 mm",)})
    form = CardForm(open_book(None), card)
    form.go_to("received.diameter")
    said = text_of(steps_line(form, 80))
    assert "STOP  Diameter is 0.000 mm" in said
    assert "It is" not in said
