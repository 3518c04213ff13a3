"""A disk that takes no draft, or no card: what is said of what was typed is true, and it is lost only where that was agreed to."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from pathlib import Path
from typing import Any

import pytest

from library.errors import SaveError

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]


@pytest.fixture
def no_drafts(tmp_path: Path) -> None:
    """A folder of the program's state in which no draft can be kept."""
    (tmp_path / "state").mkdir()
    (tmp_path / "state" / "drafts").write_text("no folder")


@pytest.fixture
def no_cards(monkeypatch: pytest.MonkeyPatch) -> None:
    """A book that takes no card."""

    def refuse(*arguments: object, **named: object) -> None:
        raise SaveError("The disk is full.", Path("card.toml"))

    monkeypatch.setattr("library.cards.store.write_safely", refuse)


def ended(hands: Any) -> bool:
    return hands.app._exit  # type: ignore[no-any-return]


@pytest.mark.usefixtures("no_drafts", "no_cards")
async def test_what_neither_book_nor_state_takes_is_listed_and_the_end_asks_by_name(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "RO-1", "<f9>")
        said = "The disk is full. What you typed cannot be kept as a draft either: it is in this window alone"
        assert said in hands.words()
        await hands.do("<f9>")
        assert hands.app.screen.WHERE == "cards"
        assert "RO-1" in await hands.do("<f8>", "unsaved", "<enter>")
        await hands.do("<enter>")
        assert hands.app.screen.form.card.tool.name == "RO-1"
        await hands.do("<ctrl+q>")
        assert "Leave the program?" in hands.shown()
        shown = await hands.do("<down>")
        assert "Loses what no disk takes as a draft: " in hands.words()
        assert "RO-1" in shown
        await hands.do("<up>", "<enter>")
        assert not ended(hands)
        assert hands.app.screen.form.card.tool.name == "RO-1"
        await hands.do("<ctrl+q>", "<down>", "<enter>")
        assert ended(hands)


@pytest.mark.usefixtures("no_drafts", "no_cards")
async def test_going_back_out_of_the_book_asks_the_same(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "RO-1", "<f9>", "<f9>", "<f9>", "<f9>")
        assert "Leave the program?" in hands.shown()
        assert not ended(hands)


@pytest.mark.usefixtures("no_drafts")
async def test_a_card_that_is_saved_where_no_draft_is_kept_is_said_to_be_saved(
    at_the_yard: AtTheYard,
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "RO-3", "<f9>")
        await hands.settle()
        assert "is saved." in hands.words()
        assert "Nothing was saved" not in hands.words()
        await hands.do("<ctrl+q>")
        assert ended(hands)


@pytest.mark.usefixtures("no_drafts")
async def test_a_draft_that_is_not_kept_is_told_of_without_a_word_on_saving(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "RO-3")
        await hands.until(lambda: "What you type is not kept as a draft." in hands.words())
        assert "Nothing was saved" not in hands.words()


@pytest.mark.usefixtures("no_cards")
async def test_a_card_that_was_left_as_a_draft_is_listed_at_once(
    at_the_yard: AtTheYard, yard: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    before = set((yard / "cards").rglob("*.toml"))
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "RO-5", "<f9>")
        assert "What you typed is kept as a draft." in hands.words()
        await hands.do("<f9>")
        assert "1 unsaved" in hands.lines()[0]
        assert any(text.startswith("Never saved: RO-5, left 20") for text in hands.lines())
        await hands.do("<f8>", "unsaved", "<enter>", "<enter>")
        monkeypatch.undo()
        await hands.do("<f9>")
        assert "is saved." in hands.words()
        assert hands.app.session.left_behind == []
        assert len(set((yard / "cards").rglob("*.toml")) - before) == 1
    async with at_the_yard() as hands:
        assert "unsaved" not in hands.lines()[0]


@pytest.mark.usefixtures("no_cards")
async def test_a_draft_that_was_left_in_this_run_is_discarded_for_good(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "RO-5", "<f9>", "<f9>", "<f8>", "unsaved", "<enter>")
        await hands.do("<f8>", "discard", "<enter>")
        await hands.sure()
        assert "It is forgotten" in hands.words()
    async with at_the_yard() as hands:
        assert "unsaved" not in hands.lines()[0]


async def test_with_others_left_unsaved_the_way_back_is_to_their_list(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "<ctrl+f>", "A-1", "<ctrl+q>")
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>", "<ctrl+f>", "B-2", "<ctrl+q>")
    async with at_the_yard() as hands:
        await hands.until(lambda: len(hands.app.session.left_behind) == 2)
        await hands.do("<f8>", "unsaved", "<enter>", "<enter>", "<f9>")
        assert hands.app.screen.WHERE == "drafts"
        assert "is saved." in hands.words()
        await hands.do("<enter>", "<f9>")
        assert hands.app.screen.WHERE == "book"
        assert hands.app.session.left_behind == []
