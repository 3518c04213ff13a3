"""What an earlier step has set is not told again with another number by a later one."""

from __future__ import annotations

import math

from library.book.model import Book
from library.cards.editing import edited
from library.cards.job import work_out
from library.cards.model import Card
from library.setup_sheet.sheets import setup_sheet


def test_the_rest_under_a_helical_tooth_has_one_height_on_the_sheet(
    sheet_book: Book, reamer_card: Card
) -> None:
    # By hand: 2 mm tan 10 round a radius of 6 mm is 3.3676 degrees more than the 8.
    card = edited(reamer_card, "settings.tooth-rest.rest_offset", "2 mm")
    text = " ".join(setup_sheet(work_out(card, sheet_book)).split())
    turned = math.radians(8) + 2 * math.tan(math.radians(10)) / 6
    assert f"Tooth rest height {6 * math.sin(turned):.3f} mm" in text
    assert "0.835 mm" not in text


def test_unequal_spaces_take_the_place_of_even_moves_of_the_index(
    sheet_book: Book, reamer_card: Card
) -> None:
    even = work_out(reamer_card, sheet_book)
    job = work_out(edited(reamer_card, "settings.unequal-spacing.spacing_step", "2 deg"), sheet_book)
    in_use = [[one.sheet.name for one in found.steps if one.in_use] for found in (even, job)]
    assert "index-moves" in in_use[0]
    assert "unequal-spacing" not in in_use[0]
    assert "index-moves" not in in_use[1]
    text = setup_sheet(job)
    assert "edge 1 to 2 and 3 to 4" in " ".join(text.split())
    assert "every move" not in text
