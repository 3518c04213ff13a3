"""What the book has stands on a sheet in the unit of the card; what a person typed stands as he typed it."""

from __future__ import annotations

from dataclasses import replace

from library.book.model import Book, Family
from library.cards.job import work_out
from library.cards.model import Card, Setting, Tool, Wanted
from library.setup_sheet.sheets import setup_sheet

EMPTY = Book({}, {"reamer": Family("reamer", "reamer", kind="reamer")})

CARD = Card(
    family="reamer",
    units="in",
    tool=Tool("R-1", size="1/2 in", flutes="6"),
    received={"land_width": ("0.05 in",), "land_measured_as": ("arc",)},
    wanted={
        "surface": Wanted("land"),
        "relief_method": Wanted("wheel-head-height"),
        "relief_form": Wanted("flat", "flat", "common practice"),
        "land_relief_angle": Wanted("7 deg", "7 deg", "from memory"),
        "margin_width": Wanted("0.2 mm", "0.2 mm", "from memory"),
    },
    settings={"setting-height": Setting({"wheel_diameter": "6 in"})},
)


def sheet(card: Card) -> str:
    return " ".join(setup_sheet(work_out(card, EMPTY)).split())


def test_a_margin_of_the_book_in_millimetres_stands_in_inches_on_a_card_in_inches() -> None:
    # 0.2 / 25.4 = 0.00787 in.
    assert "Margin width: 0.0079 in [" in sheet(CARD)
    assert "0.2 mm" not in sheet(CARD)


def test_what_a_person_wants_instead_stands_as_typed_beside_the_book_in_inches() -> None:
    other = {**CARD.wanted, "margin_width": Wanted("10 thou", "0.2 mm", "from memory", "wears")}
    said = sheet(replace(CARD, wanted=other))
    assert "Margin width: 10 thou (the book has 0.0079 in; wears)" in said
