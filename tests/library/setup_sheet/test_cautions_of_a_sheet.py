"""The cautions at the head of a setup sheet: those of grinding first, and all of them where the paper has room."""

from __future__ import annotations

from dataclasses import replace

import pytest

from library.book.model import Book, Caution, Citation
from library.book.opening import open_book
from library.cards.model import Card, Tool
from library.setup_sheet.sheets import FORMATS
from tests.library.setup_sheet.conftest import sheet


def test_cautions_stand_at_the_head_in_words_above_every_number(sheet_book: Book, tap_card: Card) -> None:
    text = sheet(tap_card, sheet_book)
    head = text[: text.index("Set, in this order")]
    assert "\nCAUTION  Eyes | Wheel-Rating\n" in head


def test_of_many_cautions_those_of_grinding_have_the_room_at_the_head(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    # A paper that is full.
    monkeypatch.setattr("library.setup_sheet.composing.ONE_PAGE", 0)
    card = Card(
        id="2026-11-26-01",
        entry="masonry-drill-masonry",
        family="masonry-drill",
        tool=Tool(name="A drill"),
    )
    lines = sheet(card, open_book()).splitlines()
    first = next(at for at, line in enumerate(lines) if line.startswith("CAUTION"))
    told = " ".join(lines[first : first + 2])
    for words in ("carbide: suction", "goggles", "no gloves", "guard on", "stand aside"):
        assert words in told
    assert "all: F4 on the card" in told


@pytest.mark.parametrize("form", sorted(FORMATS))
def test_all_cautions_are_told_where_the_paper_has_room_for_them_and_are_counted_where_it_has_not(
    form: str, sheet_book: Book, tap_card: Card, monkeypatch: pytest.MonkeyPatch
) -> None:
    many = {f"caution-{number}": f"Mind the {number}." for number in range(30)}
    cautions = {
        name: Caution(name, f"mind number {name}", text, Citation("common practice"))
        for name, text in many.items()
    }
    tap = replace(sheet_book.families["tap"], cautions=tuple(cautions))
    book = replace(
        sheet_book,
        families={**sheet_book.families, "tap": tap},
        cautions={**sheet_book.cautions, **cautions},
    )
    monkeypatch.setattr("library.setup_sheet.composing.ONE_PAGE", 200)
    roomy = sheet(tap_card, book, form)
    assert all(f"mind number {name}" in " ".join(roomy.split()) for name in cautions)
    assert "F4" not in roomy
    monkeypatch.setattr("library.setup_sheet.composing.ONE_PAGE", 0)
    full = sheet(tap_card, book, form)
    # Markdown is no paper, and tells all of them.
    assert ("F4 on the card" in full) is (form != "markdown")
