"""What was typed for a calculation stands on the sheet, so that the next person gets the same tool from it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book
from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Card, Setting, Tool, Wanted
from library.setup_sheet.sheets import setup_sheet


@pytest.fixture(scope="module")
def shipped() -> Book:
    return open_book()


def counted_with(card: Card, book: Book) -> str:
    told = " ".join(setup_sheet(work_out(card, book)).split())
    return told.partition("Counted with: ")[2].partition(" The wheel maker's")[0]


def reamer(**typed: dict[str, str]) -> Card:
    return Card(
        family="reamer",
        tool=Tool("R-12", "12 mm", flutes="6"),
        received={"land_width": ("1.2 mm",), "land_measured_as": ("arc",)},
        wanted={"land_relief_angle": Wanted("6 deg"), "rake_angle": Wanted("2 deg")},
        settings={name: Setting(texts) for name, texts in typed.items()},
    )


def test_an_input_of_a_calculation_that_follows_from_nothing_stands_on_the_sheet(shipped: Book) -> None:
    told = counted_with(
        reamer(
            **{
                "reamer-land": {"primary_land": "0.4 mm", "secondary_relief_angle": "14 deg"},
                "reamer-size": {"hole_tolerance": "H7"},
            }
        ),
        shipped,
    )
    assert told == "tolerance of the hole H7; primary land 0.4 mm; secondary relief angle 14 deg"


def test_what_is_set_stands_in_a_line_of_its_own_and_not_there(shipped: Book) -> None:
    card = reamer(**{"wheel-speed": {"rotational_speed": "2800 rpm", "wheel_diameter": "150 mm"}})
    assert counted_with(card, shipped) == "wheel diameter 150 mm"


def test_nothing_typed_takes_no_line(shipped: Book) -> None:
    assert counted_with(reamer(), shipped) == ""


def test_a_word_that_was_chosen_stands_as_it_is_said(shipped: Book) -> None:
    assert "throw counted per tooth" in counted_with(
        reamer(**{"relief-drop": {"throw_per": "tooth"}}), shipped
    )


@pytest.mark.parametrize(("units", "said"), [("mm", "0.4 mm"), ("in", "0.4 in")])
def test_a_number_without_a_unit_stands_there_with_that_of_the_card(
    shipped: Book, units: str, said: str
) -> None:
    card = reamer(**{"reamer-land": {"primary_land": "0.4", "secondary_relief_angle": "14"}})
    assert f"primary land {said}; secondary relief angle 14 deg" in counted_with(
        replace(card, units=units), shipped
    )
