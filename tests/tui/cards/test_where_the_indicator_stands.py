"""A card says where the indicator stands wherever a drop is typed or read, and asks for a dish as the book has it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Card, Tool
from library.cards.starting import from_entry
from library.pages.readings_on_the_way import OnTheWay
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.card_set_table import read_lines
from tui.view.lines import text_of, width_of


@pytest.fixture(scope="module")
def book() -> Book:
    return open_book(None)


def shown(book: Book, card: Card, way: str) -> str:
    form = CardForm(book, card)
    form.go_to(way)
    return " ".join(" ".join(map(text_of, CardPage(form).draw(80, 24))).split())


@pytest.mark.parametrize("way", ["received.drop", "after.drop"])
@pytest.mark.parametrize(
    ("family", "entry", "points"),
    [
        ("countersink", "countersink-multi-flute-82-plain-steel", "at the axis"),
        ("end-mill", "end-mill-plain-steel", "along the axis"),
        ("counterbore", "counterbore-plain-steel", "along the axis"),
        ("twist-drill", "twist-drill-jobber-plain-steel", "along the axis"),
    ],
)
def test_the_line_of_a_drop_says_where_the_indicator_stands(
    book: Book, family: str, entry: str, points: str, way: str
) -> None:
    card = Card(family=family, entry=entry, tool=Tool("T-1", size="20 mm"))
    assert f"Indicator {points}, zero at the edge" in shown(book, card, way)


@pytest.mark.parametrize("width", [60, 80, 120])
def test_where_it_points_is_not_cut_off_by_what_the_drop_may_be(width: int) -> None:
    rows = (("drop", "in", ("0.0000", "0.0315")),)
    judged = "0.0305 in to 0.0325 in (30.5 thou to 32.5 thou)"
    for points in ("at the axis", "square to the surface", "along the axis"):
        lines = read_lines(OnTheWay(points, ("edge", "heel"), rows, judged, ("31 thou",)), width)
        assert f"indicator {points}" in text_of(lines[0])
        assert judged in " ".join(" ".join(map(text_of, lines)).split())
        assert all(width_of(one) <= width for one in lines)


def test_a_dish_is_wanted_as_the_depth_that_the_book_has(book: Book) -> None:
    card = replace(from_entry(book, book.entries["end-mill-plain-steel"]), tool=Tool("T-1", size="20 mm"))
    step = work_out(card, book).step("end-teeth")
    assert step is not None
    assert [one.key for one in step.answer.issues if one.missing] == ["dish_depth"]
