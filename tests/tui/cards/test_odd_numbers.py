"""Whatever number stands in a line of a card, whole or half typed, the card is laid out on every step and tells its fault."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.opening import open_book
from library.cards.store import load
from library.demo import BOOK
from tui.figure.alphabet import ALPHABETS
from tui.view.card_form import CardForm
from tui.view.card_page import CardPage
from tui.view.card_steps import STEPS

CARDS = sorted(path.stem for path in (BOOK / "cards").rglob("*.toml"))

ODD = ("0", "-5", "180 deg", "1e9", "0, 0")
"""The first key of 0.5, and what is no size, of another kind, out of all range and nothing for each flute."""


def laid_out_with(card: str, texts: tuple[str, ...], only: str = "") -> int:
    """Type each text into each line of a card of the demonstration, letter by letter, and lay out every step; how many were."""
    book = open_book(BOOK)
    begun = replace(load(BOOK, card).card, status="draft")
    form = CardForm(book, begun)
    pages = [
        (CardPage(form, alphabet=ALPHABETS["braille"]), width, height)
        for width, height in ((80, 22), (160, 46))
    ]
    count = 0
    for step in range(len(STEPS)):
        form.change_step(step - form.step)
        for way in [row.way for row in form.rows if not row.heading and (not only or row.way == only)]:
            for text in texts:
                form.take(book, begun)
                form.change_step(step - form.step)
                form.go_to(way)
                for letter in text:
                    form.type(letter)
                    for page, width, height in pages:
                        page.draw(width, height)
                for _ in STEPS:
                    form.change_step(1 if form.step + 1 < len(STEPS) else -form.step)
                    pages[1][0].draw(160, 46)
                count += 1
    return count


@pytest.mark.parametrize(
    ("card", "way", "text"),
    [
        ("2026-06-02-01", "after.diameter", "0"),
        ("2025-10-14-01", "after.drop", "180 deg"),
        # No relief can be told from a drop below nothing, so that none lies outside the book's range.
        ("2026-06-02-01", "after.drop", "-5"),
    ],
)
def test_a_size_half_typed_and_an_angle_for_a_length_leave_the_card_standing(
    card: str, way: str, text: str
) -> None:
    assert laid_out_with(card, (text,), way) == 1


@pytest.mark.depth
@pytest.mark.parametrize("card", CARDS)
def test_no_odd_number_in_any_line_ends_a_card(card: str) -> None:
    assert laid_out_with(card, ODD) >= len(ODD) * 12
