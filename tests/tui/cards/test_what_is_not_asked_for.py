"""Lines of a card that are there and want nothing, because nothing of this job follows from them."""

from __future__ import annotations

import pytest

from library.book.model import Book
from tests.begun_cards import begun
from tui.view.card_form import CardForm


@pytest.fixture
def form(yard_book: Book) -> CardForm:
    """A hand reamer, whose job grinds the land."""
    return CardForm(yard_book, begun(yard_book, "reamer-hand-plain-steel"))


def wanted_here(form: CardForm) -> set[str]:
    return {row.way for row in form.rows if row.wants}


def test_wear_that_comes_off_on_another_surface_is_asked_for_only_where_that_is_ground(
    form: CardForm,
) -> None:
    form.go_to("received.corner_wear")
    assert form.row.way == "received.corner_wear"
    assert "received.corner_wear" not in wanted_here(form)
    form.put("0.2 mm")
    assert any("ground off on the bevel lead" in one.text for one in form.faults_at(form.row))
    form.clear()
    form.put("")
    assert "received.corner_wear" not in wanted_here(form)
    form.go_to("wanted.surface")
    form.put("bevel")
    form.go_to("received.corner_wear")
    assert "received.corner_wear" in wanted_here(form)


def test_the_relief_of_a_surface_that_was_chosen_and_left_again_is_not_asked_for(form: CardForm) -> None:
    form.go_to("wanted.surface")
    before = wanted_here(form)
    form.put("bevel")
    assert "wanted.bevel_relief_angle" in wanted_here(form)
    form.put("land")
    assert wanted_here(form) == before


def test_the_relief_of_another_surface_that_a_person_began_to_want_is_asked_for(form: CardForm) -> None:
    form.open("wanted", "bevel_relief_angle")
    form.put("7 deg")
    assert form.row.text == "7 deg"
    assert "wanted.bevel_relief_angle" not in wanted_here(form)
