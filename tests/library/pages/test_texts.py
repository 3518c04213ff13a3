"""Text for a printer that knows ASCII only: what a person typed keeps its meaning, or is seen to be lost."""

from __future__ import annotations

import pytest

from library.book.opening import open_book
from library.cards.job import work_out
from library.cards.model import Card, Tool
from library.pages.texts import in_ascii
from library.setup_sheet.sheets import setup_sheet


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("½ in", "1/2 in"),
        ("1½ in", "1 1/2 in"),
        ("1 ½ in", "1 1/2 in"),
        ("3\N{FRACTION SLASH}4 or 3\N{DIVISION SLASH}4", "3/4 or 3/4"),
        ("60° ± ½°", "60 deg +/- 1/2 deg"),
        ("90º, Nº 7", "90 deg, No 7"),
        ("\N{MINUS SIGN}0.02 … ≤ 0.05", "-0.02 ... <= 0.05"),
        ("10³ of 5 mm²", "10^3 of 5 mm2"),
        ("Ø12, ⌀ 8", "dia 12, dia 8"),
        ("Ørsta, Łódź", "Orsta, Lodz"),
        ("3″, 5\N{PRIME}", "3\", 5'"),
    ],
)
def test_a_sign_prints_as_what_it_means(typed: str, printed: str) -> None:
    assert in_ascii(typed) == printed


def test_a_sign_that_ascii_has_nothing_for_prints_as_one_question_mark() -> None:
    assert in_ascii("é 日本 한 が") == "e ?? ? ?"


def test_no_sign_turns_into_its_opposite() -> None:
    assert in_ascii("a ≠ b") == "a != b"


def test_a_note_on_the_sheet_keeps_its_fraction() -> None:
    card = Card(family="countersink", tool=Tool("C-1", "12 mm", flutes="3"), notes="é ½ 日本, stone 1½ wide")
    assert "e 1/2 ??, stone 1 1/2 wide" in setup_sheet(work_out(card, open_book(None)), "text")
