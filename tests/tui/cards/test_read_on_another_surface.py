"""Land width and drop that were typed for one surface never count as those of another without a word."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.editing import edited
from library.cards.model import Card, Tool
from library.setup_sheet.sheets import setup_sheet
from tests.tui.cards.conftest import AtTheYard
from tui.view.card_form import CardForm

LAND, DROP, SURFACE = "received.land_width", "received.drop", "wanted.surface"
COUNTS = "typed while the card ground the land; it counts as that of the bevel lead now."


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def put(form: CardForm, way: str, text: str) -> None:
    form.go_to(way)
    form.put(text)


def reamer(book: Book) -> CardForm:
    """A reamer whose land was read, and then the lead of it chosen as what is ground."""
    card = Card(family="reamer", tool=Tool("R-12-H", size="12.7 mm", flutes="6"))
    form = CardForm(book, edited(card, SURFACE, "land"))
    put(form, LAND, "2 mm")
    put(form, "received.land_measured_as", "chord")
    put(form, DROP, "6x 0.15 mm")
    assert watched(form) == {}
    put(form, SURFACE, "bevel")
    return form


def watched(form: CardForm) -> dict[str, str]:
    """What is on watch because of the surface, by its line."""
    return {one.way: one.text for one in form.faults if "typed while the card ground" in one.text}


def test_readings_of_another_surface_are_watched_at_their_lines_and_at_the_end(book: Book) -> None:
    found = watched(reamer(book))
    assert found.keys() == {LAND, DROP, "result"}
    assert all(COUNTS in found[way] for way in (LAND, DROP))
    assert found["result"].startswith(
        "On Received the land width and the indicator drop were typed while the card ground the land, and count as those "
        "of the bevel lead now"
    )


def test_the_sheet_says_beside_a_relief_of_another_surface_that_it_was_read_there(book: Book) -> None:
    form = reamer(book)
    said = " ".join(setup_sheet(form.job).split())
    assert said.count("typed while the card ground the land") == 1
    put(form, SURFACE, "land")
    assert "typed while" not in setup_sheet(form.job)


def test_a_reading_typed_again_is_of_the_surface_of_now(book: Book) -> None:
    form = reamer(book)
    put(form, DROP, "6x 0.2 mm")
    found = watched(form)
    assert found.keys() == {LAND, "result"}
    assert "the land width was typed while" in found["result"]


def test_enter_on_its_line_says_that_it_is_right_so_and_passing_it_by_an_arrow_does_not(book: Book) -> None:
    form = reamer(book)
    form.go_to(LAND)
    form.move(1)
    form.move(-1)
    assert LAND in watched(form)
    form.go_on()
    assert watched(form).keys() == {DROP, "result"}
    assert form.row.way == DROP
    form.go_on()
    assert watched(form) == {}
    # From now on it is of the lead, so that the land is another surface.
    put(form, SURFACE, "land")
    assert "ground the bevel lead; it counts as that of the land now" in watched(form)[DROP]


def test_the_surface_chosen_back_leaves_nothing_to_be_said(book: Book) -> None:
    form = reamer(book)
    put(form, SURFACE, "land")
    assert watched(form) == {}


def test_what_was_read_before_the_surface_changed_is_told_of_no_record(book: Book) -> None:
    form = reamer(book)
    form.take(form.book, replace(form.card, status="done"))
    assert watched(form) == {}


def test_a_record_says_as_of_which_surface_they_count_on_its_sheet_and_at_their_lines(book: Book) -> None:
    form = reamer(book)
    sentence = "Land width and indicator drop count as those of the bevel lead, chosen on this card"
    # The watch of the draft says more, and says it alone.
    assert sentence not in " ".join(setup_sheet(form.job).split())
    record = CardForm(book, replace(form.card, status="done"))
    for kind in ("text", "markdown", "html"):
        assert sentence in " ".join(setup_sheet(record.job, kind).split())
    assert "typed while" not in setup_sheet(record.job)
    record.go_to(DROP)
    assert record.row.hint.startswith("Counted as that of the bevel lead. ")
    # Where nobody chose the surface, it is that of the tool.
    assert "chosen on this card" not in setup_sheet(CardForm(book, edited(form.card, SURFACE, "")).job)


@pytest.mark.parametrize(("surface", "title"), [("land", "land"), ("bevel", "bevel lead")])
def test_the_lines_of_land_width_and_drop_name_the_surface_that_they_count_for(
    book: Book, surface: str, title: str
) -> None:
    form = reamer(book)
    put(form, SURFACE, surface)
    for way in (LAND, DROP):
        form.go_to(way)
        assert form.row.hint.startswith(f"On the {title}. ")


async def test_at_the_yard_it_stands_until_it_is_seen_to_also_on_a_card_that_was_left(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.type("hand reamer 1/2 in h7")
        await hands.press("ctrl+f")
        form = hands.app.screen.form
        for way, text in ((SURFACE, "land"), (LAND, "2"), (DROP, "6x .15"), (SURFACE, "bevel")):
            form.go_to(way)
            hands.app.screen.put(text)
        form.go_to(LAND)
        shown = " ".join((await hands.press("left")).split())
        assert f"WATCH: {COUNTS}" in shown
        assert "go on from this line with Enter." in shown
        assert "End!" in shown
        await hands.press("f9")
        hands.app.session.left_at.clear()
        await hands.press("f3", "enter")
        form = hands.app.screen.form
        assert watched(form).keys() == {LAND, DROP, "result"}
        form.go_to(DROP)
        await hands.press("enter")
        assert watched(form).keys() == {LAND, "result"}
        # Left out, no calculation stands in the way of the record.
        for step in form.job.steps:
            form.card = edited(form.card, f"settings.{step.sheet.name}", "skipped")
        form.take(form.book, form.card)
        hands.app.screen.do_finish_card()
        await hands.settle()
        shown = " ".join((await hands.press("down")).split())
        assert "Close card" in shown
        assert "On Received stands a reading that was typed for another surface." in shown
        assert "nothing more is typed on it." in shown
