"""A land in a wrong unit is doubted where it was typed, with what may have been meant; a narrow margin is not. By hand."""

from __future__ import annotations

import pytest

from library.book.model import Book
from library.cards.issues import issues_of
from library.cards.job import work_out
from library.cards.model import Card, Inspection, Tool, Wanted


def countersink(*lands: str, drop: str = "26 thou") -> Card:
    return Card(
        family="countersink",
        units="in",
        tool=Tool("C-1", "3/4 in", flutes="3"),
        received={"diameter": (".75 in",), "land_width": lands, **({"drop": (drop,)} if drop else {})},
        wanted={"included_angle": Wanted("82 deg"), "cone_relief_angle": Wanted("8 deg")},
    )


def reamer(land: str, surface: str, drop: str = "") -> Card:
    return Card(
        family="reamer",
        units="in",
        tool=Tool("R-1", "3/4 in", flutes="6"),
        received={"diameter": (".75 in",), "land_width": (land,), **({"drop": (drop,)} if drop else {})},
        wanted={"surface": Wanted(surface), f"{surface}_relief_angle": Wanted("6 deg")},
    )


def doubts(card: Card, book: Book, *ways: str) -> list[tuple[str, str]]:
    found = issues_of(work_out(card, book))
    where = ways or ("received.land_width", "received.drop")
    return [(one.state, one.text) for one in found if one.way in where]


def test_lands_in_millimetres_where_inches_are_meant_are_doubted_once_and_asked_about(book: Book) -> None:
    assert doubts(countersink(".140 mm", ".142 mm", ".140 mm"), book) == [
        (
            "watch",
            "Land width: .140, .142, .140 mm on a tool of 0.7500 in are hardly lands, from edge to heel. Were inches meant? That "
            "would be 0.1400 in. See the unit and the decimal point, or measure them again.",
        )
    ]


def test_so_is_the_land_of_a_reamer_that_is_narrower_than_any_margin(book: Book) -> None:
    ((state, text),) = doubts(reamer(".062 mm", "land"), book)
    assert state == "watch"
    assert text.startswith("Land width: .062 mm on a tool of 0.7500 in is hardly a land")
    assert "Were inches meant? That would be 0.0620 in." in text


@pytest.mark.parametrize("land", [".1 mm", ".2 mm", "0.5 mm", "8 thou", "1/16 in", ".0625 in", "1.6 mm"])
@pytest.mark.parametrize("surface", ["land", "bevel"])
def test_a_margin_of_a_reamer_is_narrow_and_not_doubted(book: Book, land: str, surface: str) -> None:
    assert doubts(reamer(land, surface), book, "received.land_width") == []


@pytest.mark.parametrize("lands", [(".140 in", ".142 in", ".140 in"), ("3.5 mm",), ("1/8 in",), ("0.5 mm",)])
def test_a_land_as_countersinks_have_it_is_not_doubted(book: Book, lands: tuple[str, ...]) -> None:
    assert doubts(countersink(*lands, drop=""), book) == []


def test_a_drop_that_would_be_a_relief_that_no_tool_has_is_doubted_with_the_land_and_the_units_of_both(
    book: Book,
) -> None:
    # By hand: 0.8 mm down behind 0.4 mm is 63 degrees, and a relief has 45 at the most.
    ((state, text),) = doubts(reamer("0.4 mm", "land", "0.8 mm"), book)
    assert state == "watch"
    assert text.startswith("Indicator drop: 0.8 mm over a land of 0.4 mm would be a relief of 6")
    assert "and hardly any tool has more than 45.00 deg." in text
    assert text.endswith("See the units and the decimal points of both, or measure them again.")


def test_of_such_a_drop_it_is_asked_in_which_unit_its_land_would_be_one(book: Book) -> None:
    # Wide enough for a facet, and 0.3 in is 0.4 of the diameter.
    ((_, text),) = doubts(countersink("0.3 mm", drop="30 thou"), book)
    assert "Were inches meant for the land? That would be 0.3000 in." in text


def test_a_flat_relief_that_is_steep_only_by_its_form_is_not_doubted(book: Book) -> None:
    # A land of two fifths of the circle: the flat that comes back to it at the heel is steep, and the cam one is not.
    wide = countersink("0.85 in", drop="60 thou")
    assert doubts(wide, book, "received.drop") == []


def test_after_grinding_a_land_is_doubted_where_it_was_typed_again(book: Book) -> None:
    card = Card(
        family="countersink",
        units="in",
        tool=Tool("C-1", "3/4 in", flutes="3"),
        after={"land_width": Inspection((".140 mm", ".141 mm", ".140 in"))},
    )
    ((_, text),) = doubts(card, book, "after.land_width")
    assert text.startswith("Land width: .140, .141 mm on a tool of 0.7500 in are hardly lands")
