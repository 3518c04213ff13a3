"""The list of job cards: searching it, the life of a tool, doing a job again, and planning a batch."""

from __future__ import annotations

from collections.abc import Callable
from contextlib import AbstractAsyncContextManager
from math import radians, tan
from pathlib import Path
from threading import Event
from typing import Any

import pytest

from library.cards.store import card_path
from library.drafts.draft import Draft
from library.drafts.draft_store import Drafts
from tests.examples import every_third_at_once
from tui.services.card_service import CardService
from tui.view.lines import width_of

AtTheYard = Callable[..., AbstractAsyncContextManager[Any]]


def rows_shown(shown: str) -> list[str]:
    return [text for text in shown.splitlines() if text[2:4] == "20"]


async def test_the_newest_card_stands_first_and_every_card_has_a_row(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        rows = rows_shown(await hands.do("<f3>"))
        assert [row[2:15] for row in rows] == [
            "2026-11-20-01", "2026-08-17-01", "2026-06-02-01", "2026-04-22-01", "2026-03-11-01", "2025-10-14-01",
        ]  # fmt: skip
        assert "draft" in rows[0]
        assert "good" in rows[1]


@pytest.mark.parametrize(
    ("query", "ids"),
    every_third_at_once(
        [
            ("t-12", ["2026-03-11-01", "2025-10-14-01"]),
            ("size:m12 date:2025", ["2025-10-14-01"]),
            ("material:plain result:good", ["2026-08-17-01", "2026-06-02-01", "2026-04-22-01"]),
            ("winch", ["2026-04-22-01"]),
            ("status:draft", ["2026-11-20-01"]),
            ("from:2026-05 to:2026-08", ["2026-08-17-01", "2026-06-02-01"]),
        ],
        several=True,
    ),
)
async def test_typing_finds_by_tool_size_material_date_and_result(
    at_the_yard: AtTheYard, query: str, ids: list[str]
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>")
        rows = rows_shown(await hands.do(query))
        assert [row[2:15] for row in rows] == ids


async def test_a_search_without_a_hit_says_what_to_do(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("<f3>", "gear hob")
        assert "No card has 'gear hob'" in shown
        assert "There is no card here" in await hands.do("<enter>")
        assert len(rows_shown(await hands.do("<ctrl+u>"))) == 6


async def test_a_shop_without_cards_is_told_how_to_begin(at_the_yard: AtTheYard, yard: Any) -> None:
    for path in (yard / "cards").rglob("*.toml"):
        path.unlink()
    async with at_the_yard() as hands:
        assert "There is no card yet" in await hands.do("<f3>")
        assert (await hands.do("<ctrl+f>")).startswith("New job card")


def left_unsaved(folder: Path) -> None:
    """A run of the program that ended before a new card was saved."""
    drafts = Drafts(folder / "state" / "drafts")
    drafts.keep(Draft("job-card", "new card, begun 2026-11-20 10:00:00", {"tool.name": "T-77"}))
    drafts.close()


async def test_a_card_that_was_left_unsaved_is_named_where_none_is_saved_and_enter_leads_to_it(
    at_the_yard: AtTheYard, yard: Any, tmp_path: Path
) -> None:
    for path in (yard / "cards").rglob("*.toml"):
        path.unlink()
    left_unsaved(tmp_path)
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f3>")
        assert "There is no card yet. Left unsaved was: Job card: new card, begun" in hands.words()
        assert "1 unsaved: F8, unsaved" in hands.words()
        await hands.do("<enter>")
        assert "Left unsaved when the program last ended" in hands.words()
        await hands.do("<enter>")
        assert "New job card: T-77" in hands.words()


async def test_a_draft_is_found_in_the_menu_by_that_word(at_the_yard: AtTheYard, tmp_path: Path) -> None:
    left_unsaved(tmp_path)
    async with at_the_yard() as hands:
        await hands.until(lambda: hands.app.session.left_behind)
        await hands.do("<f8>", "draft", "<enter>")
        assert "Left unsaved when the program last ended" in hands.words()


async def test_the_life_of_a_tool_has_its_sizes_and_what_is_left_of_it(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        shown = await hands.do("<f3>", "t-12", "<f8>", "life", "<enter>")
        assert "The life of T-12-3" in shown
        first, second = (text for text in shown.splitlines() if text.startswith("20"))
        assert first.split()[:5] == ["2025-10-14-01", "12.050", "mm", "11.980", "mm"]
        assert second.split()[:5] == ["2026-03-11-01", "11.980", "mm", "11.960", "mm"]
        assert "Last measured: 11.960 mm" in shown
        # The thread land is relieved by 1 degree: each sharpening takes 2 * 0.3 tan 1 off the diameter; from 11.96 to 11.85.
        left = int((11.96 - 11.85) / (2 * 0.3 * tan(radians(1))))
        assert f"Sharpenings left: {left}, as of card 2026-03-11-01, by grinding the faces or the" in shown


@pytest.mark.parametrize("closed", [True, False])
async def test_the_life_of_a_tool_takes_no_result_from_a_draft(
    at_the_yard: AtTheYard, yard: Any, closed: bool
) -> None:
    path = card_path(yard, "2026-03-11-01")
    text = path.read_text()
    path.write_text(text if closed else text.replace('status = "done"', 'status = "draft"'))
    async with at_the_yard() as hands:
        shown = await hands.do("<f3>", "t-12", "<f8>", "life", "<enter>")
        row = next(text for text in shown.splitlines() if text.startswith("2026-03-11-01"))
        assert row.split()[-1] == ("good" if closed else "draft")


async def test_a_card_has_only_those_before_it_at_its_side(at_the_yard: AtTheYard) -> None:
    async with at_the_yard((160, 48)) as hands:
        await hands.do("<f3>", "2025-10-14", "<enter>")
        assert "T-12-3 BEFORE" not in hands.shown()
        await hands.do("<f9>", "<ctrl+u>", "2026-03-11", "<enter>")
        shown = hands.shown()
        assert "T-12-3 BEFORE" in shown
        assert [day in shown for day in ("2025-10-14  ", "2026-03-11  ")] == [True, False]


async def test_a_new_card_is_in_the_list_as_soon_as_it_is_left(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "t-58", "<f8>", "the same job", "<enter>", "<ctrl+n>", "Again.", "<f9>")
        rows = rows_shown(hands.shown())
        assert len(rows) == 2
        assert "draft" in rows[0]


async def test_marked_cards_are_planned_as_a_batch(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        assert "there is nothing to 'plan the marked cards'" in await hands.do("<f3>", "<f8>", "plan")
        shown = await hands.do("<f9>", "family:tap", "<ctrl+t>", "<ctrl+t>", "<ctrl+t>")
        assert "3 marked" in shown
        shown = await hands.menu("plan")
        assert "Plan for 3 cards" in shown
        everything = "\n".join("".join(piece.text for piece in one) for one in hands.app.screen.text(200))
        stays, changes = everything.split("1. ", 1)
        assert "The grey grinder" in stays
        assert "White cup 100" in stays
        assert "3600 rpm" in stays
        # Both M12 taps are indexed alike; the tap of four flutes is not.
        assert changes.count("Index") == 2
        assert "10 turns" in changes
        assert "13 turns and 22 holes" in changes
        for limits, stock in (((11.96, 11.85), 0.3), ((0.623, 0.618), 0.01)):
            left = int((limits[0] - limits[1]) / (2 * stock * tan(radians(1))))
            assert f"{left} sharpenings left after it" in changes


async def test_a_card_that_cannot_be_read_has_a_row_and_says_why(at_the_yard: AtTheYard, yard: Any) -> None:
    (yard / "cards" / "2026" / "2026-08-17-01.toml").write_bytes(b"# " + b"x" * 2_000_000)
    async with at_the_yard() as hands:
        shown = await hands.do("<f3>", "2026-08")
        assert "unreadable" in shown
        await hands.do("<enter>")
        assert hands.app.screen.WHERE == "cards"
        assert "cannot be read" in hands.shown()


async def test_the_list_fits_at_every_size(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>")
        for size in ((80, 24), (60, 20), (120, 36), (1, 1), (20, 5)):
            await hands.resize(*size)
            await hands.do("<down>", "<pagedown>", "<end>", "<home>", "<ctrl+t>")
            lines = hands.app.screen.lines(*size)
            assert all(width_of(one) <= size[0] or size[0] < 40 for one in lines), size


async def test_marks_stay_for_the_session_and_one_of_a_card_that_is_gone_is_told(
    at_the_yard: AtTheYard, yard: Any
) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "family:tap", "<ctrl+t>", "<ctrl+t>", "<ctrl+u>", "<escape>")
        shown = await hands.do("<f3>")
        assert "2 marked" in shown
        assert "Plan for 2 cards" in await hands.menu("plan")
        assert "2 marked" in await hands.do("<f9>", "<f9>", "<f3>")
        (gone,) = (yard / "cards").rglob("2026-04-22-01.toml")
        gone.unlink()
        await hands.do("<f9>", "<f3>")
        assert (
            "Card 2026-04-22-01 was marked and is gone from the shop's folder; its mark is gone too."
            in hands.words()
        )
        assert "1 marked" in hands.shown()
        shown = await hands.menu("marks")
        assert "The mark of one card is taken away; Ctrl+T marks the chosen one again." in shown
        assert "1 marked" not in shown


@pytest.mark.depth
async def test_a_card_opens_where_it_was_left(at_the_yard: AtTheYard) -> None:
    async with at_the_yard() as hands:
        await hands.do("<f3>", "status:draft", "<enter>", *["<ctrl+n>"] * 4, "<down>")
        left = next(line for line in hands.lines() if line.startswith("> "))
        assert "[After]" in hands.shown()
        await hands.do("<f9>", "<f9>", "<f3>", "status:draft")
        shown = await hands.do("<enter>")
        assert "[After]" in shown
        assert next(line for line in hands.lines() if line.startswith("> ")) == left


async def test_a_list_without_any_card_names_no_key_that_would_show_more(program: Any) -> None:
    async with program() as hands:
        shown = await hands.do("<f3>", "<enter>")
        assert "There is no card here; Ctrl+F begins a new one." in shown
        assert "shows all" not in shown


@pytest.mark.parametrize(("keys", "where"), [((), "card"), (("t", "-"), "cards")])
async def test_enter_before_the_cards_are_read_opens_the_chosen_one_as_soon_as_they_are(
    at_the_yard: AtTheYard, monkeypatch: pytest.MonkeyPatch, keys: tuple[str, ...], where: str
) -> None:
    read, may_go_on = CardService.read_rows, Event()

    def held_up(self: CardService) -> Any:
        may_go_on.wait(60)
        return read(self)

    monkeypatch.setattr(CardService, "read_rows", held_up)
    async with at_the_yard() as hands:
        try:
            shown = await hands.press_meanwhile("f3", "enter")
            assert "The cards are still being read; then the chosen one is opened." in shown
            assert "There is no card here" not in shown
            await hands.press_meanwhile(*keys)
        finally:
            may_go_on.set()
        await hands.settle()
        # Who types on meanwhile seeks another one.
        assert where == hands.app.screen.WHERE
        assert ("2026-11-20-01" in hands.lines()[0]) is (where == "card")
        assert "still being read" not in hands.shown()
