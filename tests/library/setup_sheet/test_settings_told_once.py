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
