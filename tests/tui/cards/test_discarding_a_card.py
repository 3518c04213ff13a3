"""A card that was begun by mistake is discarded from the menu, by name and asked about first; a record never is."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

from library.cards.store import card_path
from library.drafts.draft import Draft
from library.drafts.draft_store import Drafts

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]

OPEN = "2026-11-20-01"
"""The card of the yard that is not closed yet."""


def files(yard: Path) -> dict[Path, bytes]:
    return {path: path.read_bytes() for path in (yard / "cards").rglob("*.toml")}


async def test_a_draft_card_is_discarded_from_the_list_by_name_and_nothing_else_is(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    before = files(yard)
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "a", "<f9>")
        (new,) = files(yard).keys() - before.keys()
        shown = await hands.do("<f8>", "discard", "<enter>")
        assert f"Discard card {new.stem}, a?" in shown
        await hands.do("<enter>")
        assert new.exists()
        await hands.do("<ctrl+t>", "<up>", "<f8>", "discard", "<enter>")
        assert f"Card {new.stem} is discarded." in await hands.sure()
        assert "6 of 6" in hands.shown()
        assert hands.app.session.marked_cards == {}
    assert files(yard) == before


async def test_a_record_has_no_such_line_and_is_refused_to_whoever_has_a_key_for_it(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    before = files(yard)
    async with at_the_yard() as hands:
        await hands.do("<f3>", "c-34")
        assert "there is nothing to 'discard the card'" in (await hands.menu("discard")).replace("\n", " ")
        await hands.do("<f9>")
        hands.app.screen.do_drop_card()
        await hands.settle()
        assert hands.app.screen.WHERE == "cards"
        assert "is a record, and a record is not discarded." in hands.app.screen.said
    assert files(yard) == before


async def test_a_card_that_is_open_is_left_when_it_is_discarded_with_what_was_typed_on_it(
    at_the_yard: AtTheYard, yard: Path, tmp_path: Path
) -> None:
    drafts = Drafts(tmp_path / "state" / "drafts")
    drafts.keep(Draft("job-card", OPEN, {"minutes": "25"}))
    drafts.close()
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "d-87", "<enter>", "30")
        await hands.do("<f8>", "discard the card", "<enter>")
        await hands.sure()
        assert hands.app.screen.WHERE == "cards"
        assert hands.app.autosave.newest(f"job-card {OPEN}") is None
        # Another card may be begun under that number, on which nothing of this one is to be laid.
        assert hands.app.session.left_behind == []
    assert not card_path(yard, OPEN).exists()


async def test_a_new_card_is_discarded_before_it_is_saved(at_the_yard: AtTheYard, yard: Path) -> None:
    before = files(yard)
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "a", "<f8>", "discard", "<enter>")
        assert "Discard this new card, a?" in hands.shown()
        await hands.sure()
        assert "The new card is discarded; nothing of it was saved." in hands.shown()
        assert hands.app.screen.WHERE == "cards"
    assert files(yard) == before
    async with at_the_yard() as hands:
        assert "unsaved" not in hands.lines()[0]


async def test_what_somebody_else_wrote_on_it_meanwhile_keeps_a_card(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "d-87", "<f8>", "discard", "<enter>")
        path = card_path(yard, OPEN)
        path.write_text(path.read_text().replace("hatch dowels", "rail bolts"))
        await hands.sure()
        assert "was changed meanwhile by another program or person." in hands.words()
        assert "rail bolts" in path.read_text()


async def test_the_number_of_a_discarded_card_is_not_given_again_while_it_may_be_open_elsewhere(
    at_the_yard: AtTheYard, yard: Path
) -> None:
    before = files(yard)
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "a", "<f9>")
        (first,) = files(yard).keys() - before.keys()
        await hands.do("<f8>", "discard", "<enter>")
        await hands.sure()
        await hands.do("<ctrl+f>", "b", "<f9>")
        (second,) = files(yard).keys() - before.keys()
        assert second.stem > first.stem
