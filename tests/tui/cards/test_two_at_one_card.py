"""Two people at one card, a disk that refuses, and drafts that come back: nothing typed is lost."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.cards.model import Card, Tool
from library.cards.store import card_path, load
from library.cards.writing import as_toml
from tui.screens.cards.card import CardScreen
from tui.screens.draft_screens import screen_of

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

OPEN = "2026-11-20-01"
"""The card of the yard that is not closed yet."""


def written_by_another(shop: Path, before: str, after: str) -> None:
    path = card_path(shop, OPEN)
    text = path.read_text()
    assert before in text
    path.write_text(text.replace(before, after))


async def minutes_typed(hands: Any) -> None:
    """Open the card that is a draft, and type 25 minutes on it."""
    await hands.do("<f3>", "d-87", "<enter>")
    hands.app.screen.form.go_to("minutes")
    await hands.do("25")


async def test_different_lines_of_two_people_are_both_kept(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await minutes_typed(hands)
        written_by_another(hands.shop, 'belongs_to = "hatch dowels"', 'belongs_to = "rail bolts"')
        assert "kept too" in await hands.do("<ctrl+r>")
        card = load(hands.shop, OPEN).card
        assert (card.minutes, card.tool.belongs_to) == ("25", "rail bolts")
        assert hands.app.screen.form.card == card


@pytest.mark.parametrize(
    ("key", "kept"), [(("<down>", "<enter>"), "mine"), (("<down>", "<down>", "<enter>"), "theirs")]
)
async def test_the_same_line_of_two_people_is_asked_about(
    at_the_yard: AtTheYard, key: tuple[str, ...], kept: str
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "d-87", "<enter>")
        hands.app.screen.form.go_to("tool.belongs_to")
        await hands.do("<ctrl+u>", "mine")
        written_by_another(hands.shop, 'belongs_to = "hatch dowels"', 'belongs_to = "theirs"')
        shown = await hands.do("<ctrl+r>")
        assert "Both of you changed this" in shown
        assert load(hands.shop, OPEN).card.tool.belongs_to == "theirs"
        await hands.do(*key)
        assert load(hands.shop, OPEN).card.tool.belongs_to == kept
        assert hands.app.screen.form.card.tool.belongs_to == kept


async def test_a_card_that_somebody_took_away_is_saved_anew(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await minutes_typed(hands)
        card_path(hands.shop, OPEN).unlink()
        await hands.do("<ctrl+r>")
        new = hands.app.screen.form.card.id
        said = f"Card {OPEN} was discarded or moved away meanwhile. What you have here is saved as {new}."
        assert said in hands.words()
        assert load(hands.shop, new).card.minutes == "25"
        assert load(hands.shop, new).card.tool.name == "D-87-1"


@pytest.mark.parametrize("save", ["<f9>", "<ctrl+r>"])
async def test_a_record_that_somebody_else_made_of_it_is_opened_again_only_where_that_is_said(
    at_the_yard: AtTheYard, save: str
) -> None:
    async with at_the_yard() as hands:
        await minutes_typed(hands)
        written_by_another(hands.shop, 'status = "draft"', 'status = "done"')
        record = card_path(hands.shop, OPEN).read_bytes()
        assert f"Open card {OPEN}, D-87-1" in await hands.do(save)
        await hands.do("<enter>")
        assert f"Card {OPEN} was closed as a record meanwhile by somebody else." in hands.words()
        assert card_path(hands.shop, OPEN).read_bytes() == record
        assert hands.app.screen.form.card.minutes == "25"
        await hands.do("<ctrl+r>")
        await hands.sure()
        assert f"Card {OPEN} is open again, with what you typed" in hands.words()
        card = load(hands.shop, OPEN).card
        assert (card.status, card.minutes) == ("draft", "25")


async def test_what_is_typed_for_one_tool_is_never_laid_on_the_card_of_another(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await minutes_typed(hands)
        path = card_path(hands.shop, OPEN)
        other = as_toml(Card(id=OPEN, family="tap", tool=Tool(name="T-99")))
        path.write_text(other)
        await hands.do("<f9>")
        assert (
            f"{OPEN} is another card meanwhile, T-99, tap. What you have here is saved as " in hands.words()
        )
        assert path.read_text() == other
        (mine,) = [row for row in hands.app.card_service.rows if row.tool == "D-87-1" and row.id != OPEN]
        assert load(hands.shop, mine.id).card.minutes == "25"


async def test_a_record_is_told_of_where_what_was_typed_before_it_was_closed_stands_on_it_again(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await minutes_typed(hands)
        written_by_another(hands.shop, 'status = "draft"', 'status = "done"')
        await hands.do("<f9>", "<enter>", "<f9>", "<enter>")
        assert "This card was closed as a record since." in hands.words()


async def test_a_disk_that_refuses_is_told_of_and_what_was_typed_stays_a_draft(
    at_the_yard: AtTheYard, monkeypatch: pytest.MonkeyPatch
) -> None:
    from library.errors import SaveError

    def refuse(*arguments: object, **named: object) -> None:
        raise SaveError("The disk is full.", Path("card.toml"))

    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>", "T-77")
        monkeypatch.setattr("library.cards.store.write_safely", refuse)
        shown = await hands.do("<f9>")
        assert "The disk is full." in shown
        assert hands.app.screen.WHERE == "card"
        await hands.do("<f9>")
        assert hands.app.screen.WHERE == "book"
        assert [draft.fields["tool.name"] for draft in hands.app.autosave._newest.values()] == ["T-77"]


async def test_a_draft_of_a_new_card_comes_back_with_what_the_entry_recommends(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>", "T-77", "<ctrl+n>", "<ctrl+n>")
        hands.app.screen.form.go_to("wanted.rake_angle")
        await hands.do("4 deg", "<down>", "chipped")
        draft = hands.app.screen.draft()
        again = screen_of(hands.app, hands.app.session.book, draft)
        assert isinstance(again, CardScreen)
        card = again.form.card
        assert card == hands.app.screen.form.card
        one = card.wanted["rake_angle"]
        assert (one.value, one.book, one.source, one.reason) == ("4 deg", "3 deg", "this shop", "chipped")
        assert again.is_changed


async def test_a_draft_of_a_saved_card_puts_only_what_was_typed_over_what_is_saved_now(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await minutes_typed(hands)
        draft = hands.app.screen.draft()
        written_by_another(hands.shop, 'belongs_to = "hatch dowels"', 'belongs_to = "rail bolts"')
        card = hands.app.card_service.brought_back(draft, hands.app.session.book).card
        assert (card.minutes, card.tool.belongs_to) == ("25", "rail bolts")


async def test_a_card_of_a_newer_program_is_shown_and_takes_no_typing(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        written_by_another(hands.shop, "schema = 1", "schema = 99")
        await hands.do("<f3>", "d-87", "<enter>")
        shown = await hands.do("x")
        assert "newer" in shown
        before = card_path(hands.shop, OPEN).read_bytes()
        await hands.do("<f9>")
        assert card_path(hands.shop, OPEN).read_bytes() == before


def broken(shop: Path) -> bytes:
    """Break the file of the open card by hand, and return its bytes."""
    path = card_path(shop, OPEN)
    path.write_text(path.read_text() + "[[card\n")
    return path.read_bytes()


async def test_a_file_that_is_broken_by_hand_says_so_in_the_list_and_on_the_card(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    was = broken(yard)
    line = was.count(b"\n")
    async with at_the_yard() as hands:
        await hands.do("<f3>", "unreadable")
        assert f"The file of card {OPEN} cannot be read; Enter tells where." in hands.words()
        shown = await hands.do("<enter>")
        assert f"Job card {OPEN}: its file cannot be read" in shown
        assert hands.lines()[0].split()[-2:] == ["unreadable", "mm"]
        assert f"cannot be read (line {line}, column 1: The brackets" in hands.words()
        await hands.do("x", "<f9>")
        assert card_path(yard, OPEN).read_bytes() == was


async def test_a_file_that_breaks_while_its_card_is_open_is_told_of_and_not_written_over(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    async with at_the_yard() as hands:
        await minutes_typed(hands)
        was = broken(yard)
        await hands.do("<f9>")
        assert hands.app.screen.WHERE == "card"
        assert "cannot be read (line " in hands.words()
        assert "What you typed is kept as a draft." in hands.words()
        assert card_path(yard, OPEN).read_bytes() == was
