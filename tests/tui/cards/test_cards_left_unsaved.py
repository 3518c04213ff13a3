"""A card that was left with the whole program: what was typed on it is found again, and never goes over what is newer unasked."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.cards.model import Card, Tool
from library.cards.store import card_path, load
from library.cards.writing import as_toml
from library.drafts.draft import Draft
from library.drafts.draft_store import Drafts

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

OPEN = "2026-11-20-01"
"""The card of the yard that is not closed yet; its drill is of 8.7 mm and for hatch dowels."""

RECORD = "2026-06-02-01"
"""One that is a record."""


async def leave_typed(at_the_yard: AtTheYard, way: str, text: str) -> None:
    """Type over a line of the open card and leave the program."""
    async with at_the_yard() as hands:
        await hands.do("<f3>", "d-87", "<enter>")
        hands.app.screen.form.go_to(way)
        await hands.do("<ctrl+u>", text, "<ctrl+q>")


def saved_meanwhile(shop: Path, before: str, after: str) -> None:
    path = card_path(shop, OPEN)
    text = path.read_text()
    assert before in text
    path.write_text(text.replace(before, after))


def left_on(folder: Path, card: str, **texts: tuple[str, str]) -> None:
    """A run of the program that ended before what was typed on a card was saved."""
    drafts = Drafts(folder / "state" / "drafts")
    started = {way.replace("__", "."): old for way, (old, _) in texts.items()}
    typed = {way.replace("__", "."): new for way, (_, new) in texts.items()}
    drafts.keep(Draft("job-card", card, typed, started))
    drafts.close()


async def take_up_from_the_list(hands: Any) -> None:
    await hands.until(lambda: hands.app.session.left_behind)
    await hands.do("<f3>", "<f8>", "unsaved", "<enter>", "<enter>")


async def left_by_a_refused_save(hands: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    """Type 25 minutes on a card and leave it while the disk is full."""
    from library.errors import SaveError

    def refuse(*arguments: object, **named: object) -> None:
        raise SaveError("The disk is full.", Path("card.toml"))

    await hands.do("<f3>", "d-87", "<enter>")
    hands.app.screen.form.go_to("minutes")
    with monkeypatch.context() as patch:
        patch.setattr("library.cards.store.write_safely", refuse)
        await hands.do("25", "<f9>", "<f9>")


@pytest.mark.parametrize("save", ["<f9>", "<ctrl+r>"])
@pytest.mark.parametrize(
    ("keys", "kept"),
    [(("<enter>",), "22 mm"), (("<down>", "<enter>"), "11 mm"), (("<down>", "<down>", "<enter>"), "22 mm")],
)
async def test_an_older_draft_asks_before_it_goes_over_what_was_saved_since(
    at_the_yard: AtTheYard, yard: Path, save: str, keys: tuple[str, ...], kept: str
) -> None:
    await leave_typed(at_the_yard, "tool.size", "11 mm")
    saved_meanwhile(yard, 'size = "8.7 mm"', 'size = "22 mm"')
    async with at_the_yard() as hands:
        await take_up_from_the_list(hands)
        shown = await hands.do(save)
        assert "Both of you changed this" in shown
        assert load(yard, OPEN).card.tool.size == "22 mm"
        await hands.do(*keys)
        assert load(yard, OPEN).card.tool.size == kept


async def test_an_older_draft_of_another_line_is_put_together_with_what_was_saved_since(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    await leave_typed(at_the_yard, "tool.size", "11 mm")
    saved_meanwhile(yard, 'belongs_to = "hatch dowels"', 'belongs_to = "rail bolts"')
    async with at_the_yard() as hands:
        await take_up_from_the_list(hands)
        assert "is saved" in await hands.do("<f9>")
        tool = load(yard, OPEN).card.tool
        assert (tool.size, tool.belongs_to) == ("11 mm", "rail bolts")


async def test_a_card_that_is_opened_again_has_what_was_typed_on_it_and_is_where_it_was_left(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    await leave_typed(at_the_yard, "minutes", "25")
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "d-87", "<enter>")
        assert "and not saved stands on it again." in hands.words()
        assert hands.app.screen.form.card.minutes == "25"
        assert hands.app.screen.form.row.way == "minutes"
        assert hands.app.session.left_behind == []
        await hands.do("<f9>")
        assert load(yard, OPEN).card.minutes == "25"
    async with at_the_yard() as hands:
        assert "unsaved" not in hands.lines()[0]


async def test_a_card_that_was_saved_otherwise_since_opens_as_it_is_saved_and_tells_of_the_draft(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    await leave_typed(at_the_yard, "tool.size", "11 mm")
    saved_meanwhile(yard, 'size = "8.7 mm"', 'size = "22 mm"')
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "d-87", "<enter>")
        assert "says otherwise: F3, F8, unsaved, shows both." in hands.words()
        assert hands.app.screen.form.card.tool.size == "22 mm"
        assert len(hands.app.session.left_behind) == 1


async def test_a_record_is_not_opened_again_by_a_draft_that_was_left_of_it(
    at_the_yard: AtTheYard, yard: Path, tmp_path: Path
) -> None:
    was = load(yard, RECORD).card
    left_on(tmp_path, RECORD, minutes=(was.minutes, "99"))
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "c-34", "<enter>")
        assert hands.app.screen.form.card == was
        assert "says otherwise" in hands.words()
        await hands.do("<f9>")
        await take_up_from_the_list(hands)
        assert "This card was closed as a record since." in hands.words()


async def test_what_a_refused_save_left_typed_stands_on_the_card_when_it_is_opened_again(
    at_the_yard: AtTheYard, yard: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_the_yard() as hands:
        await left_by_a_refused_save(hands, monkeypatch)
        assert hands.app.screen.WHERE == "cards"
        await hands.do("<enter>")
        assert "What was typed on it before and not saved stands on it again." in hands.words()
        await hands.do("<f9>")
        assert load(yard, OPEN).card.minutes == "25"


async def test_a_draft_is_not_taken_up_over_what_was_typed_there_in_this_run(
    at_the_yard: AtTheYard, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from library.errors import SaveError

    def refuse(*arguments: object, **named: object) -> None:
        raise SaveError("The disk is full.", Path("card.toml"))

    left_on(tmp_path, OPEN, tool__size=("22 mm", "11 mm"))
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "d-87", "<enter>")
        hands.app.screen.form.go_to("minutes")
        monkeypatch.setattr("library.cards.store.write_safely", refuse)
        await hands.do("25", "<f9>", "<f9>", "<f8>", "unsaved", "<enter>", "<down>", "<enter>")
        assert "More was typed there since and is not saved." in hands.words()
        newest = hands.app.autosave.newest(f"job-card {OPEN}")
        assert newest is not None
        assert newest.fields["minutes"] == "25"


def another_card_under_its_number(shop: Path) -> None:
    card_path(shop, OPEN).write_text(as_toml(Card(id=OPEN, family="tap", tool=Tool(name="T-99"))))


async def test_a_draft_is_not_laid_on_another_card_that_has_the_number_now(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    await leave_typed(at_the_yard, "minutes", "25")
    another_card_under_its_number(yard)
    was = card_path(yard, OPEN).read_bytes()
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "t-99", "<enter>")
        assert hands.app.screen.form.card.minutes == ""
        assert "says otherwise" in hands.words()
        await hands.do("<f9>", "<f8>", "unsaved", "<enter>", "<enter>")
        assert hands.app.screen.opened is None
        await hands.do("<ctrl+r>")
        saved = hands.app.screen.form.card
        assert (saved.minutes, saved.tool.name) == ("25", "D-87-1")
        assert saved.id != OPEN
        assert card_path(yard, OPEN).read_bytes() == was


async def test_what_was_left_in_this_run_of_a_card_that_made_way_for_another_is_told_of(
    at_the_yard: AtTheYard, yard: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    async with at_the_yard() as hands:
        await left_by_a_refused_save(hands, monkeypatch)
        another_card_under_its_number(yard)
        was = card_path(yard, OPEN).read_bytes()
        await hands.do("<enter>")
        assert "This was typed on a card that had this number before, and is not saved" in hands.words()
        await hands.do("<ctrl+r>")
        assert hands.app.screen.form.card.id != OPEN
        assert card_path(yard, OPEN).read_bytes() == was


async def test_a_card_that_was_never_saved_is_told_of_above_those_that_were(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("bronze spi", "<ctrl+f>", "T-77", "<ctrl+q>")
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>")
        told = next(text for text in hands.lines() if text.startswith("Never saved: T-77, left 20"))
        assert told.endswith("; F8, unsaved, has it.")


async def test_the_menu_of_an_open_card_has_the_unsaved_too_and_saves_and_leaves_the_card_first(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    await leave_typed(at_the_yard, "tool.size", "11 mm")
    saved_meanwhile(yard, 'size = "8.7 mm"', 'size = "22 mm"')
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "d-87", "<enter>")
        hands.app.screen.form.go_to("minutes")
        await hands.do("<ctrl+u>", "25", "<f8>", "unsaved", "<enter>")
        assert hands.app.screen.WHERE == "drafts"
        assert load(yard, OPEN).card.minutes == "25"
        stack = [getattr(one, "WHERE", "") for one in hands.app.screen_stack]
        assert "card" not in stack
        assert stack.count("cards") == 1
        # The card of the draft that is taken up is open once, and asks before it goes over what was saved.
        await hands.do("<enter>")
        assert hands.app.screen.form.card.tool.size == "11 mm"
        assert "Both of you changed this" in await hands.do("<f9>")


async def test_a_card_that_cannot_be_saved_is_not_left_for_the_unsaved_ones(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    await leave_typed(at_the_yard, "tool.size", "11 mm")
    saved_meanwhile(yard, 'size = "8.7 mm"', 'size = "22 mm"')
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "d-87", "<enter>")
        card = hands.app.screen
        card.form.go_to("minutes")
        await hands.do("<ctrl+u>", "25")
        saved_meanwhile(yard, 'size = "22 mm"', "size = [")
        await hands.do("<f8>", "unsaved", "<enter>")
        assert hands.app.screen is card
        assert "kept as a draft" in hands.words()
        assert card.form.card.minutes == "25"
