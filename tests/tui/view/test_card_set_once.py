"""What is set stands once among the settings of a card, and a slight swivel as what can be set."""

from __future__ import annotations

import pytest

from library.book.model import Book, Family
from library.cards.job import work_out
from library.cards.model import Card, Setting, Tool, Wanted
from library.setup_sheet.sheets import setup_sheet
from tui.view.card_form import CardForm
from tui.view.card_row import Told

BOOK = Book({}, {"reamer": Family("reamer", "Reamers", kind="reamer", surfaces=("land",))})


def helical(**typed: Setting) -> Card:
    return Card(
        family="reamer",
        tool=Tool(size="12 mm", flutes="4"),
        received={
            "diameter": ("12 mm",),
            "land_width": ("1 mm",),
            "land_measured_as": ("arc",),
            "helix_angle": ("30 deg",),
        },
        wanted={
            "land_relief_angle": Wanted("7 deg"),
            "second_land_relief_angle": Wanted("15 deg"),
            "relief_method": Wanted("tooth-rest-height"),
        },
        settings=typed,
    )


def told(card: Card) -> list[Told]:
    form = CardForm(BOOK, card)
    form.go_to("settings")
    return [one for row in form.rows for one in row.told]


@pytest.mark.parametrize(
    ("typed", "title"),
    [
        ({}, "Tooth rest height"),
        ({"reamer-land": Setting({"primary_land": "0.5 mm"})}, "Facet 1: rest height"),
    ],
)
def test_the_rest_under_a_helical_tooth_stands_once_and_what_counts_it_again_says_so(
    typed: dict[str, Setting], title: str
) -> None:
    found = told(helical(**typed))
    # By hand: 6 sin 7 degrees is 0.7312 mm.
    assert [one.title for one in found if one.value == "0.731 mm"] == [title]
    (again,) = (one for one in found if one.title == "Setting height for a relief angle")
    assert (again.value, again.divisions, again.note) == ("", "set above", "ok")


# 0.010 mm off the diameter in 100 mm is 0.005 mm to a side, and atan 0.00005 is 0.0029 degrees. Derived.
def test_a_slight_back_taper_is_told_as_what_can_be_set() -> None:
    card = helical(**{"back-taper": Setting({"back_taper": "0.010 mm"})})
    (swivel,) = (one for one in told(card) if one.title == "Swivel angle")
    assert swivel.value == "0.0029 deg"
    sheet = " ".join(setup_sheet(work_out(card, BOOK)).split())
    assert "Swivel angle 0.0029 deg" in sheet
    assert "an indicator along the side falls 0.005 mm over 100" in sheet
    assert "0.00 deg" not in sheet
